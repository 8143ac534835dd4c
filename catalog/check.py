"""The checker of the whole catalog: exercises, kinds of things, materials and sources against each other.

It yields one sentence per fault, in a fixed order; the shipped catalog yields none.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from catalog.check_exercises import find_exercise_errors
from catalog.check_things import find_thing_errors
from catalog.protocols import find_protocol_errors
from core.exercise.model import Exercise, Need, Use
from core.fit.geometry import working_heights
from core.knowledge import Catalog
from core.things.affordance import Grade, grade_use
from core.things.model import RatingOrigin, Thing, ThingKind

GIVEN_BY_A_PLACE = frozenset({Use.FLOOR, Use.WALL, Use.DOOR_FRAME, Use.ROUTE})
AMPLE_RATING_KG = 500.0


def find_catalog_errors(catalog: Catalog) -> Iterator[str]:
    """One sentence per fault of the catalog; none when all is well."""
    source_ids = frozenset(source.id for source in catalog.sources)
    yield from _repeated("material", (material.id for material in catalog.materials))
    yield from _repeated("source", (source.id for source in catalog.sources))
    yield from find_exercise_errors(catalog.exercises, source_ids)
    yield from find_thing_errors(catalog.kinds, source_ids, catalog.materials)
    for material in catalog.materials:
        unknown = (one for one in material.source_ids if one not in source_ids)
        yield from (f"{material.id}: the source {one} is not listed" for one in unknown)
    yield from find_protocol_errors(catalog.protocols, catalog.norms, catalog.exercises, source_ids)
    yield from _out_of_reach(catalog)


def _repeated(what: str, ids: Iterable[str]) -> Iterator[str]:
    yield from (f"{one}: the {what} id is used {count} times" for one, count in Counter(ids).items() if count > 1)


def _out_of_reach(catalog: Catalog) -> Iterator[str]:
    """Needs that no kind of thing in the catalog could ever meet, even if it bore any load."""
    things = tuple(_sample(kind) for kind in catalog.kinds)
    served = {use: tuple(thing for thing in things if _serves(thing, use)) for use in Use}
    for exercise in catalog.exercises:
        for need in exercise.needs:
            if not GIVEN_BY_A_PLACE.intersection(need.uses) and not any(_fitting(need, served)):
                yield f"{exercise.id}: no kind of thing can meet its need {_words(exercise, need)}"


def _sample(kind: ThingKind) -> Thing:
    """Two of the kind, rated for far more than anyone needs."""
    facts = replace(kind.facts, rating_kg=AMPLE_RATING_KG, rating_origin=RatingOrigin.LABEL)
    return Thing(id=kind.id, kind_id=kind.id, name=kind.name, count=2, facts=facts)


def _serves(thing: Thing, use: Use) -> bool:
    return grade_use(thing, use).grade is not Grade.NO


def _fitting(need: Need, served: dict[Use, tuple[Thing, ...]]) -> Iterator[Thing]:
    for use in need.uses:
        for thing in served[use]:
            low, high = need.height_cm or (0.0, float("inf"))
            if need.height_cm is None or any(low <= height <= high for height in working_heights(thing, use)):
                yield thing


def _words(exercise: Exercise, need: Need) -> str:
    number = exercise.needs.index(need) + 1
    heights = f" at {need.height_cm[0]:g} to {need.height_cm[1]:g} cm" if need.height_cm else ""
    return f"number {number} ({', '.join(need.uses)}{heights})"

"""Checks that need more than one entry: names and aliases that clash, sizes that can't be, sources, pictures, hazards.

Each fault is one sentence naming the entry; the shipped catalog gives none.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from catalog.things import ICONS
from core.exercise.model import Use
from core.mass.model import Material
from core.things.affordance import Grade, grade_use
from core.things.model import Closure, Facts, Form, Hazard, Thing, ThingKind
from core.things.words import spoken_keys

HEAVIEST_CARRIED_KG = 60.0
DENSEST_KG_L = {Form.VESSEL: 3.0, Form.TIN: 2.0, Form.SACK: 2.5, Form.BOOK: 1.3}
"""Above this mass per litre of outer box an entry has a slip in it (steel is 7.8, but no such thing is solid steel)."""
SEAT_CM = (25.0, 80.0)
NEEDS_CAUTION = (Hazard.HELD_CHEMICALS, Hazard.SPLITS, Hazard.SHARP, Hazard.FOLDING)
OPEN_BUCKET_L = 8.0


def find_thing_errors(
    kinds: Iterable[ThingKind], source_ids: frozenset[str], materials: Iterable[Material]
) -> Iterator[str]:
    """One sentence per fault in a set of kinds, entries in the order given."""
    listed = tuple(kinds)
    fillable = {material.id: material for material in materials}
    yield from _clashes(listed)
    for kind in listed:
        yield from _pictures(kind)
        yield from _sources(kind, source_ids)
        yield from _sizes(kind)
        yield from _fills(kind, fillable)
        yield from _cautions(kind)
    yield from _unserved(listed)


def _clashes(kinds: tuple[ThingKind, ...]) -> Iterator[str]:
    """Ids, and what people type: no two kinds may answer to the same words with the same capacity."""
    ids: set[str] = set()
    owner: dict[str, ThingKind] = {}
    for kind in kinds:
        if kind.id in ids:
            yield f"thing {kind.id}: the id is used twice; give one of them another."
        ids.add(kind.id)
        for key in spoken_keys(kind):
            other = owner.setdefault(key, kind)
            if other.id != kind.id:
                yield f"thing {kind.id}: “{key}” already means {other.id}; drop it from one of them."


def _pictures(kind: ThingKind) -> Iterator[str]:
    if kind.icon not in ICONS:
        yield f"thing {kind.id}: there is no picture “{kind.icon}”; use one of {', '.join(ICONS)}."


def _sources(kind: ThingKind, source_ids: frozenset[str]) -> Iterator[str]:
    for group, source_id in kind.standing:
        if source_id not in source_ids:
            yield f"thing {kind.id}: the source “{source_id}” of its {group} is not listed; add it to the sources."


def _sizes(kind: ThingKind) -> Iterator[str]:
    facts = kind.facts
    carried = not facts.fixed and facts.form in (*DENSEST_KG_L, Form.BAG, Form.BLOCK, Form.FREE_WEIGHT)
    box_l = facts.length_cm * facts.width_cm * facts.height_cm / 1000
    if facts.mass is not None:
        if carried and facts.mass.value > HEAVIEST_CARRIED_KG:
            yield f"thing {kind.id}: {facts.mass.value:g} kg is more than anyone lifts; check mass_kg."
        densest = DENSEST_KG_L.get(facts.form)
        if densest is not None and box_l > 0 and facts.mass.value > densest * box_l:
            yield f"thing {kind.id}: {facts.mass.value:g} kg does not fit {box_l:.1f} L; check mass_kg and its size."
    if carried and box_l == 0:
        yield f"thing {kind.id}: its outer size is missing; add length_cm, width_cm and height_cm."
    if facts.form is Form.SEAT and not _between(facts.surface_cm, SEAT_CM):
        yield f"thing {kind.id}: a seat is {SEAT_CM[0]:.0f} to {SEAT_CM[1]:.0f} cm high; check surface_cm."
    yield from _vessel_size(kind.id, facts, box_l)


def _vessel_size(kind_id: str, facts: Facts, box_l: float) -> Iterator[str]:
    container = facts.container
    if container is None:
        return
    if facts.form is not Form.SACK and container.brimful_l.value > box_l * 1.02:
        brim_l = container.brimful_l.value
        yield f"thing {kind_id}: {brim_l:.2f} L do not fit an outer box of {box_l:.2f} L; check litres and its size."
    if container.tare_kg.u95 > container.tare_kg.value * 1.2:
        yield f"thing {kind_id}: the empty mass is doubted by more than itself; check tare_kg."


def _between(value: float | None, limits: tuple[float, float]) -> bool:
    return value is not None and limits[0] <= value <= limits[1]


def _fills(kind: ThingKind, materials: dict[str, Material]) -> Iterator[str]:
    for material_id in kind.fills:
        material = materials.get(material_id)
        if material is None:
            yield f"thing {kind.id}: there is no material “{material_id}”; correct its group of fills."
        elif not material.as_fill:
            yield f"thing {kind.id}: {material.name} may not be filled into anything; drop it from the group of fills."
    if kind.facts.container is not None and not kind.fills:
        yield f"thing {kind.id}: it can be filled, but with nothing; name a group of fills."
    if Hazard.HELD_CHEMICALS in kind.facts.hazards and kind.facts.container is not None:
        yield f"thing {kind.id}: it held chemicals, so it must not be filled; give mass_kg instead of litres."


def _cautions(kind: ThingKind) -> Iterator[str]:
    for hazard in NEEDS_CAUTION:
        if hazard in kind.facts.hazards and not kind.cautions:
            yield f"thing {kind.id}: {hazard.value.replace('_', ' ')} needs a caution; add one."
    container = kind.facts.container
    stands_open = kind.facts.closure in (Closure.OPEN, Closure.LID) and kind.icon == "bucket"
    big = container is not None and container.nominal_l.value >= OPEN_BUCKET_L
    if stands_open and big and kind.fills != ("water",) and not any("drown" in text for text in kind.cautions):
        yield f"thing {kind.id}: a bucket this big needs the caution that a small child can drown in it; add it."


def _unserved(kinds: tuple[ThingKind, ...]) -> Iterator[str]:
    """Every use is served well or fairly by some kind, and the uses of a home by one that many homes have."""
    gym = frozenset({Use.BARBELL, Use.RACK, Use.FLAT_BENCH, Use.MACHINE, Use.CABLE, Use.RINGS})
    for use in Use:
        able = [kind for kind in kinds if grade_use(as_owned(kind), use).grade in (Grade.GOOD, Grade.FAIR)]
        if not able:
            yield f"use {use.value}: no kind of thing serves it; add one."
        elif use not in gym and not any(kind.common >= 1 for kind in able):
            yield f"use {use.value}: only rare things serve it; add one that many homes have."


def as_owned(kind: ThingKind) -> Thing:
    """Two alike of a kind, with its typical facts."""
    return Thing(id=kind.id, kind_id=kind.id, name=kind.name, count=2, facts=kind.facts, icon=kind.icon)

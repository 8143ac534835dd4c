"""What this house can't train, why, and the fewest additions that would open it.

A pattern family is open when at least one of its movements (warm-up, cool-down and gym entries aside) can be bound in
some place of the house. An addition is a kind of thing from the catalog that the house has none of. What nearly every
home has (and the person may only not have listed) comes before what costs money.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.exercise.model import Exercise, Family
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.model import House, Person
from core.knowledge import Catalog
from core.swap.filters import HARDEST_LEVEL, spared
from core.things.model import Thing, ThingKind

FEW = 5
"""Fewer movements than this is a thin pattern."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyState:
    """One family: how many movements can be done, and why none can when it is 0."""

    family: Family
    movements: int
    exercise_ids: tuple[str, ...]
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Helper:
    """A thing that would help: the families it opens and how many movements it adds; `common` homes have it unlisted."""

    kind_id: str
    name: str
    opens: tuple[Family, ...]
    movements: int
    common: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """The state of every family and the things that would help most, best first."""

    families: tuple[FamilyState, ...]
    would_help: tuple[Helper, ...]

    @property
    def movements(self) -> int:
        """All movements that can be done."""
        return sum(state.movements for state in self.families)


def gaps(house: House, person: Person, catalog: Catalog) -> Gaps:
    """Which families this house can't train and what would open most."""
    settings = settings_of(house, person, catalog)
    wanted = [exercise for exercise in catalog.exercises if _counts(exercise, person)]
    can, why = _possible(wanted, settings)
    states = tuple(_state(family, wanted, can, why) for family in Family)
    return Gaps(families=states, would_help=_would_help(house, person, catalog, [e for e in wanted if e.id not in can], states))


def settings_of(house: House, person: Person, catalog: Catalog) -> tuple[Setting, ...]:
    """One setting per place of the house (one unnamed place when it lists none)."""
    materials = catalog.material_by_id
    return tuple(Setting(house, person, materials, place) for place in house.places) or (
        Setting(house, person, materials),
    )


def _counts(exercise: Exercise, person: Person) -> bool:
    most = HARDEST_LEVEL[-1]
    return exercise.level <= most and not exercise.needs_gym and not spared(exercise, person.spares)


def _possible(wanted: list[Exercise], settings: tuple[Setting, ...]) -> tuple[frozenset[str], dict[str, str]]:
    can, why = set(), {}
    for exercise in wanted:
        results = [bind(exercise, setting) for setting in settings]
        if any(not isinstance(result, Missing) for result in results):
            can.add(exercise.id)
            continue
        first = results[0]
        why[exercise.id] = first.why[0] if isinstance(first, Missing) else ""
    return frozenset(can), why


def _state(family: Family, wanted: list[Exercise], can: frozenset[str], why: dict[str, str]) -> FamilyState:
    mine = [exercise for exercise in wanted if exercise.family is family]
    able = tuple(exercise.id for exercise in mine if exercise.id in can)
    reason = "" if able else _commonest([why[exercise.id] for exercise in mine if exercise.id in why])
    return FamilyState(family=family, movements=len(able), exercise_ids=able, why=reason)


def _commonest(reasons: list[str]) -> str:
    if not reasons:
        return "the catalog has no movement for it that you don't spare"
    return min(reasons, key=lambda reason: (-reasons.count(reason), reason))


def _would_help(
    house: House, person: Person, catalog: Catalog, blocked: list[Exercise], states: tuple[FamilyState, ...]
) -> tuple[Helper, ...]:
    closed = {state.family for state in states if not state.movements}
    have = {thing.kind_id for thing in house.things}
    helpers = []
    for kind in catalog.kinds:
        if kind.id in have:
            continue
        richer = replace(house, things=(*house.things, as_thing(kind)))
        opened = [e for e in blocked if _opened_by(e, richer, person, catalog, kind)]
        if opened:
            helpers.append(_helper(kind, opened, closed))
    return tuple(sorted(helpers, key=lambda helper: (-len(helper.opens), helper.cost, -helper.movements, helper.kind_id)))


def _opened_by(exercise: Exercise, house: House, person: Person, catalog: Catalog, kind: ThingKind) -> bool:
    thing_id = as_thing(kind).id
    for setting in settings_of(house, person, catalog):
        bound = bind(exercise, setting)
        if not isinstance(bound, Missing) and thing_id in bound.thing_ids:
            return True
    return False


def _helper(kind: ThingKind, opened: list[Exercise], closed: set[Family]) -> Helper:
    families = {exercise.family for exercise in opened}
    return Helper(
        kind_id=kind.id,
        name=kind.name,
        opens=tuple(family for family in Family if family in families and family in closed),
        movements=len(opened),
        common=kind.common,
        cost=kind.cost,
    )


def as_thing(kind: ThingKind) -> Thing:
    """One piece of a kind with its typical facts, as if the house had it."""
    return Thing(
        id=f"would-be-{kind.id}",
        kind_id=kind.id,
        name=kind.name,
        facts=kind.facts,
        icon=kind.icon,
        fills=kind.fills,
        cautions=kind.cautions,
    )

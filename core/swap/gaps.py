"""What this house can't train, why, and the fewest additions that would open it.

A pattern family is open when at least one of its movements (warm-up, cool-down and gym entries aside) can be bound in
some place of the house. An addition is a kind of thing from the catalog that the house has none of. Those that open a
family come first; of them, and of the rest, those that need no buying (a home has them unlisted), then those that add
most movements to those before for what they cost. What adds nothing more to them comes last.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from core.exercise.model import Exercise, Family
from core.fit.bind import bind
from core.fit.model import Missing
from core.fit.setting import Setting
from core.house.model import House, Person
from core.knowledge import Catalog
from core.swap.additions import Lacking, Shelf, as_thing, lacking_in
from core.swap.filters import spared
from core.things.model import ThingKind


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyState:
    """One family: how many movements can be done, and why none can when it is 0."""

    family: Family
    movements: int
    exercise_ids: tuple[str, ...]
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Helper:
    """A thing that would help: the families it opens, the movements it adds, how usual it is at home, what it costs."""

    kind_id: str
    name: str
    opens: tuple[Family, ...]
    movements: int
    common: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Two things (or two of one kind) that open a family which no single addition opens."""

    kind_ids: tuple[str, str]
    names: tuple[str, str]
    opens: tuple[Family, ...]
    movements: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """The state of every family and the things that would help most, best first.

    `together` is empty unless a family stays closed with any one addition.
    """

    families: tuple[FamilyState, ...]
    would_help: tuple[Helper, ...]
    together: tuple[Together, ...] = ()

    @property
    def movements(self) -> int:
        """All movements that can be done."""
        return sum(state.movements for state in self.families)


def gaps(house: House, person: Person, catalog: Catalog) -> Gaps:
    """Which families this house can't train and what would open most."""
    settings = settings_of(house, person, catalog)
    wanted = [exercise for exercise in catalog.exercises if _counts(exercise, person)]
    why = {exercise.id: _why_blocked(exercise, settings) for exercise in wanted}
    states = tuple(_state(family, wanted, why) for family in Family)
    closed = [state.family for state in states if not state.movements]
    have = {thing.kind_id for thing in house.things}
    kinds = tuple(kind for kind in catalog.kinds if kind.id not in have)
    blocked = [exercise for exercise in wanted if why[exercise.id]]
    shelves = [Shelf(setting, kinds) for setting in settings]
    lacking = [one for exercise in blocked for shelf in shelves if (one := lacking_in(exercise, shelf.setting))]
    helpers = _would_help(kinds, _opened(lacking, shelves), closed)
    reached = {family for helper in helpers for family in helper.opens}
    still = [family for family in closed if family not in reached]
    return Gaps(families=states, would_help=helpers, together=tuple(_together(still, lacking, shelves, kinds)))


def settings_of(house: House, person: Person, catalog: Catalog) -> tuple[Setting, ...]:
    """One setting per place of the house (one unnamed place when it lists none)."""
    materials = catalog.material_by_id
    return tuple(Setting(house, person, materials, place) for place in house.places) or (
        Setting(house, person, materials),
    )


def _counts(exercise: Exercise, person: Person) -> bool:
    return not exercise.needs_gym and not spared(exercise, person.spares)


def _why_blocked(exercise: Exercise, settings: tuple[Setting, ...]) -> str:
    """Why the movement can't be done in any place, from the place where least is missing; empty where it can."""
    best: tuple[str, ...] = ()
    for setting in settings:
        bound = bind(exercise, setting)
        if not isinstance(bound, Missing):
            return ""
        if not best or len(bound.why) < len(best):
            best = bound.why
    return best[0]


def _state(family: Family, wanted: list[Exercise], why: dict[str, str]) -> FamilyState:
    mine = [exercise for exercise in wanted if exercise.family is family]
    able = tuple(exercise.id for exercise in mine if not why[exercise.id])
    reason = "" if able else _commonest([why[exercise.id] for exercise in mine])
    return FamilyState(family=family, movements=len(able), exercise_ids=able, why=reason)


def _commonest(reasons: list[str]) -> str:
    if not reasons:
        return "the catalog has no movement for it that you don't spare"
    return min(reasons, key=lambda reason: (-reasons.count(reason), reason))


def _opened(lacking: list[Lacking], shelves: list[Shelf]) -> dict[str, dict[str, Family]]:
    """For each kind the blocked movements it opens, with their families."""
    shelf_of = {id(shelf.setting): shelf for shelf in shelves}
    opened: dict[str, dict[str, Family]] = {}
    for one in lacking:
        for kind_id in shelf_of[id(one.setting)].opening(one):
            opened.setdefault(kind_id, {})[one.exercise.id] = one.exercise.family
    return opened


def _would_help(
    kinds: tuple[ThingKind, ...], opened: dict[str, dict[str, Family]], closed: list[Family]
) -> tuple[Helper, ...]:
    helpers = [
        Helper(
            kind_id=kind.id,
            name=kind.name,
            opens=tuple(family for family in closed if family in opened[kind.id].values()),
            movements=len(opened[kind.id]),
            common=kind.common,
            cost=kind.cost,
        )
        for kind in kinds
        if kind.id in opened
    ]
    return tuple(_in_turn(helpers, {kind_id: frozenset(found) for kind_id, found in opened.items()}))


def _in_turn(helpers: list[Helper], opened: dict[str, frozenset[str]]) -> Iterator[Helper]:
    """One after the other the helper that adds most to those before it; last those that add nothing to them."""
    waiting, had = list(helpers), frozenset[str]()
    while waiting:
        best = min(waiting, key=lambda helper: _usefulness(helper, len(opened[helper.kind_id] - had)))
        waiting.remove(best)
        had |= opened[best.kind_id]
        yield best


def _usefulness(helper: Helper, new: int) -> tuple[bool, bool, bool, int, float, int, str]:
    """What adds anything first, of it what opens a closed family, and of that what needs no buying."""
    worth = new / (1 + helper.cost)
    return not new, not helper.opens, helper.cost > 0, -len(helper.opens), -worth, -helper.common, helper.kind_id


def _together(
    closed: list[Family], lacking: list[Lacking], shelves: list[Shelf], kinds: tuple[ThingKind, ...]
) -> Iterator[Together]:
    """For each family still closed the cheapest two additions that open it, most movements first among them."""
    kind_by_id = {kind.id: kind for kind in kinds}
    shelf_of = {id(shelf.setting): shelf for shelf in shelves}
    for family in closed:
        mine = [one for one in lacking if one.exercise.family is family]
        by_cost: dict[int, set[tuple[str, str]]] = {}
        for one in mine:
            for pair in _pairs(one, shelf_of[id(one.setting)]):
                by_cost.setdefault(sum(kind_by_id[kind_id].cost for kind_id in pair), set()).add(pair)
        for cost in sorted(by_cost):
            counts = Counter({pair: _opened_by(pair, mine, kind_by_id) for pair in sorted(by_cost[cost])})
            best = max(counts, key=lambda pair: counts[pair])
            if counts[best]:
                names = (kind_by_id[best[0]].name, kind_by_id[best[1]].name)
                yield Together(kind_ids=best, names=names, opens=(family,), movements=counts[best], cost=cost)
                break


def _pairs(lacking: Lacking, shelf: Shelf) -> Iterator[tuple[str, str]]:
    """Pairs of kinds worth a try: each meets one of two lacking needs, or two alike where two alike are needed."""
    needs = lacking.needs
    if len(needs) == 1:
        yield from ((kind_id, kind_id) for kind_id in shelf.serving(needs[0]))
    elif len(needs) == 2:
        one, other = (shelf.serving(need) for need in needs)
        yield from {(min(pair), max(pair)) for pair in ((first, second) for first in one for second in other)}


def _opened_by(pair: tuple[str, str], lacking: list[Lacking], kind_by_id: dict[str, ThingKind]) -> int:
    """How many of the movements two additions open."""
    first, second = (kind_by_id[kind_id] for kind_id in pair)
    things = (as_thing(first, 2),) if first is second else (as_thing(first), as_thing(second))
    opened = set()
    for one in lacking:
        setting = one.setting
        for thing in things:
            setting = setting.plus(thing)
        if one.exercise.id not in opened and not isinstance(bind(one.exercise, setting), Missing):
            opened.add(one.exercise.id)
    return len(opened)

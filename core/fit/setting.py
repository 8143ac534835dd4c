"""A person in a place with what the house has there: offers per use and the ladders of loads, worked out once each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.exercise.model import Demand, Posture, Use
from core.fit.model import Offer
from core.house.model import House, Person, Place
from core.loads.ladder import Ladder, Source
from core.loads.packing import Choices, Combinations, Packed, can_be_packed, choices_for, combine, pack
from core.loads.pieces import NO_STATES, States, states_of
from core.mass.model import Material
from core.things.affordance import RANK, Grade, form_serves, grade_use
from core.things.load_uses import safe_over_face
from core.things.model import Handle, Hold, Thing
from core.things.weighed import known_mass

GRADE_PENALTY_S: dict[Grade, float] = {Grade.GOOD: 0.0, Grade.FAIR: 30.0, Grade.POOR: 120.0, Grade.NO: 0.0}
"""How much longer a set-up with a good grip may take before a worse grip is taken (assumed; only ranks recipes)."""
ANYWHERE = Place(id="anywhere", name="Anywhere")
OUTSIDE = Place(id="outside", name="Outside", floor_m2=20.0, walk_m=2000.0, outdoors=True)
"""Where a person walks and runs who names no place for it; assumed."""
GIVEN_BY_PLACE: dict[Use, str] = {
    Use.FLOOR: "the floor",
    Use.WALL: "a wall",
    Use.DOOR_FRAME: "a door frame",
    Use.ROUTE: "a clear way",
}


@dataclass(frozen=True, slots=True)
class Fewer:
    """Which of the things a ladder is of: `only` one, those held well `in_hand`, those safe `over_face`."""

    only: str = ""
    in_hand: bool = False
    over_face: bool = False


@dataclass(slots=True)
class Known:
    """What a setting has already worked out. Depends on the house, the place and the body, not on what is spared."""

    offers: dict[tuple[Use, Posture], tuple[Offer, ...]] = field(default_factory=dict)
    refusals: dict[tuple[Use, Posture], tuple[Offer, ...]] = field(default_factory=dict)
    sources: dict[tuple[Use, Posture, int], tuple[Source, ...]] = field(default_factory=dict)
    ladders: dict[tuple[Use, Posture, int, frozenset[str], bool, str, bool, bool], Ladder] = field(default_factory=dict)
    states: dict[str, States] = field(default_factory=dict)
    packed: dict[tuple[str, bool], Packed] = field(default_factory=dict)
    stock: dict[bool, tuple[Choices, Combinations]] = field(default_factory=dict)


class Setting:
    """Answers what can serve a use here. Holds only frozen inputs and the answers already worked out.

    `posture` matters overhead only, where sitting lowers the reach. Without a `place` it is the first of the house.
    """

    def __init__(
        self,
        house: House,
        person: Person,
        materials: Mapping[str, Material],
        place: Place | None = None,
        *,
        known: Known | None = None,
        before: Setting | None = None,
    ) -> None:
        self.house = house
        self.person = person
        self.place = place or (house.places[0] if house.places else ANYWHERE)
        self.materials = materials
        self.things = tuple(t for t in house.things if not t.place_ids or self.place.id in t.place_ids)
        self.known = known if known is not None else Known()
        self._before = before
        self._thing_by_id = {thing.id: thing for thing in self.things}

    def thing(self, thing_id: str) -> Thing:
        """The thing of this id that is here; KeyError if none is."""
        return self._thing_by_id[thing_id]

    def sparing(self, spares: frozenset[Demand]) -> Setting:
        """The same setting for the same person, who now spares these demands as well."""
        if spares <= self.person.spares:
            return self
        person = replace(self.person, spares=self.person.spares | spares)
        return Setting(self.house, person, self.materials, self.place, known=self.known, before=self._before)

    def plus(self, thing: Thing) -> Setting:
        """This setting with one more thing in the house; what is already known here is not worked out again."""
        house = replace(self.house, things=(*self.house.things, thing))
        known = Known(states=dict(self.known.states))
        if not can_be_packed(thing) and thing.facts.hold is None:
            known.packed, known.stock = self.known.packed, self.known.stock
        return Setting(house, self.person, self.materials, self.place, known=known, before=self)

    def offers(self, use: Use, posture: Posture = Posture.STANDING) -> tuple[Offer, ...]:
        """What serves the use here, best grade first, then by id."""
        key = (use, arms(use, posture))
        if key not in self.known.offers:
            self._grade(*key)
        return self.known.offers[key]

    def refusals(self, use: Use, posture: Posture = Posture.STANDING) -> tuple[Offer, ...]:
        """Things of a form that could serve the use but may not, with the reason, by id."""
        key = (use, arms(use, posture))
        if key not in self.known.refusals:
            self._grade(*key)
        return self.known.refusals[key]

    def ladder(
        self,
        use: Use,
        count: int = 1,
        posture: Posture = Posture.STANDING,
        without: frozenset[str] = frozenset(),
        *,
        sound: bool = False,
        only: str = "",
        in_hand: bool = False,
        over_face: bool = False,
    ) -> Ladder:
        """Every load for the use; with `count` 2, two alike at once (masses are of both together).

        `without` names things that are in use already; the ladder is then that of the house less them. A `sound` one
        has only loads held in a good or fair way, one of `only` a thing just those it makes, alone or packed,
        one `in_hand` those of things that one hand holds well, one `over_face` those safe above someone lying down.
        """
        sound = sound and any(offer.grade is Grade.POOR for offer in self.offers(use, posture))
        if without:
            without = frozenset(thing.id for thing in self.things if thing.id in without and _is_load(thing))
        key = (use, arms(use, posture), count, without, sound, only, in_hand, over_face)
        if key not in self.known.ladders:
            of_all, fewer = key[:5], Fewer(only, in_hand, over_face)
            made = self._made_ladder(*of_all) if fewer == Fewer() else self._of_some(fewer, *of_all)
            self.known.ladders[key] = made
        return self.known.ladders[key]

    def _of_some(
        self, fewer: Fewer, use: Use, posture: Posture, count: int, without: frozenset[str], sound: bool
    ) -> Ladder:
        """The ladder of fewer things."""
        sources = self.ladder(use, count, posture, without, sound=sound).sources
        if fewer.in_hand:
            held = {offer.thing_id for offer in self.offers(Use.ONE_HAND) if held_well(offer)}
            sources = tuple(source for source in sources if source.thing.id in held)
        if fewer.over_face:
            sources = tuple(self._clean(source) for source in sources if safe_over_face(source.thing.facts))
        if fewer.only:
            sources = tuple(source for source in sources if source.thing.id == fewer.only)
        return Ladder(use, sources, self.materials, self.house.cup_l)

    def _clean(self, source: Source) -> Source:
        """The source with nothing packed in it that may not be held above the face."""
        hold = source.thing.facts.hold
        return source if hold is None else replace(source, packed=self._packing(source.thing, hold, Use.OVERHEAD))

    def _made_ladder(self, use: Use, posture: Posture, count: int, without: frozenset[str], sound: bool) -> Ladder:
        if without:
            left = tuple(thing for thing in self.house.things if thing.id not in without)
            rest = Setting(replace(self.house, things=left), self.person, self.materials, self.place)
            return rest.ladder(use, count, posture, sound=sound)
        if self._before is not None and self._adds_nothing(use, posture, self._before):
            return self._before.ladder(use, count, posture, sound=sound)
        sources = self.sources(use, count, posture)
        if sound:
            poor = {offer.thing_id for offer in self.offers(use, posture) if offer.grade is Grade.POOR}
            sources = tuple(source for source in sources if source.thing.id not in poor)
        return Ladder(use, sources, self.materials, self.house.cup_l)

    def _adds_nothing(self, use: Use, posture: Posture, before: Setting) -> bool:
        """Whether what was added since `before` leaves a ladder alone: it neither serves the use nor fits a bag."""
        added = self.things[len(before.things) :]
        if any(can_be_packed(thing) or thing.facts.hold is not None for thing in added):
            return False
        return {thing.id for thing in added}.isdisjoint(offer.thing_id for offer in self.offers(use, posture))

    def sources(self, use: Use, count: int, posture: Posture) -> tuple[Source, ...]:
        """Each thing that makes loads for the use, by id."""
        key = (use, posture, count)
        if key not in self.known.sources:
            alike = 2 if use is Use.PAIR or count == 2 else 1
            offers = sorted(self.offers(use, posture), key=lambda offer: offer.thing_id)
            found = (self._source(offer.thing, offer.grade, alike, use) for offer in offers if offer.thing is not None)
            self.known.sources[key] = tuple(source for source in found if source is not None)
        return self.known.sources[key]

    def _grade(self, use: Use, posture: Posture) -> None:
        before = self._before
        known = len(before.things) if before is not None else 0
        found = list(before.offers(use, posture)) if before is not None else list(place_gives(self.place, use))
        refused = list(before.refusals(use, posture)) if before is not None else []
        for thing in self.things[known:]:
            if not form_serves(thing.facts, use):
                continue
            graded = grade_use(thing, use, self.person, self.place, posture=posture)
            offer = Offer(
                use=use, name=thing.name, grade=graded.grade, reason=graded.reason, thing=thing, thing_id=thing.id
            )
            (refused if graded.grade is Grade.NO else found).append(offer)
        self.known.offers[(use, posture)] = tuple(sorted(found, key=lambda offer: (RANK[offer.grade], offer.thing_id)))
        self.known.refusals[(use, posture)] = tuple(sorted(refused, key=lambda offer: offer.thing_id))

    def states(self, thing: Thing) -> States:
        """Every state one piece of a thing can be in here."""
        if thing.id not in self.known.states:
            self.known.states[thing.id] = states_of(thing, self.materials, self.house.fills, self.house.cup_l)
        return self.known.states[thing.id]

    def _source(self, thing: Thing, grade: Grade, alike: int, use: Use) -> Source | None:
        if thing.count < alike or thing.facts.fixed:
            return None
        penalty_s = GRADE_PENALTY_S[grade]
        if thing.facts.hold is None:
            states = self.states(thing)
            return Source(thing, alike, penalty_s, states) if len(states) else None
        if thing.facts.mass is None or alike > 1:
            return None
        return Source(thing, 1, penalty_s, NO_STATES, self._packing(thing, thing.facts.hold, use))

    def _packing(self, bag: Thing, hold: Hold, use: Use) -> Packed:
        clean = use is Use.OVERHEAD and any(
            can_be_packed(thing) and not safe_over_face(thing.facts) for thing in self.things
        )
        key = (bag.id, clean)
        if key not in self.known.packed:
            choices, combinations = self._combined(clean)
            mass = known_mass(bag)
            self.known.packed[key] = pack(hold, choices, 0.0 if mass is None else mass.value, combinations)
        return self.known.packed[key]

    def _combined(self, clean: bool) -> tuple[Choices, Combinations]:
        """Everything that fits into the roomiest and strongest bag here, combined once for all bags.

        `clean` leaves out what may not go overhead, packed or not.
        """
        if clean not in self.known.stock:
            holds = [thing.facts.hold for thing in self.things if thing.facts.hold is not None]
            widest = Hold(volume_l=max(hold.volume_l for hold in holds), limit_kg=max(hold.limit_kg for hold in holds))
            packable = (t for t in self.things if can_be_packed(t) and (safe_over_face(t.facts) or not clean))
            things = sorted(packable, key=lambda thing: thing.id)
            choices = choices_for(widest, tuple((thing, self.states(thing)) for thing in things))
            self.known.stock[clean] = choices, combine(widest, choices)
        return self.known.stock[clean]


def arms(use: Use, posture: Posture) -> Posture:
    """The posture as far as it changes the reach of the arms."""
    matters = use is Use.OVERHEAD and posture in (Posture.SEATED, Posture.FLOOR)
    return posture if matters else Posture.STANDING


def held_well(offer: Offer) -> bool:
    """Whether one hand alone holds it surely above the head: straps and loops swing."""
    swings = offer.thing is not None and offer.thing.facts.handle in (Handle.STRAPS, Handle.TWO_LOOPS)
    return offer.grade is not Grade.POOR and not swings


def _is_load(thing: Thing) -> bool:
    """Whether leaving the thing out could change a ladder."""
    return form_serves(thing.facts, Use.HUG) or form_serves(thing.facts, Use.DRAG)


def place_gives(place: Place, use: Use) -> tuple[Offer, ...]:
    """What a place offers by itself: clear floor, and indoors a wall and a door frame; a way to walk."""
    gives = {
        Use.FLOOR: place.floor_m2 > 0,
        Use.WALL: not place.outdoors,
        Use.DOOR_FRAME: not place.outdoors,
        Use.ROUTE: place.walk_m > 0,
    }
    if not gives.get(use, False):
        return ()
    return (Offer(use=use, name=GIVEN_BY_PLACE[use], grade=Grade.GOOD, reason=f"{place.name} has it"),)

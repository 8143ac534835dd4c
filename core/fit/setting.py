"""A person in a place with what the house has there: offers per use and the ladders of loads, worked out once each."""

from __future__ import annotations

from collections.abc import Mapping

from core.exercise.model import Use
from core.fit.model import Offer
from core.house.model import House, Person, Place
from core.loads.ladder import Ladder, Source
from core.loads.packing import Packed, choices_for, pack
from core.loads.pieces import Piece, pieces
from core.mass.model import Material
from core.things.affordance import Grade, grade_use
from core.things.model import Thing

GRADE_PENALTY_S: dict[Grade, float] = {Grade.GOOD: 0.0, Grade.FAIR: 30.0, Grade.POOR: 120.0}
"""How much longer a set-up with a good grip may take before a worse grip is taken (assumed; only ranks recipes)."""
GRADE_ORDER: dict[Grade, int] = {Grade.GOOD: 0, Grade.FAIR: 1, Grade.POOR: 2, Grade.NO: 3}
ANYWHERE = Place(id="anywhere", name="Anywhere")


class Setting:
    """Answers what can serve a use here. Holds only frozen inputs and the answers already worked out."""

    def __init__(
        self, house: House, person: Person, materials: Mapping[str, Material], place: Place | None = None
    ) -> None:
        self.house = house
        self.person = person
        self.place = place or (house.places[0] if house.places else ANYWHERE)
        self.materials = materials
        self.things = tuple(
            thing for thing in house.things if not thing.place_ids or place is None or self.place.id in thing.place_ids
        )
        self._offers: dict[Use, tuple[Offer, ...]] = {}
        self._refusals: dict[Use, tuple[Offer, ...]] = {}
        self._ladders: dict[tuple[Use, int], Ladder] = {}
        self._pieces: dict[str, tuple[Piece, ...]] = {}
        self._packed: dict[str, Packed] = {}

    def offers(self, use: Use) -> tuple[Offer, ...]:
        """What serves the use here, best grade first, then by id."""
        if use not in self._offers:
            self._grade(use)
        return self._offers[use]

    def refusals(self, use: Use) -> tuple[Offer, ...]:
        """Things that look as if they could serve the use but may not, with the reason."""
        if use not in self._refusals:
            self._grade(use)
        return self._refusals[use]

    def ladder(self, use: Use, count: int = 1) -> Ladder:
        """Every load for the use; with `count` 2, two alike at once (masses are of both together)."""
        key = (use, count)
        if key not in self._ladders:
            offers = (offer for offer in self.offers(use) if offer.thing is not None)
            alike = 2 if use is Use.PAIR or count == 2 else 1
            sources = [self._source(offer, alike) for offer in sorted(offers, key=lambda offer: offer.thing_id)]
            found = tuple(source for source in sources if source is not None)
            self._ladders[key] = Ladder(use, found, self.materials, self.house.cup_l)
        return self._ladders[key]

    def _grade(self, use: Use) -> None:
        found: list[Offer] = []
        refused: list[Offer] = []
        for thing in self.things:
            graded = grade_use(thing, use, self.person, self.place)
            offer = Offer(
                use=use, name=thing.name, grade=graded.grade, reason=graded.reason, thing=thing, thing_id=thing.id
            )
            (refused if graded.grade is Grade.NO else found).append(offer)
        found.extend(place_gives(self.place, use))
        self._offers[use] = tuple(sorted(found, key=lambda offer: (GRADE_ORDER[offer.grade], offer.thing_id)))
        self._refusals[use] = tuple(sorted(refused, key=lambda offer: offer.thing_id))

    def _states(self, thing: Thing) -> tuple[Piece, ...]:
        if thing.id not in self._pieces:
            self._pieces[thing.id] = pieces(thing, self.materials, self.house.fills, self.house.cup_l)
        return self._pieces[thing.id]

    def _source(self, offer: Offer, alike: int) -> Source | None:
        thing = offer.thing
        if thing is None or thing.count < alike or thing.facts.fixed:
            return None
        penalty_s = GRADE_PENALTY_S[offer.grade]
        if thing.facts.hold is None:
            states = self._states(thing)
            return Source(thing, alike, penalty_s, states) if states else None
        if thing.facts.mass is None or alike > 1:
            return None
        packed = self._packing(thing)
        return Source(thing, 1, penalty_s, (), packed, thing.facts.mass.value)

    def _packing(self, bag: Thing) -> Packed:
        if bag.id not in self._packed:
            hold = bag.facts.hold
            if hold is None:
                raise ValueError(f"{bag.id} holds nothing")
            stock = tuple((thing, self._states(thing)) for thing in self.things if thing.facts.hold is None)
            self._packed[bag.id] = pack(hold, choices_for(bag, hold, stock))
        return self._packed[bag.id]


def place_gives(place: Place, use: Use) -> tuple[Offer, ...]:
    """What a place offers by itself: clear floor, and indoors a wall and a door frame; a way to walk."""
    indoors = not place.outdoors
    gives = {
        Use.FLOOR: place.floor_m2 > 0,
        Use.WALL: indoors,
        Use.DOOR_FRAME: indoors,
        Use.ROUTE: place.walk_m > 0,
    }
    if not gives.get(use, False):
        return ()
    words = {Use.FLOOR: "the floor", Use.WALL: "a wall", Use.DOOR_FRAME: "a door frame", Use.ROUTE: "a clear way"}
    return (Offer(use=use, name=words[use], grade=Grade.GOOD, reason=f"{place.name} has it"),)

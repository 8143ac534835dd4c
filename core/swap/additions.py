"""What one more thing would open: the needs each blocked movement lacks here, and which kinds of thing meet them.

Exact without trying every kind on every movement: a kind is tried only where its grade for a lacking use is not `no`
and its height, rating or mass fits; movements whose needs get in each other's way are bound in full.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from core.exercise.model import Demand, Exercise, Family, Need, Pattern, Posture, Use
from core.exercise.strength import single_joint
from core.fit.bind import bind, distinct_fixtures
from core.fit.choose_load import Lift, chosen_load
from core.fit.fixtures import Fixture, as_fixture, fixed_needs, fixtures_for, place_reasons
from core.fit.model import Missing, Offer
from core.fit.setting import Setting, arms, held_well
from core.loads.packing import can_be_packed
from core.loads.pieces import GRAIN_KG
from core.things.affordance import Grade, form_serves, grade_use
from core.things.load_uses import safe_over_face
from core.things.model import Thing, ThingKind

HANGS = frozenset({Demand.HANGING})


def as_thing(kind: ThingKind, count: int = 1) -> Thing:
    """A kind with its typical facts, as if the house had it."""
    return Thing(
        id=f"would-be-{kind.id}",
        kind_id=kind.id,
        name=kind.name,
        count=count,
        facts=kind.facts,
        icon=kind.icon,
        fills=kind.fills,
        cautions=kind.cautions,
    )


@dataclass(frozen=True, slots=True)
class Lacking:
    """A movement that can't be done in a setting though the place allows it, and its needs that nothing there meets."""

    exercise: Exercise
    setting: Setting
    needs: tuple[Need, ...]


def lacking_in(exercise: Exercise, setting: Setting) -> Lacking | None:
    """What the movement lacks here; None where the place itself rules it out."""
    if any(True for _ in place_reasons(exercise, setting)):
        return None
    unmet = [need for need in fixed_needs(exercise) if not fixtures_for(need, exercise, setting)]
    need = exercise.load_need
    if need is not None and not need.optional and chosen_load(Lift(exercise, need, setting, None)) is None:
        unmet.append(need)
    return Lacking(exercise, setting, tuple(unmet))


class Shelf:
    """Kinds of things the house lacks, as seen from one setting. Keeps what it has worked out."""

    def __init__(self, setting: Setting, kinds: tuple[ThingKind, ...]) -> None:
        self.setting = setting
        self._things = {kind.id: as_thing(kind) for kind in kinds}
        self._stocked = any(can_be_packed(thing) for thing in setting.things)
        self._packable = tuple(kind_id for kind_id, thing in self._things.items() if can_be_packed(thing))
        self._offers: dict[tuple[Use, Posture], dict[str, Offer]] = {}
        self._plus: dict[str, Setting] = {}
        self._masses: dict[str, tuple[float, ...]] = {}
        self._meeting: dict[tuple[object, ...], tuple[str, ...]] = {}

    def opening(self, lacking: Lacking) -> tuple[str, ...]:
        """Ids of the kinds that open the movement here, one alone, sorted."""
        if len(lacking.needs) > 1:
            return ()
        exercise = lacking.exercise
        if not lacking.needs:
            every = {kind_id for need in _needs(exercise) for kind_id in self.meeting(need, exercise)}
            return tuple(kind_id for kind_id in sorted(every) if self._binds(exercise, kind_id))
        need = lacking.needs[0]
        found = self.meeting(need, exercise)
        if self._independent(exercise, need):
            return tuple(kind_id for kind_id in found if self._may_hold(kind_id, exercise, need))
        return tuple(kind_id for kind_id in found if self._binds(exercise, kind_id))

    def meeting(self, need: Need, exercise: Exercise) -> tuple[str, ...]:
        """Ids of the kinds that meet the need by themselves (or, packed into a bag, with what is here), sorted."""
        key: tuple[object, ...] = (need, exercise.posture, exercise.reach_over_head, *_first_load_key(exercise))
        if Use.STEP in need.uses:
            key = (*key, exercise.id)
        if key not in self._meeting:
            meets = self._as_load if need.is_load else self._as_fixture
            self._meeting[key] = tuple(sorted(meets(need, exercise)))
        return self._meeting[key]

    def serving(self, need: Need) -> tuple[str, ...]:
        """Ids of the kinds whose form serves any use of the need: one of them at least is in whatever meets it."""
        able = (k for k, thing in self._things.items() if any(form_serves(thing.facts, use) for use in need.uses))
        return tuple(sorted(able))

    def offers(self, use: Use, posture: Posture) -> dict[str, Offer]:
        """What each kind would offer for a use, refusals left out."""
        key = (use, arms(use, posture))
        if key not in self._offers:
            offers = ((kind_id, self._offer(thing, *key)) for kind_id, thing in self._things.items())
            self._offers[key] = {kind_id: offer for kind_id, offer in offers if offer is not None}
        return self._offers[key]

    def _offer(self, thing: Thing, use: Use, posture: Posture) -> Offer | None:
        if not form_serves(thing.facts, use):
            return None
        graded = grade_use(thing, use, self.setting.person, self.setting.place, posture=posture)
        if graded.grade is Grade.NO:
            return None
        return Offer(use=use, name=thing.name, grade=graded.grade, reason=graded.reason, thing=thing, thing_id=thing.id)

    def _as_fixture(self, need: Need, exercise: Exercise) -> set[str]:
        found: set[str] = set()
        for use in need.uses:
            for kind_id, offer in self.offers(use, Posture.STANDING).items():
                if as_fixture(need, exercise, self.setting, offer) is not None:
                    found.add(kind_id)
        return found

    def _as_load(self, need: Need, exercise: Exercise) -> set[str]:
        found: set[str] = set()
        lift = Lift(exercise, need, self.setting, None)
        for use in need.uses:
            limits = (lift.limits_kg[0], lift.most_kg(use))
            single = use is not Use.PAIR and need.count == 1
            for kind_id in self.offers(use, exercise.posture):
                filled = self._stocked and self._things[kind_id].facts.hold is not None
                if self._packed(kind_id, use, lift, limits) if filled else single and self._weighs(kind_id, *limits):
                    found.add(kind_id)
            if any(source.packed is not None for source in self.setting.sources(use, need.count, exercise.posture)):
                found.update(kind_id for kind_id in self._packable if self._packed(kind_id, use, lift, limits))
        return found

    def _weighs(self, kind_id: str, low_kg: float, high_kg: float) -> bool:
        """Whether a piece of the kind by itself is a load in the range."""
        masses = () if self._things[kind_id].facts.fixed else self._masses_kg(kind_id)
        place = bisect_left(masses, low_kg - 1e-9)
        return place < len(masses) and masses[place] <= high_kg + 1e-9

    def _masses_kg(self, kind_id: str) -> tuple[float, ...]:
        if kind_id not in self._masses:
            grains = np.rint(self.setting.states(self._things[kind_id]).mass_kg / GRAIN_KG)
            self._masses[kind_id] = tuple(sorted((grains[grains > 0] * GRAIN_KG).round(2).tolist()))
        return self._masses[kind_id]

    def _packed(self, kind_id: str, use: Use, lift: Lift, limits: tuple[float, float]) -> bool:
        """Whether a bag makes a load in the range: a new one with what is here, or one from here with a new piece."""
        low_kg, high_kg = limits
        posture, count = lift.exercise.posture, lift.need.count
        if self._things[kind_id].facts.hold is None:
            ladder = self.setting.ladder(use, count, posture)
            heaviest = ladder.mass_kg(-1) if len(ladder) else 0.0
            if heaviest + max(self._masses_kg(kind_id), default=0.0) < low_kg - GRAIN_KG:
                return False
        return self.plus(kind_id).ladder(use, count, posture).nearest_index(low_kg, low_kg, high_kg) is not None

    def plus(self, kind_id: str) -> Setting:
        """The setting with one piece of the kind."""
        if kind_id not in self._plus:
            self._plus[kind_id] = self.setting.plus(self._things[kind_id])
        return self._plus[kind_id]

    def _binds(self, exercise: Exercise, kind_id: str) -> bool:
        return not isinstance(bind(exercise, self.plus(kind_id)), Missing)

    def _may_hold(self, kind_id: str, exercise: Exercise, need: Need) -> bool:
        """Whether a kind that makes a load for the need may be held as the movement holds it: above the face, in hand.

        Decided by its facts where it is held itself; packed into a bag, or as a bag, by the loads it then makes.
        """
        lift = Lift(exercise, need, self.setting, None)
        if not need.is_load or not any(lift.in_hand(use) or lift.over_face(use) for use in need.uses):
            return True
        if self._things[kind_id].facts.hold is None and any(self._held_safely(kind_id, use, lift) for use in need.uses):
            return True
        bagged = any(
            source.packed is not None
            for use in need.uses
            for source in self.setting.sources(use, need.count, exercise.posture)
        )
        if self._things[kind_id].facts.hold is None and not (bagged and kind_id in self._packable):
            return False
        return chosen_load(Lift(exercise, need, self.plus(kind_id), None)) is not None

    def _held_safely(self, kind_id: str, use: Use, lift: Lift) -> bool:
        """Whether one piece by itself is a load for this use in the range, held as the movement holds it."""
        if use is Use.PAIR or lift.need.count > 1 or kind_id not in self.offers(use, lift.exercise.posture):
            return False
        if lift.over_face(use) and not safe_over_face(self._things[kind_id].facts):
            return False
        offer = self.offers(Use.ONE_HAND, Posture.STANDING).get(kind_id)
        if lift.in_hand(use) and not (offer is not None and held_well(offer)):
            return False
        return self._weighs(kind_id, lift.limits_kg[0], lift.most_kg(use))

    def _independent(self, exercise: Exercise, lacking: Need) -> bool:
        """Whether whatever meets the lacking need opens the movement: nothing else can get in its way.

        The other needs must be met by distinct things of this house, and no load rating may come into play with a load.
        """
        others = [need for need in fixed_needs(exercise) if need is not lacking]
        options = [fixtures_for(need, exercise, self.setting) for need in others]
        if next(distinct_fixtures(tuple(others), options), None) is None:
            return False
        need = exercise.load_need
        if need is None or need.optional:
            return True
        rated = any(need.bears > 0 for need in fixed_needs(exercise))
        apart = not any(fixture.thing is not None and _may_be_load(fixture) for found in options for fixture in found)
        return not rated and apart


def _first_load_key(exercise: Exercise) -> tuple[object, ...]:
    """What of an exercise the most of a first load, and the mass that hangs, depend on."""
    pattern = exercise.main_pattern is Pattern.PUSH_OVERHEAD
    return exercise.family is Family.GAIT, pattern, exercise.sides, single_joint(exercise), exercise.demands & HANGS


def _may_be_load(fixture: Fixture) -> bool:
    return fixture.thing is not None and form_serves(fixture.thing.facts, Use.HUG)


def _needs(exercise: Exercise) -> Iterator[Need]:
    yield from (need for need in exercise.needs if not need.optional)

"""The load for an exercise: the rung nearest to what is wanted, over all the ways it may be held."""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.exercise.model import Demand, Exercise, Family, Need, Posture, Use
from core.fit.first_load import first_load_kg, in_one_hand, load_limits_kg, most_at_first_kg
from core.fit.setting import Setting
from core.fit.words import nothing_listed
from core.loads.ladder import Ladder
from core.loads.model import Rung
from core.things.affordance import Grade

LATER_USE = 0.05
"""A later use of a need is taken when its load is nearer the target by more than this share of it."""
AS_GOOD, AS_GOOD_AT_FIRST = 0.025, 0.08
"""Loads this near are as good as each other, so the one soonest ready is taken: no set tells them apart, and a first
load is a guess anyway (judgement)."""
HELD_IN_HANDS = frozenset({Use.FRONT, Use.TWO_HANDS, Use.ONE_HAND, Use.PAIR})
NOT_ABOVE = "nothing you list for it may be held above your face: no open, dusty, splitting, sharp or glass things"
NOT_IN_ONE_HAND = "nothing you list for it is held well overhead in one hand"
POOR_HOLD = 0.25
"""A thing poor for the use is taken when its load is nearer the target by more than this share of it."""


@dataclass(frozen=True, slots=True)
class Lift:
    """A load asked for: the need, and how near to which mass; kept light unless the person has `proven` it.

    `using` is the thing to make it of wherever that serves.
    """

    exercise: Exercise
    need: Need
    setting: Setting
    wanted_kg: float | None
    proven: bool = False
    using: str = ""

    @property
    def limits_kg(self) -> tuple[float, float]:
        """The exercise's sensible range for this person."""
        return load_limits_kg(self.need, self.setting.person.body_mass_kg)

    @property
    def target_kg(self) -> float:
        """The wanted mass inside the range; a light start where none is wanted."""
        if self.wanted_kg is None:
            return first_load_kg(self.exercise, self.need, self.setting.person)
        return min(max(self.wanted_kg, 0.0), self.limits_kg[1])

    def most_kg(self, use: Use) -> float:
        """The heaviest load taken for the use."""
        high_kg = self.limits_kg[1]
        if self.proven:
            return high_kg
        return min(high_kg, most_at_first_kg(self.exercise, use, self.need.count, self.setting.person))

    def in_hand(self, use: Use) -> bool:
        """Whether one hand alone holds it over the head."""
        return use is Use.OVERHEAD and in_one_hand(self.exercise, use)

    def over_face(self, use: Use) -> bool:
        """Whether the hands hold it above the head or the face (overhead things are graded for that already)."""
        exercise = self.exercise
        lying = Demand.LYING_DOWN in exercise.demands and exercise.family is not Family.HINGE
        return use in HELD_IN_HANDS and (lying or Demand.OVERHEAD_REACH in exercise.demands)


@dataclass(frozen=True, slots=True)
class ChosenLoad:
    """A rung, and how well it is held."""

    rung: Rung
    grade: Grade


def chosen_load(lift: Lift, *, used: frozenset[str] = frozenset(), bearable_kg: float = math.inf) -> ChosenLoad | None:
    """The rung nearest the target over all uses; an earlier use wins unless a later one is clearly nearer.

    `used` things are left out, and with its u95 the load stays within `bearable_kg`. None for an optional load when
    doing without is nearer the target.
    """
    best = _nearest(lift, used, bearable_kg, lift.using) if lift.using else None
    best = best or _nearest(lift, used, bearable_kg, "")
    if best is None:
        return None
    ladder, index = best
    low_kg, most_kg = lift.limits_kg[0], lift.most_kg(ladder.use)
    within = AS_GOOD if lift.proven else AS_GOOD_AT_FIRST
    rung = ladder.rung(ladder.handiest_index(index, low_kg, most_kg, within=within, bearable_kg=bearable_kg))
    if lift.need.optional and lift.target_kg < rung.mass.value / 2:
        return None
    return ChosenLoad(rung, _grade_of(rung, lift.setting, lift.exercise.posture))


def _nearest(lift: Lift, used: frozenset[str], bearable_kg: float, only: str) -> tuple[Ladder, int] | None:
    """The ladder and place of the rung nearest the target over all uses; of one thing alone where `only` names it."""
    need, setting, target_kg, posture = lift.need, lift.setting, lift.target_kg, lift.exercise.posture
    low_kg, _ = lift.limits_kg
    best: tuple[Ladder, int] | None = None
    least_off = math.inf
    for order, use in enumerate(need.uses):
        in_hand, over_face = lift.in_hand(use), lift.over_face(use)
        for sound, worse in ((True, LATER_USE * order), (False, LATER_USE * order + POOR_HOLD)):
            if least_off <= worse * target_kg + 1e-9:
                continue  # no rung can come near enough to make up for that, so its ladder is never built
            ladder = setting.ladder(
                use, need.count, posture, used, sound=sound, only=only, in_hand=in_hand, over_face=over_face
            )
            index = ladder.nearest_index(target_kg, low_kg, lift.most_kg(use), bearable_kg=bearable_kg)
            if index is None:
                continue
            off = abs(ladder.mass_kg(index) - target_kg) + worse * target_kg
            if off < least_off - 1e-9:
                best, least_off = (ladder, index), off
    return best


def _grade_of(rung: Rung, setting: Setting, posture: Posture) -> Grade:
    first = rung.recipe.parts[0].thing_id
    return next(offer.grade for offer in setting.offers(rung.use, posture) if offer.thing_id == first)


def why_no_load(lift: Lift) -> str:
    """Why the house makes no load for it, from the first use it makes any load for."""
    need, setting = lift.need, lift.setting
    low_kg, high_kg = lift.limits_kg
    for use in need.uses:
        ladder = setting.ladder(use, need.count, lift.exercise.posture)
        if not len(ladder):
            continue
        lightest, heaviest = ladder.mass_kg(0), ladder.mass_kg(-1)
        if heaviest < low_kg:
            return f"the heaviest you can make for it is {heaviest:.1f} kg, it needs at least {low_kg:.1f} kg"
        if lightest > high_kg:
            return f"the lightest you can make for it is {lightest:.1f} kg, it takes at most {high_kg:.1f} kg"
        if ladder.nearest_index(low_kg, low_kg, lift.most_kg(use)) is not None:
            return NOT_ABOVE if lift.over_face(use) else NOT_IN_ONE_HAND
        if ladder.nearest_index(low_kg, low_kg, high_kg) is not None:
            return f"nothing for it is light enough to begin with (at most {lift.most_kg(use):.1f} kg)"
        return f"you can make no load from {low_kg:.1f} to {high_kg:.1f} kg for it"
    return nothing_listed(need.uses[0])

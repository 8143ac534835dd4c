"""The load someone starts with while nothing is known of their strength, as a share of body mass.

All of it is judgement, no source, to begin light: a place in the movement's own sensible range by experience, and a
most for the first set by experience (in one hand, and in all), half of it for the shoulders and for single-joint
work; walks with a pack from 5 to 15 % (military training starts at 20 % in all, FM 21-20, for screened adults).
"""

from __future__ import annotations

from core.exercise.model import Exercise, Family, Need, Pattern, Sides, Use
from core.exercise.strength import single_joint
from core.house.model import Experience, Person

START_PLACE: dict[Experience, float] = {Experience.NEW: 0.1, Experience.SOME: 0.3, Experience.TRAINED: 0.5}
WALK_SHARE: dict[Experience, float] = {Experience.NEW: 0.05, Experience.SOME: 0.075, Experience.TRAINED: 0.10}
MOST_WALK_SHARE: dict[Experience, float] = {Experience.NEW: 0.10, Experience.SOME: 0.10, Experience.TRAINED: 0.15}
MOST_SHARE: dict[Experience, tuple[float, float]] = {
    Experience.NEW: (0.10, 0.20),
    Experience.SOME: (0.30, 0.50),
    Experience.TRAINED: (0.40, 0.80),
}
"""The most of a first load in one hand, and in all."""
LIGHT_WORK = 0.5
"""Where the shoulders press, and where one joint does the work, this part of it."""


def load_limits_kg(need: Need, body_mass_kg: float) -> tuple[float, float]:
    """The sensible range of the external load, kg."""
    low, high = need.mass_share or (0.0, 1.0)
    return low * body_mass_kg, high * body_mass_kg


def first_load_kg(exercise: Exercise, need: Need, person: Person) -> float:
    """Where to start, kg."""
    if exercise.family is Family.GAIT:
        return WALK_SHARE[person.experience] * person.body_mass_kg
    low_kg, high_kg = load_limits_kg(need, person.body_mass_kg)
    return low_kg + START_PLACE[person.experience] * (high_kg - low_kg)


def most_at_first_kg(exercise: Exercise, use: Use, count: int, person: Person) -> float:
    """The heaviest load of this use to start with, kg (of a pair: both together)."""
    if exercise.family is Family.GAIT:
        return MOST_WALK_SHARE[person.experience] * person.body_mass_kg
    in_hand, in_all = MOST_SHARE[person.experience]
    share = in_hand if count == 1 and in_one_hand(exercise, use) else in_all
    return share * (LIGHT_WORK if _light_work(exercise, use) else 1.0) * person.body_mass_kg


def in_one_hand(exercise: Exercise, use: Use) -> bool:
    """Overhead and in a swing one load may be held in both hands: then both sides work at once."""
    return use is Use.ONE_HAND or (use in (Use.OVERHEAD, Use.SWING) and exercise.sides is not Sides.BOTH)


def _light_work(exercise: Exercise, use: Use) -> bool:
    return use is Use.OVERHEAD or exercise.main_pattern is Pattern.PUSH_OVERHEAD or single_joint(exercise)

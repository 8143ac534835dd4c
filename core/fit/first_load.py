"""The load someone starts with where no effort is asked for, as a share of body mass.

All of it is judgement, no source, to begin light: a place in the movement's own sensible range by experience; for
someone new at most a tenth of body mass in each hand and a fifth in all; walks with a pack at 5 to 10 % (military
training starts at 20 % in all, FM 21-20, for screened adults).
"""

from __future__ import annotations

from core.exercise.model import Exercise, Family, Need, Use
from core.house.model import Experience, Person

START_PLACE: dict[Experience, float] = {Experience.NEW: 0.1, Experience.SOME: 0.3, Experience.TRAINED: 0.5}
WALK_SHARE: dict[Experience, float] = {Experience.NEW: 0.05, Experience.SOME: 0.075, Experience.TRAINED: 0.10}
MOST_WALK_SHARE = 0.10
MOST_NEW_HAND_SHARE, MOST_NEW_SHARE = 0.10, 0.20
ONE_HANDED = frozenset({Use.ONE_HAND, Use.OVERHEAD})


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
    """The heaviest load of this use to start with, kg."""
    if exercise.family is Family.GAIT:
        return MOST_WALK_SHARE * person.body_mass_kg
    if person.experience is not Experience.NEW:
        return float("inf")
    share = MOST_NEW_HAND_SHARE if use in ONE_HANDED and count == 1 else MOST_NEW_SHARE
    return share * person.body_mass_kg

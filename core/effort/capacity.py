"""What a person could lift once, per pattern, as effective load on one working side.

Measured capacities (tests, logged sets, or the prescription to be swapped) come first. Without any, a starting guess
by experience is used: common practice, no source, with wide doubt that one test or one logged set replaces.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.effort.load import effective_kg, effective_u_kg
from core.effort.relation import relation_u, share_of_max
from core.exercise.model import Exercise, Pattern
from core.exercise.strength import carries_over, leading_muscle
from core.house.model import Experience, Person
from core.quantity import Measured, Origin

GUESS_U = 0.25
SINGLE_JOINT_U = 0.35
SAME_PATTERN_U = 0.05
OTHER_PATTERN_U = 0.2
"""Relative standard uncertainties (assumed): a starting guess, a single-joint guess, moving to another exercise of the
pattern, moving to another pattern."""

STARTING_SHARES: dict[Pattern, tuple[float, float, float]] = {
    Pattern.SQUAT: (0.75, 0.95, 1.20),
    Pattern.LUNGE: (0.95, 1.15, 1.40),
    Pattern.HINGE: (0.75, 0.95, 1.25),
    Pattern.GROUND_TO_OVERHEAD: (0.50, 0.62, 0.78),
    Pattern.PUSH_LEVEL: (0.33, 0.45, 0.60),
    Pattern.PUSH_OVERHEAD: (0.20, 0.28, 0.38),
    Pattern.PULL_LEVEL: (0.31, 0.42, 0.55),
    Pattern.PULL_OVERHEAD: (0.38, 0.50, 0.64),
}
"""One-repetition effective load per side as a share of body mass: new, some, trained. Common practice, no source."""
USUAL_MASS_KG = 75.0
"""Where the shares hold as they stand; strength goes with mass to the power of two thirds (Jaric 2002, memory)."""

EXPERIENCE_PLACE: dict[Experience, int] = {Experience.NEW: 0, Experience.SOME: 1, Experience.TRAINED: 2}
DEFAULT_EFFORT: tuple[float, float, float] = (7.0, 7.5, 8.0)
"""Effort of a usual set: new, some, trained."""
EIGHT_REPS = 8.0
RANGE_FACTOR: tuple[float, float, float] = (0.5, 0.75, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Prescription:
    """What a plan asks for: sets of reps (or s, or m) with a load at an effort of 1 to 10. Unknown parts are None."""

    sets: int = 3
    reps: float | None = None
    load_kg: float | None = None
    effort: float = 8.0
    seconds: float | None = None
    distance_m: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Ceiling:
    """The one-repetition effective load of a person in one exercise: kg per side, its doubt, and who says so.

    `transfer_u` is the relative doubt of carrying it over from the exercise it was set at (0: the same one).
    """

    one_rep: Measured
    told_by: str
    measured: bool
    transfer_u: float = 0.0


def one_rep_from_set(
    exercise: Exercise, *, load: Measured, reps: float, effort: float, body_mass_kg: float
) -> Measured:
    """One-repetition effective load from a set of `reps` with (10 - effort) in reserve; kg on one side."""
    to_failure = max(1.0, reps + 10.0 - effort)
    moved_kg = effective_kg(exercise, load.value, body_mass_kg)
    one_rep_kg = moved_kg / share_of_max(to_failure)
    moved_u = effective_u_kg(exercise, load.u, body_mass_kg) / moved_kg if moved_kg else 0.0
    return Measured(one_rep_kg, one_rep_kg * math.hypot(relation_u(to_failure), moved_u), Origin.ESTIMATE)


def starting_guess(exercise: Exercise, person: Person) -> Ceiling:
    """A guess from experience and body mass alone, kg on one side."""
    place = EXPERIENCE_PLACE[person.experience]
    if carries_over(exercise):
        kg = STARTING_SHARES[exercise.main_pattern][place] * scaled_mass_kg(person)
        return Ceiling(
            one_rep=Measured(kg, kg * GUESS_U), told_by="a starting guess from your experience", measured=False
        )
    kg = _single_joint_guess_kg(exercise, person, place)
    return Ceiling(
        one_rep=Measured(kg, kg * SINGLE_JOINT_U), told_by="a starting guess for this movement", measured=False
    )


def _single_joint_guess_kg(exercise: Exercise, person: Person, place: int) -> float:
    """From the strong end of the exercise's own loads; without any, from its usual repetitions at the usual effort."""
    mass_kg = person.body_mass_kg
    own_kg = _own_range_guess_kg(exercise, person, place)
    if own_kg is not None:
        return own_kg
    usual_reps = sum(exercise.typical) / 2
    share = share_of_max(max(1.0, usual_reps + 10.0 - DEFAULT_EFFORT[place]))
    return (effective_kg(exercise, 0.0, mass_kg) or 1.0) / share


def ceiling(exercise: Exercise, person: Person, known: tuple[Exercise, Measured] | None = None) -> Ceiling:
    """The person's ceiling in `exercise`: from `known` (an exercise and its one-rep load) or measured, else a guess.

    The nearest origin counts: the exercise itself, then its pattern, then `known` in another pattern, which the ratio
    of the starting shares scales and `OTHER_PATTERN_U` makes less sure.
    """
    origins = [] if known is None else [_Origin(*known, f"what {known[0].name.lower()} was set at")]
    compound = carries_over(exercise)
    moved = [_moved(exercise, origin, person) for origin in origins if origin.speaks_for(exercise)]
    for capacity in person.capacities:
        same = capacity.exercise_id == exercise.id
        if capacity.one_rep_kg.value > 0 and (same or (compound and capacity.pattern is exercise.main_pattern)):
            moved.append(_carried(capacity.one_rep_kg, 1.0, 0.0 if same else SAME_PATTERN_U, capacity.told_by))
    return min(moved, key=lambda found: found.transfer_u) if moved else starting_guess(exercise, person)


def scaled_mass_kg(person: Person) -> float:
    """Body mass as strength goes with it: to the power of two thirds, so a heavy person is not taken for as strong."""
    return float(USUAL_MASS_KG * (person.body_mass_kg / USUAL_MASS_KG) ** (2 / 3))


def own_range_part(exercise: Exercise, person: Person) -> float:
    """How much of the guess for its pattern the exercise's own range of loads allows, 0 to 1."""
    own_kg = _own_range_guess_kg(exercise, person, EXPERIENCE_PLACE[person.experience])
    return 1.0 if own_kg is None else min(1.0, own_kg / starting_guess(exercise, person).one_rep.value)


def _own_range_guess_kg(exercise: Exercise, person: Person, place: int) -> float | None:
    """Taking the strong end of the exercise's own loads (less for less experience) as what eight repetitions allow."""
    need = exercise.load_need
    if need is None or need.optional or need.mass_share is None or need.mass_share[0] <= 0:
        return None
    strong_kg = need.mass_share[1] * person.body_mass_kg * RANGE_FACTOR[place]
    return max(effective_kg(exercise, strong_kg, person.body_mass_kg), 1.0) / share_of_max(EIGHT_REPS)


@dataclass(frozen=True, slots=True)
class _Origin:
    """An exercise whose one-repetition load is known."""

    exercise: Exercise
    one_rep: Measured
    told_by: str

    def speaks_for(self, other: Exercise) -> bool:
        """Compound work speaks for compound work, single-joint work only for the same leading muscle."""
        compound = carries_over(other)
        if carries_over(self.exercise) is not compound:
            return False
        return compound or leading_muscle(self.exercise) is leading_muscle(other)


def _moved(exercise: Exercise, origin: _Origin, person: Person) -> Ceiling:
    if origin.exercise.id == exercise.id:
        return _carried(origin.one_rep, 1.0, 0.0, origin.told_by)
    if not carries_over(exercise):
        return _carried(origin.one_rep, 1.0, OTHER_PATTERN_U, origin.told_by)
    pattern = origin.exercise.main_pattern
    if pattern is exercise.main_pattern:
        return _carried(origin.one_rep, 1.0, SAME_PATTERN_U, origin.told_by)
    place = EXPERIENCE_PLACE[person.experience]
    ratio = STARTING_SHARES[exercise.main_pattern][place] / STARTING_SHARES[pattern][place]
    return _carried(origin.one_rep, ratio, OTHER_PATTERN_U, origin.told_by)


def _carried(one_rep: Measured, ratio: float, moving: float, told_by: str) -> Ceiling:
    kg = one_rep.value * ratio
    relative = math.hypot(one_rep.u / one_rep.value, moving)
    return Ceiling(one_rep=Measured(kg, kg * relative), told_by=told_by, measured=True, transfer_u=moving)

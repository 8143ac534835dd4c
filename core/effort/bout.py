"""How long one bout lasts: what tells a sprint from a steady run, and a hold from a walk.

Repetitions take the exercise's own time each; distances a usual pace (assumed: carries 1 m/s, walks 1.34 m/s, which is
the 4.8 km/h of FM 21-18, runs 2.5 m/s).
"""

from __future__ import annotations

from core.effort.capacity import Prescription
from core.effort.dose import Dose
from core.exercise.model import DoseKind, Exercise, Family, Pattern

CARRY_M_S, WALK_M_S, RUN_M_S = 1.0, 1.34, 2.5


def pace_m_s(exercise: Exercise) -> float:
    """The usual pace of a movement that is counted in metres."""
    if exercise.main_pattern is Pattern.RUN:
        return RUN_M_S
    return WALK_M_S if exercise.family is Family.GAIT else CARRY_M_S


def bout_s(exercise: Exercise, written: Prescription) -> float:
    """Seconds of one set as prescribed; where it says nothing, the middle of the exercise's own range."""
    if written.seconds is not None:
        return written.seconds
    if written.distance_m is not None:
        return written.distance_m / pace_m_s(exercise)
    if written.reps is not None:
        return written.reps * exercise.rep_s
    return _seconds(exercise, sum(exercise.typical) / 2)


def dose_bout_s(exercise: Exercise, dose: Dose) -> float:
    """Seconds of one set of a dose, at the middle of its range."""
    low, high = dose.seconds or dose.distance_m or dose.reps or (0, 0)
    return _seconds(exercise, (low + high) / 2)


def _seconds(exercise: Exercise, amount: float) -> float:
    if exercise.dose is DoseKind.TIME:
        return amount
    return amount * exercise.rep_s if exercise.dose is DoseKind.REPS else amount / pace_m_s(exercise)

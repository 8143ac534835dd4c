"""The dose that is taken while none is given, as one would type it."""

from __future__ import annotations

from core.effort.dose import default_prescription
from core.exercise.model import Exercise
from core.house.model import Person
from core.quantity.display import UnitSystem, format_distance

LONG_S = 180.0


def usual_dose(exercise: Exercise, person: Person, system: UnitSystem) -> str:
    """“usual: 3 x 9, effort 7.5”."""
    wanted = default_prescription(exercise, person)
    if wanted.reps is not None:
        amount = f"{wanted.reps:.0f}"
    elif wanted.seconds is not None:
        amount = f"{wanted.seconds:.0f} s" if wanted.seconds < LONG_S else f"{wanted.seconds / 60:.0f} min"
    else:
        amount = format_distance(wanted.distance_m or 0.0, system)
    sets = f"{wanted.sets} x " if wanted.sets > 1 else ""
    return f"usual: {sets}{amount}, effort {wanted.effort:g}"

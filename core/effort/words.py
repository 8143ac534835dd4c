"""A dose in words: “4 × 11–13 each side”, “3 × 30–40 s”, “25 min”, with its load when there is one."""

from __future__ import annotations

from core.effort.dose import Dose
from core.exercise.model import Exercise, Sides
from core.fit.model import Binding
from core.quantity.display import UnitSystem, format_distance, format_measured_mass

LONG_S = 180
NO_BREAK = "\u00a0"


def span(pair: tuple[int, int]) -> str:
    """“11–13”, or “12” when both ends are alike."""
    low, high = pair
    return f"{low}" if low == high else f"{low}–{high}"


def amount_words(dose: Dose, exercise: Exercise, system: UnitSystem) -> str:
    """Sets and what is counted, without the load; a single set is not counted: “9 each side”, “8 reps”."""
    each = " each side" if exercise.sides is Sides.EACH else ""
    sets = f"{dose.sets} × " if dose.sets > 1 else ""
    if dose.seconds is not None and dose.seconds[1] >= LONG_S:
        minutes = (round(dose.seconds[0] / 60), round(dose.seconds[1] / 60))
        return f"{sets}{span(minutes)}{NO_BREAK}min{each}"
    if dose.seconds is not None:
        return f"{sets}{span(dose.seconds)}{NO_BREAK}s{each}"
    if dose.distance_m is not None:
        middle = (dose.distance_m[0] + dose.distance_m[1]) / 2
        return f"{sets}{format_distance(middle, system)}{each}"
    reps = span(dose.reps or (0, 0))
    return f"{sets}{reps}{each}" if sets or each else f"{reps}{NO_BREAK}reps"


def dose_words(dose: Dose, exercise: Exercise, binding: Binding, system: UnitSystem) -> str:
    """Sets, what is counted, and the load with its ±: “4 × 11–13 at 22.8 kg ± 0.4”."""
    amount = amount_words(dose, exercise, system)
    if binding.load is None:
        return amount
    mass = format_measured_mass(binding.load.mass, system).replace(" ", NO_BREAK)
    return f"{amount} at {mass}"

"""How doses, loads and pours are written on paper and in tables."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from core.effort.dose import Dose
from core.exercise.model import Exercise, Sides
from core.fit.model import Binding
from core.mass.model import Material
from core.plan.model import FillStep
from core.quantity.display import UnitSystem, format_distance, format_measured_mass, format_volume


def dose_words(exercise: Exercise, dose: Dose, system: UnitSystem = UnitSystem.METRIC) -> str:
    """4 × 9–15, 3 × 40 s a side, 38 min or 4 × 20–30 m."""
    amount = _amount(dose, system)
    sets = f"{dose.sets} × " if dose.sets > 1 or dose.reps is not None else ""
    return f"{sets}{amount}{' a side' if exercise.sides is Sides.EACH else ''}"


def _amount(dose: Dose, system: UnitSystem) -> str:
    if dose.seconds is not None:
        return span_of_seconds(dose.seconds)
    if dose.distance_m is not None:
        low, high = dose.distance_m
        return span(format_distance(low, system), format_distance(high, system))
    return span(*(str(reps) for reps in dose.reps or (0, 0)))


def span_of_seconds(seconds: tuple[int, int]) -> str:
    """20–30 s, or minutes from two on where both are whole."""
    minutes = min(seconds) >= 120 and not any(part % 60 for part in seconds)
    low, high = (part // 60 if minutes else part for part in seconds)
    return f"{span(str(low), str(high))} {'min' if minutes else 's'}"


def span(low: str, high: str) -> str:
    """low–high, the low one alone when they are the same, a shared unit only once."""
    if low == high:
        return low
    number, _, unit = low.partition(" ")
    return f"{number}–{high}" if unit and high.endswith(f" {unit}") else f"{low}–{high}"


def load_words(binding: Binding, system: UnitSystem) -> str:
    """What to take and its mass: “2 × Water carrier (13 L water each), 28.2 kg ± 0.8”; empty for the body alone."""
    if binding.load is None:
        return ""
    return f"{binding.load.recipe.name}, {format_measured_mass(binding.load.mass, system)}"


def pour_lines(steps: Iterable[FillStep], materials: Mapping[str, Material], system: UnitSystem) -> tuple[str, ...]:
    """“Water carrier: 13.0 L of water, 14.1 kg ± 0.4 (each of 2)”: a line per pour, alike ones together."""
    counted = Counter(_pour_words(step, materials, system) for step in steps)
    return tuple(f"{words} (each of {count})" if count > 1 else words for words, count in counted.items())


def _pour_words(step: FillStep, materials: Mapping[str, Material], system: UnitSystem) -> str:
    mass = format_measured_mass(step.mass, system)
    if step.volume_l == 0:
        return f"{step.name}: empty, {mass}"
    material = materials[step.material_id].name.lower()
    return f"{step.name}: {format_volume(step.volume_l, system)} of {material}, {mass}"


def minutes_words(seconds: int) -> str:
    """Whole minutes, rounded up so that nobody is promised less time than it takes."""
    return f"{-(-seconds // 60)} min"

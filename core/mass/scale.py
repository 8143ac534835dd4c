"""Scale readings: what each kind of household scale can give, and the mass a reading stands for.

The figures per scale are common practice for home scales (no source): read yours off its label where you can.
"""

from __future__ import annotations

import datetime
import math
from dataclasses import dataclass

from core.errors import InputError
from core.mass.model import Level, ScaleKind, ScaleReading
from core.quantity.measured import Measured, Origin

MOST_KG = 1000.0
COARSEST_KG = 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleManner:
    """Display step, standard deviation of repeats and half-width of the lasting error, kg; where it is used.

    `zeroed_doubt_kg` is what lasts of that error once what the scale shows with nothing on it is taken off.
    """

    resolution_kg: float
    repeatability_kg: float
    offset_doubt_kg: float
    zeroed_doubt_kg: float
    words: str


MANNERS = {
    ScaleKind.KITCHEN: ScaleManner(
        resolution_kg=0.001,
        repeatability_kg=0.002,
        offset_doubt_kg=0.005,
        zeroed_doubt_kg=0.003,
        words="on a kitchen scale",
    ),
    ScaleKind.LUGGAGE: ScaleManner(
        resolution_kg=0.05,
        repeatability_kg=0.05,
        offset_doubt_kg=0.15,
        zeroed_doubt_kg=0.1,
        words="on a luggage scale",
    ),
    ScaleKind.BATHROOM_DIFFERENCE: ScaleManner(
        resolution_kg=0.1,
        repeatability_kg=0.1,
        offset_doubt_kg=0.1,
        zeroed_doubt_kg=0.1,
        words="on a bathroom scale, you with it and without",
    ),
    ScaleKind.DIRECT: ScaleManner(
        resolution_kg=0.1,
        repeatability_kg=0.1,
        offset_doubt_kg=0.3,
        zeroed_doubt_kg=0.1,
        words="standing on a bathroom scale",
    ),
}


def reading_on(
    kind: ScaleKind,
    reading_kg: float,
    *,
    without_kg: float | None = None,
    resolution_kg: float | None = None,
    at_level: Level | None = None,
    date: datetime.date | None = None,
) -> ScaleReading:
    """A reading with the usual manners of its scale, or with its own display step.

    `without_kg` is what it shows without the thing: you alone, or nothing at all where the scale is off by a constant.
    A scale that shows less than nothing gives a negative one; the reading is then noted that much higher.
    """
    manner = MANNERS[kind]
    low = min(without_kg or 0.0, 0.0)
    return ScaleReading(
        kind=kind,
        reading_kg=reading_kg - low,
        without_kg=None if without_kg is None else without_kg - low,
        resolution_kg=manner.resolution_kg if resolution_kg is None else _step(resolution_kg),
        repeatability_kg=manner.repeatability_kg,
        offset_doubt_kg=manner.offset_doubt_kg if without_kg is None else manner.zeroed_doubt_kg,
        at_level=at_level,
        date=date,
    )


def _step(resolution_kg: float) -> float:
    """A display step a household scale can have."""
    if not 0 < resolution_kg <= COARSEST_KG:
        rule = f"is not a step a scale shows, which is more than 0 and up to {COARSEST_KG:g} kg"
        raise InputError(f"{resolution_kg:g} kg", rule, "write how far apart its numbers are, like 0.1 kg")
    return resolution_kg


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """The mass a reading stands for: `u_repeat_kg` shrinks with repetition, `u_lasting_kg` does not."""

    mass_kg: float
    u_repeat_kg: float
    u_lasting_kg: float

    @property
    def measured(self) -> Measured:
        """The reading as one measured value."""
        return Measured(self.mass_kg, math.hypot(self.u_repeat_kg, self.u_lasting_kg), Origin.SCALE)


def weighed(reading: ScaleReading) -> Weighed:
    """The mass of the thing on the scale; `InputError` for a reading that cannot be one.

    A difference of two readings carries the repeatability and the display step of both.
    """
    _check(reading)
    readings = 1 if reading.without_kg is None else 2
    step = reading.resolution_kg**2 / 12 * readings
    return Weighed(
        mass_kg=reading.reading_kg - (reading.without_kg or 0.0),
        u_repeat_kg=reading.repeatability_kg * math.sqrt(readings),
        u_lasting_kg=math.sqrt(step + reading.offset_doubt_kg**2 / 3),
    )


def _check(reading: ScaleReading) -> None:
    for value in (reading.reading_kg, 0.0 if reading.without_kg is None else reading.without_kg):
        if not 0 <= value <= MOST_KG:
            raise InputError(f"{value:g} kg", f"is not a scale reading from 0 to {MOST_KG:.0f} kg", "weigh it again")
    manners = (reading.resolution_kg, reading.repeatability_kg, reading.offset_doubt_kg)
    if not all(0 <= value <= MOST_KG for value in manners) or not any(manners):
        raise InputError(f"{manners}", "does not describe a scale", "give its display step and how well it repeats")
    if reading.kind is ScaleKind.BATHROOM_DIFFERENCE and reading.without_kg is None:
        rule = "is one reading, and a difference needs two"
        raise InputError(f"{reading.reading_kg:g} kg", rule, "weigh yourself without it too")
    if reading.without_kg is not None and reading.without_kg > reading.reading_kg:
        alone = "you weigh" if reading.kind is ScaleKind.BATHROOM_DIFFERENCE else "the scale shows"
        rule = f"is less than {alone} without it ({reading.without_kg:g} kg)"
        raise InputError(f"{reading.reading_kg:g} kg", rule, "check which reading is which")

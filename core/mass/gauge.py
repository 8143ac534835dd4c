"""Which mass stands at which height of a container: the scale beside a drawn vessel, and the way back from a height.

Heights are cm above the inner base, masses kg of the whole. Everything here is a plain lookup, quick enough to follow
a hand that drags the fill line.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.mass.bounds import inside_height
from core.mass.learning import Setting, known
from core.mass.levels import level_volume
from core.mass.model import Bag, Container, HeightLevel, Level, ScaleReading, VolumeLevel
from core.quantity.display import UnitSystem, format_mass
from core.quantity.measured import Measured
from core.quantity.table import POUND_KG

MOST_LABELS = 6
CLEAR_OF_FULL = 0.25
"""A round mass closer to full than this part of a labelled step has no label, for that of full."""
PARTS = {1: 5, 2: 4, 5: 5}
"""Into how many parts a labelled step of 1, 2 or 5 is divided."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeMark:
    """A mark of the scale; only the labelled ones are long."""

    height_cm: float
    mass_kg: float
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """A container as its weighings have taught it, with what it is filled with; make one with `gauge_of`."""

    container: Container
    kg_l: float

    @property
    def full_cm(self) -> float:
        """Height of the surface at the nominal capacity."""
        return self.height_of_volume(self.container.nominal_l.value)

    @property
    def has_line(self) -> bool:
        """Whether a height can be read off it; a soft bag has no true line."""
        return not isinstance(self.container.shape, Bag)

    def height_of_volume(self, volume_l: float) -> float:
        """Height of the surface when `volume_l` is inside, held between base and rim; nominal for a bag."""
        shape = self.container.shape
        scaled = volume_l * shape.full_volume_l / self.container.brimful_l.value
        return shape.height_cm(min(max(scaled, 0.0), shape.full_volume_l))

    def height_of_mass(self, mass_kg: float) -> float:
        """Height of the surface when the whole weighs `mass_kg`, held between base and rim."""
        return self.height_of_volume((mass_kg - self.container.tare_kg.value) / self.kg_l)

    def level_at(self, height_cm: float) -> Level:
        """What a line drawn at `height_cm` means: the height itself, or a volume where the container has no line."""
        if self.has_line:
            return HeightLevel(height_cm=height_cm)
        shape = self.container.shape
        share = shape.volume_l(height_cm) / shape.full_volume_l
        return VolumeLevel(volume_l=share * self.container.brimful_l.value)

    def height_of(self, level: Level) -> float:
        """Where the line stands at a level; `InputError` for a level the container can't have."""
        if isinstance(level, HeightLevel):
            return inside_height(level.height_cm, self.container.shape.full_height_cm)
        return self.height_of_volume(level_volume(self.container, level, heaped=False).volume_l)

    def half(self) -> Level:
        """A line at half of the nominal capacity, to begin with."""
        return self.level_at(self.height_of_volume(self.container.nominal_l.value / 2))

    def band_cm(self, height_cm: float, mass: Measured) -> float:
        """Half the height over which the mass of the whole changes by the ± of `mass`, around a line."""
        shape = self.container.shape
        litres = shape.volume_l(height_cm) / shape.full_volume_l * self.container.brimful_l.value
        wide_l = mass.u95 / self.kg_l
        return (self.height_of_volume(litres + wide_l) - self.height_of_volume(litres - wide_l)) / 2

    def marks(self, system: UnitSystem) -> tuple[GaugeMark, ...]:
        """Empty, round masses in the person's unit, and full, by rising height."""
        empty_kg = self.container.tare_kg.value
        full_kg = empty_kg + self.kg_l * self.container.nominal_l.value
        unit, unit_kg = _unit(full_kg, system)
        step, parts = _step((full_kg - empty_kg) / unit_kg)
        small_kg = step / parts * unit_kg
        first, last = math.floor(empty_kg / small_kg) + 1, math.ceil(full_kg / small_kg) - 1
        last_label = full_kg / small_kg - CLEAR_OF_FULL * parts
        between = tuple(
            GaugeMark(
                height_cm=self.height_of_mass(at * small_kg),
                mass_kg=at * small_kg,
                label=f"{at // parts * step:g} {unit}" if at % parts == 0 and at <= last_label else "",
            )
            for at in range(first, last + 1)
        )
        empty = GaugeMark(height_cm=0.0, mass_kg=empty_kg, label=f"{format_mass(empty_kg, system)} empty")
        full = GaugeMark(height_cm=self.full_cm, mass_kg=full_kg, label=f"{format_mass(full_kg, system)} full")
        return (empty, *between, full)


def gauge_of(setting: Setting, readings: Sequence[ScaleReading] = ()) -> Gauge:
    """The gauge of a container with its material; `readings` with a level have taught it."""
    taught = known(setting, readings)
    return Gauge(container=taught.container, kg_l=taught.kg_l)


def _unit(full_kg: float, system: UnitSystem) -> tuple[str, float]:
    """The unit whose round numbers suit a container of this size, and that unit in kg."""
    if system is UnitSystem.US:
        return ("lb", POUND_KG) if full_kg >= POUND_KG else ("oz", POUND_KG / 16)
    return ("kg", 1.0) if full_kg >= 1 else ("g", 0.001)


def _step(span: float) -> tuple[float, int]:
    """The smallest labelled step of 1, 2 or 5 (times a power of ten) that fits `span` few enough times; its parts."""
    least = span / MOST_LABELS
    power = 10.0 ** math.floor(math.log10(least))
    digit = next((one for one in PARTS if one * power >= least * (1 - 1e-9)), 0)
    return (digit * power, PARTS[digit]) if digit else (10 * power, PARTS[1])

"""Which of a container's scale readings tell something about the fill in hand, and how.

A reading taken at this very fill tells its mass; one taken at another fill of the same material, or of the empty
container, teaches about the container. Readings of other materials, or of levels it no longer has, tell nothing here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from core.errors import InputError
from core.mass.levels import level_volume
from core.mass.model import Container, Level, Material, Packing, ScaleReading

SAME_L = 1e-6
"""Two levels closer than this are the same fill."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighings:
    """The level as it was read when weighed (if it was), and the readings for `core.mass.weigh.estimate`.

    `now` are places in the list of all readings of those taken at this fill.
    """

    level: Level
    readings: tuple[ScaleReading, ...]
    now: tuple[int, ...] = ()


def weighings_of(
    container: Container,
    material: Material,
    packing: Packing,
    level: Level,
    readings: Sequence[ScaleReading],
    then_l: Sequence[float | None] | None = None,
) -> Weighings:
    """The readings that count for `material` at `level`; those of this very fill come without a level.

    `then_l` is `litres_then` of each reading, for who asks about many levels.
    """
    here_l = level_volume(container, level, heaped=False).volume_l
    kept: list[ScaleReading] = []
    now: list[int] = []
    litres = [litres_then(container, reading) for reading in readings] if then_l is None else then_l
    for place, (reading, there_l) in enumerate(zip(readings, litres, strict=True)):
        if there_l is None or not _tells(reading, there_l, material, packing):
            continue
        same = abs(there_l - here_l) <= SAME_L
        kept.append(replace(reading, at_level=None) if same else reading)
        if same:
            now.append(place)
            level = reading.at_level or level
    return Weighings(level=level, readings=tuple(kept), now=tuple(now))


def teaching(
    container: Container, material: Material, packing: Packing, readings: Sequence[ScaleReading]
) -> tuple[ScaleReading, ...]:
    """The readings that teach about the container filled with `material`, whatever the fill."""
    found = ((reading, litres_then(container, reading)) for reading in readings)
    return tuple(
        reading for reading, litres in found if litres is not None and _tells(reading, litres, material, packing)
    )


def litres_then(container: Container, reading: ScaleReading) -> float | None:
    """What was inside when it was weighed; None for a reading without a level or at one this container can't have."""
    if reading.at_level is None:
        return None
    try:
        return level_volume(container, reading.at_level, heaped=False).volume_l
    except InputError:
        return None


def _tells(reading: ScaleReading, litres: float, material: Material, packing: Packing) -> bool:
    if litres <= SAME_L or reading.material_id is None:
        return True
    return reading.material_id == material.id and reading.packing is packing

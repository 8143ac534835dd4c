"""What is on the scale: a container at a level, or a thing that is not filled; what a reading of it means and keeps."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

from core.loads.filling import Filling
from core.mass.model import Combined, Level, ScaleReading
from core.mass.trust import doubting_mass
from core.mass.weigh import combine
from core.quantity import Measured
from core.quantity.display import UnitSystem
from core.store.commands import AddReading
from core.things.model import Thing


class Subject(Protocol):
    """What is on the scale."""

    def weighed(self, reading: ScaleReading) -> Combined:
        """What the reading comes to; `InputError` when it can't be one."""
        ...

    def keep(self, reading: ScaleReading) -> AddReading:
        """Note the reading."""
        ...

    def trust(self, reading: ScaleReading) -> AddReading:
        """Note the reading, and doubt what it contradicts."""
        ...


@dataclass(frozen=True, slots=True)
class FilledSubject:
    """A container at a level."""

    filling: Filling
    level: Level

    def weighed(self, reading: ScaleReading) -> Combined:
        """See `Subject`."""
        return self.filling.weighed(self.level, reading)

    def keep(self, reading: ScaleReading) -> AddReading:
        """See `Subject`; what is in it now is noted with it."""
        noted = self.filling.reading_at(self.level, reading)
        return AddReading(self.filling.thing.id, noted, fill=self.filling.inside(self.level))

    def trust(self, reading: ScaleReading) -> AddReading:
        """See `Subject`."""
        doubted = self.filling.doubted(self.level, reading)
        return replace(self.keep(reading), facts=replace(self.filling.thing.facts, container=doubted))


@dataclass(frozen=True, slots=True)
class FixedSubject:
    """A thing with a mass of its own."""

    thing: Thing
    mass: Measured
    system: UnitSystem

    def weighed(self, reading: ScaleReading) -> Combined:
        """See `Subject`."""
        return combine(self.mass, (*self.thing.readings, reading), system=self.system)

    def keep(self, reading: ScaleReading) -> AddReading:
        """See `Subject`."""
        return AddReading(self.thing.id, reading)

    def trust(self, reading: ScaleReading) -> AddReading:
        """See `Subject`."""
        doubted = doubting_mass(self.mass, (*self.thing.readings, reading))
        return replace(self.keep(reading), facts=replace(self.thing.facts, mass=doubted))

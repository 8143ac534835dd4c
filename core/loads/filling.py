"""A container of the house being filled with a material: one object that answers for every level of it.

What depends only on container, material and weighings is worked out once, so that `at` can follow a hand that drags
the fill line. Answers are frozen; nothing here is kept between questions.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from core.errors import InputError, Unreachable
from core.house.model import House
from core.loads.fills import fill_choices
from core.loads.packing import can_be_packed
from core.loads.pours import Pour, pours_of
from core.mass.estimating import Earlier, earlier, estimate_after
from core.mass.gauge import Gauge, gauge_of
from core.mass.learning import Setting
from core.mass.lessons import Lesson, lessons
from core.mass.levels import level_volume
from core.mass.model import Combined, Container, Estimate, Fill, FullLevel, Level, Material, Packing, ScaleReading
from core.mass.trust import doubting
from core.mass.weigh import estimate, fill_for
from core.mass.weighings import SAME_L, Weighings, litres_then, teaching, weighings_of
from core.quantity.display import UnitSystem
from core.things import model as things
from core.things.fill_cautions import fill_cautions
from core.things.model import Thing
from core.things.weighed import known_mass


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """Make one with `filling_of`. `teaching` are the readings that count whatever the fill, `then_l` what was inside at
    each of `readings`.

    `trouble` says why the thing's readings can't be used at all; then none are.
    """

    thing: Thing
    container: Container
    material: Material
    temperature_c: float
    packing: Packing
    cup_l: float
    system: UnitSystem
    readings: tuple[ScaleReading, ...]
    then_l: tuple[float | None, ...]
    teaching: tuple[ScaleReading, ...]
    taught: Earlier
    gauge: Gauge
    pours: tuple[Pour, ...]
    trouble: str = ""

    @property
    def setting(self) -> Setting:
        """The container with its material."""
        return Setting(
            container=self.container, material=self.material, temperature_c=self.temperature_c, packing=self.packing
        )

    def at(self, level: Level) -> Estimate:
        """What it weighs at a level, readings taken in, with every caution; `InputError` for a level it can't have."""
        known = self.weighings(level)
        if known.now:
            found = self._estimate(known.level, known.readings)
        else:
            found = estimate_after(self.setting, level, self.taught, system=self.system)
        own = fill_cautions(self.thing, self.material, found.volume_l.value)
        return replace(found, cautions=tuple(dict.fromkeys((*own, *found.cautions))))

    def volume_l(self, level: Level) -> float:
        """The volume at a level."""
        return level_volume(self.container, level, heaped=False).volume_l

    def inside(self, level: Level) -> things.Fill | None:
        """What is in it at a level, to keep; None when it is empty."""
        volume_l = self.volume_l(level)
        if volume_l <= SAME_L:
            return None
        return things.Fill(material_id=self.material.id, volume_l=volume_l, packing=self.packing)

    def reading_at(self, level: Level, reading: ScaleReading) -> ScaleReading:
        """A reading with what was in it when it was taken, to keep."""
        return replace(
            reading, at_level=self.weighings(level).level, material_id=self.material.id, packing=self.packing
        )

    def weighings(self, level: Level) -> Weighings:
        """The readings that count at a level."""
        return weighings_of(self.container, self.material, self.packing, level, self.readings, self.then_l)

    def also(self, readings: tuple[ScaleReading, ...]) -> Filling:
        """The same with more readings of this fill, not yet counted among those that teach."""
        every = (*self.readings, *readings)
        then_l = (*self.then_l, *(litres_then(self.container, one) for one in readings))
        return replace(self, thing=replace(self.thing, readings=every), readings=every, then_l=then_l)

    def to(self, wanted_kg: float, materials: Sequence[Material] = ()) -> Fill:
        """How to fill it to a mass; `Unreachable` names the lightest of `materials` that would reach it."""
        return fill_for(
            self.container,
            self.material,
            wanted_kg,
            cup_l=self.cup_l,
            temperature_c=self.temperature_c,
            packing=self.packing,
            readings=self.teaching,
            materials=materials,
            system=self.system,
        )

    def lessons(self) -> tuple[Lesson, ...]:
        """What its weighings taught."""
        return lessons(self.setting, self.teaching)

    def weighed(self, level: Level, reading: ScaleReading) -> Combined:
        """What a new reading of the fill at `level` would come to; `InputError` for a reading that can't be one."""
        known = self.weighings(level)
        found = self._estimate(known.level, (*known.readings, replace(reading, at_level=None))).weighing
        if found is None:
            raise ValueError("an estimate with a reading tells how they go together")
        return found

    def doubted(self, level: Level, reading: ScaleReading) -> Container:
        """The container, doubted enough to agree with a new reading of the fill at `level`."""
        known = self.weighings(level)
        here = [one for one in known.readings if one.at_level is None]
        return doubting(self.setting, known.level, (*here, reading))

    def _estimate(self, level: Level, readings: tuple[ScaleReading, ...]) -> Estimate:
        return estimate(
            self.container,
            self.material,
            level,
            temperature_c=self.temperature_c,
            packing=self.packing,
            readings=readings,
            system=self.system,
        )


def filling_of(
    thing: Thing,
    material: Material,
    *,
    temperature_c: float = 15.0,
    packing: Packing = Packing.LOOSE,
    cup_l: float = 0.25,
    system: UnitSystem = UnitSystem.METRIC,
) -> Filling:
    """A thing filled with a material; `InputError` for what can't be filled, or not with that."""
    container = thing.facts.container
    if container is None:
        raise InputError(thing.name, "is nothing that can be filled", "choose a container")
    setting = Setting(container=container, material=material, temperature_c=temperature_c, packing=packing)
    taught, trouble = _usable(setting, thing.readings)
    gauge = gauge_of(setting, taught)
    readings = () if trouble else thing.readings
    return Filling(
        thing=thing,
        container=container,
        material=material,
        temperature_c=temperature_c,
        packing=packing,
        cup_l=cup_l,
        system=system,
        readings=readings,
        then_l=tuple(litres_then(container, one) for one in readings),
        teaching=taught,
        taught=earlier(setting, taught),
        gauge=gauge,
        pours=pours_of(gauge, cup_l),
        trouble=trouble,
    )


def _usable(setting: Setting, readings: tuple[ScaleReading, ...]) -> tuple[tuple[ScaleReading, ...], str]:
    """The readings that teach, and the sentence about one that can't be (after the container was changed)."""
    found = teaching(setting.container, setting.material, setting.packing, readings)
    try:
        estimate(
            setting.container,
            setting.material,
            FullLevel(),
            temperature_c=setting.temperature_c,
            packing=setting.packing,
            readings=found,
        )
    except InputError as error:
        return (), str(error)
    return found, ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherWay:
    """Another container of the house, or another fill at hand, that reaches a wanted mass.

    With `added` the container in hand reaches it together with `count` pieces of that thing, in one bag or tied to it.
    """

    thing: Thing
    material: Material
    fill: Fill
    added: Thing | None = None
    count: int = 0


def other_ways(filling: Filling, house: House, materials: Sequence[Material], wanted_kg: float) -> Iterator[OtherWay]:
    """Ways to a mass that `filling` can't reach: its other fills, other containers of the house, then a thing added."""
    others = (thing for thing in house.things if thing.id != filling.thing.id and thing.facts.container is not None)
    for thing in (filling.thing, *others):
        for choice in fill_choices(thing, house.fills, materials):
            if choice.why_not:
                break
            if (thing.id, choice.material.id) == (filling.thing.id, filling.material.id):
                continue
            way = _way(filling, thing, choice.material, wanted_kg)
            if way is not None:
                yield way
                break
    yield from additions(filling, house, wanted_kg)


def additions(filling: Filling, house: House, wanted_kg: float) -> Iterator[OtherWay]:
    """The container in hand as full as it must be with the fewest pieces of a solid thing added: tins, bricks, books.

    Things that need fewer pieces come first, then as the house lists them.
    """
    full_kg = filling.gauge.container.tare_kg.value + filling.gauge.kg_l * filling.gauge.container.nominal_l.value
    found: list[OtherWay] = []
    for thing in house.things:
        mass = known_mass(thing)
        if mass is None or mass.value <= 0 or wanted_kg <= full_kg or not can_be_packed(thing):
            continue
        count = math.ceil((wanted_kg - full_kg) / mass.value - 1e-9)
        rest_kg = wanted_kg - count * mass.value
        if count > thing.count or rest_kg < filling.gauge.container.tare_kg.value:
            continue
        fill = _reaching(filling, rest_kg)
        if fill is not None:
            found.append(OtherWay(thing=filling.thing, material=filling.material, fill=fill, added=thing, count=count))
    yield from sorted(found, key=lambda way: way.count)


def _way(filling: Filling, thing: Thing, material: Material, wanted_kg: float) -> OtherWay | None:
    other = filling_of(thing, material, cup_l=filling.cup_l, system=filling.system)
    fill = _reaching(other, wanted_kg)
    return None if fill is None else OtherWay(thing=thing, material=material, fill=fill)


def _reaching(filling: Filling, wanted_kg: float) -> Fill | None:
    try:
        return filling.to(wanted_kg)
    except Unreachable:
        return None

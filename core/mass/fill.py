"""The inverse: how much to pour for a wanted mass, or a plain sentence why the container cannot reach it."""

from __future__ import annotations

from collections.abc import Sequence

from core.errors import InputError, Unreachable
from core.mass.density import bulk_density
from core.mass.estimating import estimate
from core.mass.learning import Known, Setting, known
from core.mass.levels import height_at
from core.mass.model import (
    Container,
    Fill,
    FullLevel,
    HeightLevel,
    Material,
    Packing,
    ScaleReading,
    VolumeLevel,
)
from core.quantity.display import UnitSystem, format_mass, format_measured_mass
from core.quantity.measured import Measured

MOST_KG = 1000.0


def fill_for(  # noqa: PLR0913  # all but the first three have a default a caller seldom changes
    container: Container,
    material: Material,
    wanted_kg: float,
    *,
    cup_l: float | None = None,
    temperature_c: float = 15.0,
    packing: Packing = Packing.LOOSE,
    readings: Sequence[ScaleReading] = (),
    materials: Sequence[Material] = (),
    system: UnitSystem = UnitSystem.METRIC,
) -> Fill:
    """How to fill `container` until the whole weighs `wanted_kg`, up to its nominal capacity.

    `readings` with a level are earlier weighings. `Unreachable` says what full (or empty) is, and names the lightest of
    `materials` that would reach. `InputError` for a wanted mass or a cup that cannot be.
    """
    if not 0 < wanted_kg <= MOST_KG:
        raise InputError(f"{wanted_kg:g} kg", f"is not a mass from 0 to {MOST_KG:.0f} kg", "write the mass you want")
    if cup_l is not None and not 0 < cup_l <= 100:
        raise InputError(f"{cup_l:g} L", "is not a cup to pour with", "give the size of your cup, like 250 mL")
    levelled = tuple(reading for reading in readings if reading.at_level is not None)
    setting = Setting(container=container, material=material, temperature_c=temperature_c, packing=packing)
    taught = known(setting, levelled)
    full = estimate(container, material, FullLevel(), temperature_c=temperature_c, packing=packing, readings=levelled)
    _check_reachable(setting, taught, full.mass.u, wanted_kg, materials, system)
    volume = min((wanted_kg - taught.container.tare_kg.value) / taught.kg_l, taught.container.nominal_l.value)
    height = height_at(taught.container, volume)
    level = VolumeLevel(volume_l=volume) if height is None else HeightLevel(height_cm=height)
    at_line = estimate(container, material, level, temperature_c=temperature_c, packing=packing, readings=levelled)
    return Fill(
        volume_l=volume,
        height_cm=height,
        from_brim_cm=None if height is None else max(container.shape.full_height_cm - height, 0.0),
        cups=None if cup_l is None else volume / cup_l,
        whole_cups=None if cup_l is None else round(volume / cup_l),
        share_of_nominal=volume / taught.container.nominal_l.value,
        reaches=Measured(wanted_kg, at_line.mass.u, at_line.mass.origin),
        one_more_cup_kg=None if cup_l is None else cup_l * taught.kg_l,
    )


def _check_reachable(
    setting: Setting, taught: Known, u_full: float, wanted_kg: float, materials: Sequence[Material], system: UnitSystem
) -> None:
    tare, name = taught.container.tare_kg, setting.material.name.lower()
    wanted = format_mass(wanted_kg, system)
    if wanted_kg < tare.value:
        sentence = f"{wanted} is not reachable: empty it already weighs {format_measured_mass(tare, system)}."
        raise Unreachable(sentence, wanted_kg=wanted_kg, limit_kg=tare.value)
    if wanted_kg > taught.full_kg * (1 + 1e-12):
        full = format_measured_mass(Measured(taught.full_kg, u_full), system)
        sentence = f"{wanted} is not reachable: full of {name} it is {full}."
        more = _heavier(setting, taught.container, wanted_kg, materials, system)
        raise Unreachable(sentence + more, wanted_kg=wanted_kg, limit_kg=taught.full_kg)


def _heavier(
    setting: Setting, container: Container, wanted_kg: float, materials: Sequence[Material], system: UnitSystem
) -> str:
    """A second sentence that names the lightest material that reaches the wanted mass, or none."""
    usable = (material for material in materials if material.as_fill)
    for material in sorted(usable, key=lambda one: (one.typical_kg_m3, one.id)):
        density = bulk_density(material, setting.temperature_c, Packing.LOOSE)
        full_kg = container.tare_kg.value + density.kg_l * container.nominal_l.value
        if full_kg >= wanted_kg:
            return f" Full of {material.name.lower()} it would be about {format_mass(full_kg, system)}."
    return ""

"""What to make of a scale that contradicts what was known: doubt that more, as far as the reading asks for.

The standard uncertainties of everything the fills of a container share are widened by one factor, so that the reading
lies one standard uncertainty away from what was expected. Taking it in then moves most what was known least.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from core.errors import InputError
from core.mass.density import density_in
from core.mass.learning import Setting
from core.mass.model import BrimLevel, Container, LearnedDensity, Level, ScaleReading
from core.mass.predict import predict
from core.mass.scale import Weighed, weighed
from core.quantity.measured import Measured

MOST_OF_BRIMFUL = 1.2
"""A container that holds more than so much of what it says is another one (a judgement)."""
LEAST_DOUBT_KG = 0.005
"""What at least is doubted about an empty container said to be known exactly."""


def doubting(setting: Setting, level: Level, readings: Sequence[ScaleReading]) -> Container:
    """The container of `setting`, doubted enough for `readings` of the fill at `level` to agree with it.

    For a material other than water its density in this container is doubted alike. `InputError` for a reading far above
    what it could weigh full to the brim: then something else was on the scale, or it is another container.
    """
    _check_fits(setting, readings)
    now = predict(setting.container, setting.material, level, setting.temperature_c, setting.packing)
    shared = math.hypot(*now.shared_kg)
    wanted = max(_wanted_u(weighed(reading), now.mass_kg, now.own_u_kg) for reading in readings)
    if wanted <= shared:
        return setting.container
    return _widened(setting, wanted / shared if shared > 0 else 1.0, wanted)


def _check_fits(setting: Setting, readings: Sequence[ScaleReading]) -> None:
    brimful = predict(setting.container, setting.material, BrimLevel(), setting.temperature_c, setting.packing)
    most = MOST_OF_BRIMFUL * (brimful.mass_kg + 2 * brimful.u_kg)
    for reading in readings:
        weight = weighed(reading)
        if weight.mass_kg - 2 * weight.measured.u > most:
            rule = f"is far more than it could weigh full to the brim ({brimful.mass_kg:.1f} kg)"
            way_out = "weigh it alone, choose the right container, or correct its capacity"
            raise InputError(f"{weight.mass_kg:.2f} kg", rule, way_out)


def doubting_mass(mass: Measured, readings: Sequence[ScaleReading]) -> Measured:
    """The known mass of a thing that is not filled, doubted enough for `readings` of it to agree."""
    wanted = max(_wanted_u(weighed(reading), mass.value, 0.0) for reading in readings)
    return mass if wanted <= mass.u else Measured(mass.value, wanted, mass.origin)


def _wanted_u(weight: Weighed, expected_kg: float, own_u_kg: float) -> float:
    """The standard uncertainty at which the reading lies one of them from what was expected."""
    gap = weight.mass_kg - expected_kg
    return math.sqrt(max(gap**2 - own_u_kg**2 - weight.u_repeat_kg**2 - weight.u_lasting_kg**2, 0.0))


def _widened(setting: Setting, by: float, wanted_kg: float) -> Container:
    container = setting.container
    tare = container.tare_kg
    return replace(
        container,
        tare_kg=_wider(tare, by) if tare.u > 0 else Measured(tare.value, max(wanted_kg, LEAST_DOUBT_KG), tare.origin),
        nominal_l=_wider(container.nominal_l, by),
        brimful_l=_wider(container.brimful_l, by),
        shape_doubt=min(container.shape_doubt * by, 1.0),
        learned=_densities(setting, by),
    )


def _densities(setting: Setting, by: float) -> tuple[LearnedDensity, ...]:
    """The densities known of it, that of the material in hand in doubt; water's follows from its temperature."""
    known, material, packing = setting.container.learned, setting.material, setting.packing
    if material.by_temperature:
        return known
    density = density_in(setting.container, material, setting.temperature_c, packing).measured
    others = tuple(one for one in known if (one.material_id, one.packing) != (material.id, packing))
    doubted = LearnedDensity(material_id=material.id, packing=packing, kg_l=_wider(density, by))
    return (*others, doubted)


def _wider(value: Measured, by: float) -> Measured:
    return Measured(value.value, value.u * by, value.origin)

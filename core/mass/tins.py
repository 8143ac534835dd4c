"""What a closed food tin weighs: from the net mass on its label, or from its size alone.

Net mass is the food with its liquid, without the tin. Over USDA Standard Reference entries that name their can, the net
mass of wet-packed food is 0.86 to 1.01 times the water the can holds; vacuum packs hold 0.71 to 0.94. No trustworthy
empty mass was found, so the tin is its area times the thickness of tinplate, ± 25 %.
"""

from __future__ import annotations

import math

from core.errors import InputError
from core.mass.budget import advice_for
from core.mass.model import BudgetLine, Estimate
from core.mass.tin_sizes import Tin, find_tin, tin_near
from core.quantity.display import UnitSystem, format_measured_mass
from core.quantity.measured import Measured, Origin

STEEL_KG_M3 = 7850.0
# kg of food per kg of water the tin holds, middle and half-width.
WET_PACK, VACUUM_PACK = (0.94, 0.08), (0.83, 0.12)
# Labels promise the average; single tins lie within about 2 % (assumed).
LABEL_HALF_WIDTH = 0.02
# Printed drained mass over net mass, middle and half-width: olives, beans, fruit in syrup (assumed; 7 CFR 52.3755
# gives 0.60 of the water capacity for olives).
DRAINED_SHARE = (0.62, 0.10)
TARE_HALF_WIDTH, GUESSED_TARE_HALF_WIDTH = 0.25, 0.35
MOST_NET_KG = 20.0


def estimate_tin(
    size: Tin | str | None = None,
    *,
    net_kg: float | None = None,
    drained_kg: float | None = None,
    poured_off: bool = False,
    system: UnitSystem = UnitSystem.METRIC,
) -> Estimate:
    """A tin's mass from its size, its printed net mass or its printed drained mass, the best of what is given.

    With `poured_off` the tin is open and its liquid gone: the contents are the drained mass. `InputError` if nothing is
    given or a mass cannot be.
    """
    tin = find_tin(size) if isinstance(size, str) else size
    for printed_kg in (net_kg, drained_kg):
        if printed_kg is not None and not 0 < printed_kg <= MOST_NET_KG:
            rule = f"is not the mass of a tin's contents (0 to {MOST_NET_KG:.0f} kg)"
            raise InputError(f"{printed_kg:g} kg", rule, "read the label again, with its unit")
    contents, words = _drained(tin, net_kg, drained_kg) if poured_off else _closed(tin, net_kg, drained_kg)
    tare = tare_kg(tin) if tin is not None else _guessed_tare(contents.value)
    lines = (BudgetLine(source=words, u_kg=contents.u), BudgetLine(source="the empty tin", u_kg=tare.u))
    mass = Measured(contents.value + tare.value, math.hypot(contents.u, tare.u))
    return Estimate(
        mass=mass,
        contents=contents,
        tare=tare,
        volume_l=(tin or tin_near(contents.value / WET_PACK[0])).capacity_l,
        height_cm=None,
        budget=tuple(sorted(lines, key=lambda line: -line.u_kg)),
        advice=_advice(mass, contents, tare, labelled=net_kg is not None, system=system),
        cautions=("A dented or swollen tin is not for lifting or eating.",),
    )


def tare_kg(tin: Tin) -> Measured:
    """The empty tin: outside area × tinplate of 0.20 mm (small) to 0.29 mm (large)."""
    diameter, height = tin.diameter_mm / 1000, tin.height_mm / 1000
    area_m2 = math.pi / 2 * diameter**2 + math.pi * diameter * height
    thickness_m = min(max(0.20e-3 + (diameter - 0.076) * 1.05e-3, 0.18e-3), 0.30e-3)
    mass = area_m2 * thickness_m * STEEL_KG_M3
    return Measured.rectangular(mass, TARE_HALF_WIDTH * mass)


def _guessed_tare(contents_kg: float) -> Measured:
    """The tin of the table that would hold these contents, with more doubt."""
    mass = tare_kg(tin_near(contents_kg / WET_PACK[0])).value
    return Measured.rectangular(mass, GUESSED_TARE_HALF_WIDTH * mass)


def _closed(tin: Tin | None, net_kg: float | None, drained_kg: float | None) -> tuple[Measured, str]:
    """Everything inside a closed tin, and the words for its doubt."""
    if net_kg is not None:
        return Measured.rectangular(net_kg, LABEL_HALF_WIDTH * net_kg, Origin.LABEL), "net mass on the label"
    if tin is not None:
        return _by_size(tin), "how full such tins are"
    if drained_kg is not None:
        return _scaled(drained_kg, 1 / DRAINED_SHARE[0], DRAINED_SHARE[1] / DRAINED_SHARE[0] ** 2), "liquid in the tin"
    raise InputError("nothing", "tells what the tin weighs", "give its size, like No. 10, or the net mass on its label")


def _drained(tin: Tin | None, net_kg: float | None, drained_kg: float | None) -> tuple[Measured, str]:
    """What stays in an open tin without its liquid."""
    if drained_kg is not None:
        return _scaled(drained_kg, 1.0, 3 * LABEL_HALF_WIDTH), "drained mass on the label"
    net, _ = _closed(tin, net_kg, None)
    share, half_width = DRAINED_SHARE
    u = math.hypot(share * net.u, net.value * half_width / math.sqrt(3))
    return Measured(share * net.value, u), "how much of it was liquid"


def _by_size(tin: Tin) -> Measured:
    share, half_width = VACUUM_PACK if tin.vacuum_packed else WET_PACK
    capacity = tin.capacity_l
    u = math.hypot(share * capacity.u, capacity.value * half_width / math.sqrt(3))
    return Measured(share * capacity.value, u)


def _scaled(mass_kg: float, factor: float, half_width: float) -> Measured:
    return Measured.rectangular(mass_kg * factor, mass_kg * half_width)


def _advice(mass: Measured, contents: Measured, tare: Measured, *, labelled: bool, system: UnitSystem) -> str:
    """Read the label first, weigh it otherwise."""
    if labelled:
        return advice_for(mass, tare.u, system)
    by_label = math.hypot(LABEL_HALF_WIDTH * contents.value / math.sqrt(3), tare.u)
    number, _, wide = format_measured_mass(Measured(mass.value, by_label), system).partition(" ± ")
    return f"Read the net mass off the label, and this drops to ± {wide} {number.split()[-1]}."

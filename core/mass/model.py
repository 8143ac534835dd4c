"""The values of the mass engine: materials, containers, fill levels, scale readings and estimates.

Masses in kg, volumes in litres, lengths in cm, densities in kg/m³ (so kg per litre is a thousandth of it). Half-widths
and standard uncertainties follow JCGM 100:2008 (GUM): `u` fields are one standard uncertainty.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.mass.bounds import LARGEST_L, SLACK, check_size
from core.mass.shapes import (
    Bag,
    Base,
    BoxBase,
    LyingCylinder,
    PourTable,
    RoundBase,
    Shape,
    Shouldered,
    StraightBox,
    StraightRound,
    Tapered,
    profile,
    shape_for_capacity,
)
from core.quantity.measured import Measured

__all__ = [
    "EMPTY",
    "Bag",
    "Base",
    "BoxBase",
    "BrimLevel",
    "BudgetLine",
    "Combined",
    "Container",
    "CupsLevel",
    "Estimate",
    "Fill",
    "FullLevel",
    "HeightLevel",
    "LearnedDensity",
    "Level",
    "LyingCylinder",
    "Material",
    "MaterialKind",
    "Packing",
    "PourTable",
    "RoundBase",
    "ScaleKind",
    "ScaleReading",
    "Shape",
    "ShareLevel",
    "Shouldered",
    "Standing",
    "StraightBox",
    "StraightRound",
    "Tapered",
    "VolumeLevel",
    "profile",
    "shape_for_capacity",
]


class MaterialKind(StrEnum):
    """How a material fills a container."""

    LIQUID = "liquid"
    GRAIN = "grain"
    POWDER = "powder"
    AGGREGATE = "aggregate"
    SOLID_PIECES = "solid_pieces"


class Standing(StrEnum):
    """How well a number is backed: read in its source, read second hand, derived, weak, or remembered."""

    EXACT = "exact"
    SEEN = "seen"
    SECONDARY = "secondary"
    DERIVED = "derived"
    WEAK = "weak"
    MEMORY = "memory"


class Packing(StrEnum):
    """How a grain or powder lies: poured, shaken down, damp, or with its pores topped up with water."""

    LOOSE = "loose"
    SETTLED = "settled"
    DAMP = "damp"
    TOPPED_UP = "topped_up"


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Something a container can be filled with: bulk density from low to high, its sources and its manners.

    `by_temperature` is true only for water, whose density follows Tanaka 2001. `settled` and `damp` are factors on the
    loose density. `solid_kg_m3` is the density of the grains themselves, for pores topped up with water. A material
    with `as_fill` false is listed only to say why not (`why_not`).
    """

    id: str
    name: str
    kind: MaterialKind
    low_kg_m3: float
    typical_kg_m3: float
    high_kg_m3: float
    standing: Standing
    source_ids: tuple[str, ...]
    note: str = ""
    as_fill: bool = True
    why_not: str = ""
    cautions: tuple[str, ...] = ()
    by_temperature: bool = False
    settles: bool = False
    sloshes: bool = False
    dusty: bool = False
    settled: Measured | None = None
    damp: Measured | None = None
    solid_kg_m3: float | None = None

    @property
    def porosity(self) -> float | None:
        """Share of the loose volume that is air, where the density of the grains is known."""
        return None if self.solid_kg_m3 is None else 1 - self.typical_kg_m3 / self.solid_kg_m3


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnedDensity:
    """How dense one material lay in one container, as weighings of it have shown; kg per litre."""

    material_id: str
    packing: Packing
    kg_l: Measured


@dataclass(frozen=True, slots=True, kw_only=True)
class Container:
    """A vessel: its shape, what the label promises, what it holds to the brim and what it weighs empty.

    The shape tells how volume is spread over height; `brimful_l` scales it, so a better capacity improves every fill.
    `shape_doubt` is the relative half-width of the shape's error at half height (0 at the base and the brim).
    `learned` holds densities found by weighing it; they go before the material's own range.
    """

    shape: Shape
    nominal_l: Measured
    brimful_l: Measured
    tare_kg: Measured
    shape_doubt: float = 0.03
    learned: tuple[LearnedDensity, ...] = ()

    def __post_init__(self) -> None:
        check_size("nominal capacity in L", self.nominal_l.value, most=LARGEST_L)
        check_size("brimful capacity in L", self.brimful_l.value, most=LARGEST_L)
        check_size("empty mass in kg", self.tare_kg.value, may_be_zero=True)
        check_size("doubt of the shape", self.shape_doubt, most=1.0, may_be_zero=True)
        if self.nominal_l.value > self.brimful_l.value * (1 + SLACK):
            rule = f"is more than the container holds to the brim ({self.brimful_l.value:g} L)"
            raise InputError(f"{self.nominal_l.value:g} L", rule, "give a brimful capacity at least as large")


@dataclass(frozen=True, slots=True, kw_only=True)
class FullLevel:
    """Filled to the nominal capacity: the mark, or where such a thing is usually called full."""

    half_width_share: float = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class BrimLevel:
    """Filled until nothing more goes in."""

    half_width_share: float = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareLevel:
    """A share of the nominal capacity, 0 (empty) to 1 (full), judged by eye within ± `half_width_share` of it."""

    share: float
    half_width_share: float = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeLevel:
    """A volume poured in from something marked, right to ± `half_width_share` of the volume."""

    volume_l: float
    half_width_share: float = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class CupsLevel:
    """`count` cups of `cup_l` each: the cup is wrong alike every time, each pour on its own. Half-widths of one cup."""

    count: float
    cup_l: float
    cup_share: float = 0.02
    pour_share: float = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightLevel:
    """The surface stands `height_cm` above the inner base, read to ± `half_width_cm` (doubled for grains)."""

    height_cm: float
    half_width_cm: float = 0.3


Level = FullLevel | BrimLevel | ShareLevel | VolumeLevel | CupsLevel | HeightLevel

EMPTY = ShareLevel(share=0.0)


class ScaleKind(StrEnum):
    """What the reading was taken on."""

    KITCHEN = "kitchen"
    LUGGAGE = "luggage"
    BATHROOM_DIFFERENCE = "bathroom_difference"
    DIRECT = "direct"


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleReading:
    """What a scale said: the thing alone, or you with it and without it.

    `resolution_kg` is the step of the display, `repeatability_kg` the standard deviation of repeated readings,
    `offset_doubt_kg` the half-width of an error that stays the same at every reading. `at_level` is the fill when it
    was weighed; None means the fill in question. `material_id` and `packing` tell what was in it; None is whatever is
    in question. `core.mass.scale.reading_on` fills in the usual values per scale.
    """

    kind: ScaleKind
    reading_kg: float
    without_kg: float | None = None
    resolution_kg: float
    repeatability_kg: float
    offset_doubt_kg: float
    at_level: Level | None = None
    date: datetime.date | None = None
    material_id: str | None = None
    packing: Packing = Packing.LOOSE


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetLine:
    """One contribution to the uncertainty, in plain words."""

    source: str
    u_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Combined:
    """An estimate and scale readings brought together, or the reason why they were not.

    When they disagree, `mass` keeps the estimate and its u95 spans the reading as well, until the person decides.
    """

    mass: Measured
    agrees: bool
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What a filled container weighs, where its ± comes from (largest first) and what would shrink it most."""

    mass: Measured
    contents: Measured
    tare: Measured
    volume_l: Measured
    height_cm: float | None
    budget: tuple[BudgetLine, ...]
    advice: str
    cautions: tuple[str, ...]
    weighing: Combined | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """How to fill a container to a wanted mass. `reaches` is the estimate for a fill to that line.

    `cups` is exact; `whole_cups` the nearest count. `height_cm` and `from_brim_cm` are None where the vessel has no
    fixed form.
    """

    volume_l: float
    height_cm: float | None
    from_brim_cm: float | None
    cups: float | None
    whole_cups: int | None
    share_of_nominal: float
    reaches: Measured
    one_more_cup_kg: float | None

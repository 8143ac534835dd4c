"""Usual vessels by kind: their proportions, what they hold to the brim and what they weigh empty.

For a vessel of which only the kind and the label's capacity are known. Empty masses are grams per litre of nominal
capacity, from the few published ones (relief buckets and carriers, milk jugs, water bottles) and otherwise from memory;
brimful factors are judgement. A scale beats all of it: weigh the vessel empty once.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.mass.bounds import LARGEST_L, check_size
from core.mass.model import (
    Bag,
    BoxBase,
    Container,
    RoundBase,
    Shape,
    Shouldered,
    Standing,
    StraightBox,
    StraightRound,
    Tapered,
    shape_for_capacity,
)
from core.quantity.measured import Measured, Origin

# A label's capacity is kept to about one per cent (Directive 75/107/EEC, from memory).
LABEL_HALF_WIDTH = 0.01


class VesselKind(StrEnum):
    """Sorts of vessels people have."""

    JUG = "jug"
    BOTTLE = "bottle"
    CARRIER = "carrier"
    FOLDING_CARRIER = "folding_carrier"
    BUCKET = "bucket"
    STEEL_CAN = "steel_can"
    GLASS_JAR = "glass_jar"
    BOX = "box"
    POT = "pot"
    SACK = "sack"


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """Proportions (any size), brimful over nominal, and empty grams per nominal litre; (middle, half-width) each."""

    proportions: Shape
    brimful: tuple[float, float]
    grams_per_litre: tuple[float, float]
    standing: Standing
    source_ids: tuple[str, ...]


_BOTTLED, _OPEN = (1.04, 0.03), (1.10, 0.09)
_MEMORY = ("brimful_practice", "memory_household")

MANNERS: dict[VesselKind, Manner] = {
    VesselKind.JUG: Manner(
        proportions=Shouldered(
            base=BoxBase(length_cm=15, width_cm=15, corner_radius_cm=3),
            straight_to_cm=14,
            neck_diameter_cm=4,
            neck_height_cm=2,
            full_height_cm=25,
        ),
        brimful=_BOTTLED,
        grams_per_litre=(15.5, 3.0),
        standing=Standing.SEEN,
        source_ids=("milk_jug_masses", "brimful_practice"),
    ),
    VesselKind.BOTTLE: Manner(
        proportions=Shouldered(
            base=RoundBase(diameter_cm=10.5),
            straight_to_cm=20,
            neck_diameter_cm=2.4,
            neck_height_cm=3,
            full_height_cm=31,
        ),
        brimful=_BOTTLED,
        grams_per_litre=(24.0, 8.0),
        standing=Standing.SECONDARY,
        source_ids=("pet_bottle_masses", "brimful_practice"),
    ),
    VesselKind.CARRIER: Manner(
        proportions=Shouldered(
            base=BoxBase(length_cm=28, width_cm=28, corner_radius_cm=4),
            straight_to_cm=31,
            neck_diameter_cm=8,
            neck_height_cm=2,
            full_height_cm=42,
        ),
        brimful=_BOTTLED,
        grams_per_litre=(45.0, 15.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
    VesselKind.FOLDING_CARRIER: Manner(
        proportions=Bag(full_volume_l=20, full_height_cm=30),
        brimful=_BOTTLED,
        grams_per_litre=(14.0, 4.0),
        standing=Standing.SEEN,
        source_ids=("iom_relief_items", "brimful_practice"),
    ),
    VesselKind.BUCKET: Manner(
        proportions=Tapered(bottom_cm=24, top_cm=30, full_height_cm=30),
        brimful=_OPEN,
        grams_per_litre=(52.0, 14.0),
        standing=Standing.DERIVED,
        source_ids=("iom_relief_items", "unhcr_handbook_1999", "brimful_practice"),
    ),
    VesselKind.STEEL_CAN: Manner(
        proportions=StraightBox(length_cm=34, width_cm=16, corner_radius_cm=3, full_height_cm=42),
        brimful=_BOTTLED,
        grams_per_litre=(215.0, 30.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
    VesselKind.GLASS_JAR: Manner(
        proportions=Shouldered(
            base=RoundBase(diameter_cm=10),
            straight_to_cm=13,
            neck_diameter_cm=7,
            neck_height_cm=2,
            full_height_cm=17,
        ),
        brimful=_BOTTLED,
        grams_per_litre=(400.0, 150.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
    VesselKind.BOX: Manner(
        proportions=StraightBox(length_cm=40, width_cm=30, corner_radius_cm=3, full_height_cm=25),
        brimful=_OPEN,
        grams_per_litre=(50.0, 20.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
    VesselKind.POT: Manner(
        proportions=StraightRound(diameter_cm=24, full_height_cm=14),
        brimful=_OPEN,
        grams_per_litre=(250.0, 120.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
    VesselKind.SACK: Manner(
        proportions=Bag(full_volume_l=20, full_height_cm=50),
        brimful=(1.12, 0.10),
        grams_per_litre=(5.0, 3.0),
        standing=Standing.MEMORY,
        source_ids=_MEMORY,
    ),
}


def vessel(kind: VesselKind, nominal_l: float, *, tare_kg: Measured | None = None) -> Container:
    """A vessel of this kind with the label's capacity; `InputError` if no vessel can hold that."""
    check_size("capacity in L", nominal_l, most=LARGEST_L)
    manner = MANNERS[kind]
    factor, factor_half_width = manner.brimful
    grams, grams_half_width = manner.grams_per_litre
    brimful = Measured.rectangular(factor * nominal_l, factor_half_width * nominal_l)
    guessed = Measured.rectangular(grams * nominal_l / 1000, grams_half_width * nominal_l / 1000)
    return Container(
        shape=shape_for_capacity(manner.proportions, brimful.value),
        nominal_l=Measured.rectangular(nominal_l, LABEL_HALF_WIDTH * nominal_l, Origin.LABEL),
        brimful_l=brimful,
        tare_kg=guessed if tare_kg is None else tare_kg,
    )

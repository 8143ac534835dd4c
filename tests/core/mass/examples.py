"""Materials and containers the mass tests share, and hypothesis strategies for shapes. All invented."""

from __future__ import annotations

from hypothesis import strategies as st

from core.mass.model import (
    Bag,
    BoxBase,
    Container,
    LyingCylinder,
    Material,
    MaterialKind,
    PourTable,
    RoundBase,
    Shape,
    Shouldered,
    Standing,
    StraightBox,
    StraightRound,
    Tapered,
    shape_for_capacity,
)
from core.quantity import Measured

WATER = Material(
    id="water",
    name="Water",
    kind=MaterialKind.LIQUID,
    low_kg_m3=992,
    typical_kg_m3=998,
    high_kg_m3=1000,
    standing=Standing.SEEN,
    source_ids=("tanaka_2001",),
    by_temperature=True,
    sloshes=True,
)
SAND = Material(
    id="sand_dry",
    name="Dry sand",
    kind=MaterialKind.AGGREGATE,
    low_kg_m3=1440,
    typical_kg_m3=1600,
    high_kg_m3=1680,
    standing=Standing.SEEN,
    source_ids=("bulk_density_list",),
    settles=True,
    settled=Measured.rectangular(1.04, 0.04),
    damp=Measured.rectangular(0.95, 0.12),
    solid_kg_m3=2650,
)
RICE = Material(
    id="rice_long",
    name="Long-grain white rice",
    kind=MaterialKind.GRAIN,
    low_kg_m3=720,
    typical_kg_m3=785,
    high_kg_m3=830,
    standing=Standing.SEEN,
    source_ids=("usda_sr_cups",),
    settles=True,
)
LEAD = Material(
    id="lead_shot",
    name="Lead shot",
    kind=MaterialKind.AGGREGATE,
    low_kg_m3=6000,
    typical_kg_m3=6600,
    high_kg_m3=7200,
    standing=Standing.MEMORY,
    source_ids=("memory_household",),
    as_fill=False,
    why_not="lead is poisonous",
)

CARRIER_SHAPE = shape_for_capacity(
    Shouldered(
        base=BoxBase(length_cm=28, width_cm=28, corner_radius_cm=4),
        straight_to_cm=31,
        neck_diameter_cm=8,
        neck_height_cm=2,
        full_height_cm=42,
    ),
    26.0,
)
CARRIER = Container(
    shape=CARRIER_SHAPE,
    nominal_l=Measured.rectangular(25.0, 0.25),
    brimful_l=Measured.rectangular(26.0, 0.6),
    tare_kg=Measured.rectangular(0.68, 0.1),
)
SACK = Container(
    shape=Bag(full_volume_l=20.0, full_height_cm=50.0),
    nominal_l=Measured.rectangular(18.0, 0.9),
    brimful_l=Measured.rectangular(20.0, 1.0),
    tare_kg=Measured.rectangular(0.1, 0.05),
)

_cm = st.floats(0.5, 200)


@st.composite
def _boxes(draw: st.DrawFn) -> BoxBase:
    length, width = draw(_cm), draw(_cm)
    return BoxBase(length_cm=length, width_cm=width, corner_radius_cm=draw(st.floats(0, 0.5)) * min(length, width))


@st.composite
def _straight_boxes(draw: st.DrawFn) -> StraightBox:
    base = draw(_boxes())
    return StraightBox(
        length_cm=base.length_cm,
        width_cm=base.width_cm,
        corner_radius_cm=base.corner_radius_cm,
        full_height_cm=draw(_cm),
    )


@st.composite
def _shouldered(draw: st.DrawFn) -> Shouldered:
    base = draw(st.one_of(_boxes(), st.builds(RoundBase, diameter_cm=_cm)))
    height = draw(_cm)
    straight = draw(st.floats(0, 0.8))
    neck = draw(st.floats(0, 0.15))
    widest = (4 * base.area_cm2 / 3.1416) ** 0.5
    return Shouldered(
        base=base,
        straight_to_cm=straight * height,
        neck_diameter_cm=widest * draw(st.floats(0.05, 0.999)),
        neck_height_cm=neck * height,
        full_height_cm=height,
    )


@st.composite
def _tables(draw: st.DrawFn) -> PourTable:
    steps = draw(st.lists(st.tuples(st.floats(0.05, 20), st.floats(0.2, 20)), min_size=1, max_size=12))
    volume = height = 0.0
    points = []
    for litres, cm in steps:
        volume, height = volume + litres, height + cm
        points.append((volume, height))
    return PourTable(points=tuple(points))


SHAPES: st.SearchStrategy[Shape] = st.one_of(
    st.builds(StraightRound, diameter_cm=_cm, full_height_cm=_cm),
    _straight_boxes(),
    st.builds(Tapered, bottom_cm=_cm, top_cm=_cm, full_height_cm=_cm),
    st.builds(LyingCylinder, diameter_cm=_cm, length_cm=_cm),
    _shouldered(),
    st.builds(Bag, full_volume_l=st.floats(0.1, 500), full_height_cm=_cm),
    _tables(),
)

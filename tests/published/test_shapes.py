"""Shapes against published worked examples, numerical integration, and another interpolant.

School texts take π = 22/7, which is 0.04 % large: their answers are met with that π exactly, and with the true one
within 0.05 %. Bucket, depth 15 cm, diameters 56 and 42 cm: 28 490 cm³ (CBSE 2005). Lying tank 10 m long, surface 1 m
wide, 0.2 m below the top: 15.138 m³ (textbook exercise). Arcsine form of the circular segment: textbook formula.
"""

from __future__ import annotations

import importlib
import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mass.model import BoxBase, LyingCylinder, PourTable, RoundBase, Shape, Shouldered, StraightBox, Tapered
from tests.core.mass.examples import SHAPES

# The packages carry no types.
integrate: Any = importlib.import_module("scipy.integrate")
interpolate: Any = importlib.import_module("scipy.interpolate")

SCHOOL_PI = 22 / 7


@pytest.mark.parametrize(
    ("bottom_cm", "top_cm", "height_cm", "published_cm3"),
    [
        (42, 56, 15, 28_490.0),
        (28, 42, 24, 23_408.0),
        (24, 44, 35, 32_706.67),
    ],
)
def test_school_frusta_are_met_with_their_own_pi_and_nearly_with_the_true_one(
    bottom_cm: float, top_cm: float, height_cm: float, published_cm3: float
) -> None:
    volume = Tapered(bottom_cm=bottom_cm, top_cm=top_cm, full_height_cm=height_cm).full_volume_l * 1000
    assert volume * SCHOOL_PI / math.pi == pytest.approx(published_cm3, abs=0.01)
    assert volume == pytest.approx(published_cm3, rel=5e-4)


def test_the_inverse_school_example_gives_fifteen_centimetres() -> None:
    bucket = Tapered(bottom_cm=42, top_cm=56, full_height_cm=15)
    assert bucket.height_cm(28.490 * math.pi / SCHOOL_PI) == pytest.approx(15.0, rel=1e-9)


def test_a_frustum_of_radii_30_and_20_and_height_60_holds_38_pi_litres() -> None:
    assert Tapered(bottom_cm=40, top_cm=60, full_height_cm=60).full_volume_l == pytest.approx(38 * math.pi, rel=1e-12)


def test_the_lying_tank_holds_15_138_cubic_metres() -> None:
    # A chord of 1 m, 0.2 m below the top: r = (0.5² + 0.2²) / (2 × 0.2) = 0.725 m. A tenth of the size, in cm.
    tank = LyingCylinder(diameter_cm=145, length_cm=1000)
    assert tank.volume_l(125.0) == pytest.approx(15_138, abs=0.5)
    assert tank.volume_l(125.0) == pytest.approx(15_137.92, abs=0.01)


@pytest.mark.parametrize("share", [0.1, 0.2, 0.25, 0.3, 0.4, 0.5])
def test_the_arcsine_form_of_the_segment_agrees(share: float) -> None:
    a, h = 10.0, 20.0 * share
    area = math.pi * a**2 / 2 - a**2 * math.asin(1 - h / a) - (a - h) * math.sqrt(h * (2 * a - h))
    assert LyingCylinder(diameter_cm=20, length_cm=1).volume_l(h) * 1000 == pytest.approx(area, rel=1e-12)


def test_rounded_corners_take_0_86_of_the_squared_radius() -> None:
    box = StraightBox(length_cm=30, width_cm=20, corner_radius_cm=3, full_height_cm=1)
    assert box.full_volume_l * 1000 == pytest.approx(600 - (4 - math.pi) * 9)


def _plan_area_cm2(shape: Shape, height_cm: float) -> float:
    """Plan area at a height, written independently of the volumes."""
    match shape:
        case Tapered():
            across = shape.bottom_cm + (shape.top_cm - shape.bottom_cm) * height_cm / shape.full_height_cm
            return math.pi * across**2 / 4
        case LyingCylinder():
            return shape.length_cm * 2 * math.sqrt(max(height_cm * (shape.diameter_cm - height_cm), 0.0))
        case Shouldered():
            return _jug_area_cm2(shape, height_cm)
        case _:
            raise AssertionError(shape)


def _jug_area_cm2(jug: Shouldered, height_cm: float) -> float:
    if isinstance(jug.base, RoundBase):
        body = math.pi * (jug.base.diameter_cm / 2) ** 2
    else:
        radius = jug.base.corner_radius_cm
        inner_length, inner_width = jug.base.length_cm - 2 * radius, jug.base.width_cm - 2 * radius
        body = inner_length * inner_width + 2 * radius * (inner_length + inner_width) + math.pi * radius**2
    neck = math.pi * (jug.neck_diameter_cm / 2) ** 2
    neck_from = jug.full_height_cm - jug.neck_height_cm
    share = min(max((height_cm - jug.straight_to_cm) / (neck_from - jug.straight_to_cm), 0.0), 1.0)
    return (math.sqrt(body) + (math.sqrt(neck) - math.sqrt(body)) * share) ** 2


@given(
    shape=SHAPES.filter(lambda shape: isinstance(shape, (Tapered, LyingCylinder, Shouldered))), share=st.floats(0, 1)
)
def test_volumes_agree_with_the_integral_of_the_plan_area(shape: Shape, share: float) -> None:
    height = share * shape.full_height_cm
    corners = []
    if isinstance(shape, Shouldered):
        bends = (shape.straight_to_cm, shape.full_height_cm - shape.neck_height_cm)
        corners = [bend for bend in bends if 0 < bend < height]
    integral, _ = integrate.quad(lambda h: _plan_area_cm2(shape, h), 0, height, points=corners or None, limit=200)
    assert shape.volume_l(height) * 1000 == pytest.approx(integral, rel=1e-7, abs=1e-9)


def test_a_box_jug_and_a_round_jug_of_one_area_hold_the_same() -> None:
    square = BoxBase(length_cm=20, width_cm=20)
    round_one = RoundBase(diameter_cm=math.sqrt(400 * 4 / math.pi))
    jugs = [
        Shouldered(base=base, straight_to_cm=20, neck_diameter_cm=6, full_height_cm=30) for base in (square, round_one)
    ]
    assert jugs[0].full_volume_l == pytest.approx(jugs[1].full_volume_l, rel=1e-12)


@given(
    steps=st.lists(st.tuples(st.floats(0.05, 20), st.floats(0.2, 20)), min_size=1, max_size=12), share=st.floats(0, 1)
)
def test_the_pour_table_agrees_with_another_monotone_interpolant(
    steps: list[tuple[float, float]], share: float
) -> None:
    """`scipy.interpolate.PchipInterpolator`."""
    volumes, heights = [0.0], [0.0]
    for litres, cm in steps:
        volumes.append(volumes[-1] + litres)
        heights.append(heights[-1] + cm)
    table = PourTable(points=tuple(zip(volumes, heights, strict=True)))
    other = interpolate.PchipInterpolator(heights, volumes)
    height = share * heights[-1]
    assert table.volume_l(height) == pytest.approx(float(other(height)), rel=1e-9, abs=1e-9)

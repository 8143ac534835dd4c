"""Volume and height undo each other, rise together, and agree with the sum of thin slices, for every shape."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.mass.model import (
    Bag,
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
from tests.core.mass.examples import CARRIER_SHAPE, SHAPES

shares = st.floats(0, 1)


@given(shape=SHAPES, share=shares)
def test_height_undoes_volume(shape: Shape, share: float) -> None:
    volume = share * shape.full_volume_l
    assert shape.volume_l(shape.height_cm(volume)) == pytest.approx(volume, rel=1e-9, abs=1e-30)


@given(shape=SHAPES, share=shares)
def test_volume_undoes_height(shape: Shape, share: float) -> None:
    height = share * shape.full_height_cm
    # Where the sides close to a point the height hangs on the last digits of the volume.
    assert shape.height_cm(shape.volume_l(height)) == pytest.approx(height, rel=1e-9, abs=1e-7 * shape.full_height_cm)


@given(shape=SHAPES, share=shares, other=shares)
def test_volume_rises_with_height(shape: Shape, share: float, other: float) -> None:
    low, high = sorted((share * shape.full_height_cm, other * shape.full_height_cm))
    assert shape.volume_l(low) <= shape.volume_l(high) * (1 + 1e-12)


@given(shape=SHAPES, share=shares)
def test_volume_has_no_jump(shape: Shape, share: float) -> None:
    height = share * shape.full_height_cm
    near = min(height + 1e-9 * shape.full_height_cm, shape.full_height_cm)
    assert shape.volume_l(near) - shape.volume_l(height) <= 1e-6 * shape.full_volume_l


@given(shape=SHAPES)
def test_empty_is_nothing_and_the_rim_is_brimful(shape: Shape) -> None:
    assert shape.volume_l(0.0) == 0.0
    assert shape.height_cm(0.0) == 0.0
    assert shape.volume_l(shape.full_height_cm) == pytest.approx(shape.full_volume_l, rel=1e-12)
    assert shape.height_cm(shape.full_volume_l) == pytest.approx(shape.full_height_cm, rel=1e-9)


@given(shape=SHAPES, times=st.floats(0.01, 100))
def test_a_shape_scaled_to_a_capacity_keeps_its_proportions(shape: Shape, times: float) -> None:
    litres = min(times * shape.full_volume_l, 10_000.0)
    scaled = shape_for_capacity(shape, litres)
    assert type(scaled) is type(shape)
    assert scaled.full_volume_l == pytest.approx(litres, rel=1e-9)
    half = scaled.volume_l(scaled.full_height_cm / 2) / scaled.full_volume_l
    assert half == pytest.approx(shape.volume_l(shape.full_height_cm / 2) / shape.full_volume_l, rel=1e-6)


@given(shape=SHAPES)
def test_the_outline_runs_from_the_base_to_the_rim(shape: Shape) -> None:
    outline = profile(shape)
    heights = [height for _, height in outline]
    assert heights[0] == 0.0
    assert heights[-1] == pytest.approx(shape.full_height_cm)
    assert heights == sorted(heights)
    assert all(half_width >= -1e-9 and math.isfinite(half_width) for half_width, _ in outline)


def test_a_carrier_is_drawn_with_straight_sides_a_shoulder_and_a_neck() -> None:
    body, straight, neck, rim = profile(CARRIER_SHAPE)
    assert body[0] == straight[0] > neck[0] == rim[0]
    assert straight[1] < neck[1] < rim[1]


def test_a_round_pour_table_is_drawn_as_wide_as_it_holds() -> None:
    tin = StraightRound(diameter_cm=10, full_height_cm=20)
    table = PourTable(points=tuple((tin.volume_l(height), height) for height in (5.0, 10.0, 20.0)))
    assert all(half_width == pytest.approx(5.0) for half_width, _ in profile(table))


@pytest.mark.parametrize("shape", [CARRIER_SHAPE, Tapered(bottom_cm=26, top_cm=29, full_height_cm=36)])
def test_heights_and_volumes_past_the_rim_are_refused(shape: Shape) -> None:
    with pytest.raises(InputError, match="is not a height inside the container"):
        shape.volume_l(shape.full_height_cm + 0.01)
    with pytest.raises(InputError, match="does not fit"):
        shape.height_cm(shape.full_volume_l * 1.001)
    with pytest.raises(InputError, match="is not a height inside the container"):
        shape.volume_l(-0.1)
    with pytest.raises(InputError, match="is not a height inside the container"):
        shape.volume_l(math.nan)


@pytest.mark.parametrize(
    "points",
    [
        (),
        ((1.0, 5.0), (0.5, 10.0)),
        ((1.0, 5.0), (2.0, 4.0)),
        ((1.0, 5.0), (1.0, 6.0)),
        ((0.0, 1.0), (1.0, 2.0)),
        ((math.nan, 1.0), (1.0, 2.0)),
    ],
)
def test_a_pour_table_that_does_not_rise_is_refused(points: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(InputError):
        PourTable(points=points)


@pytest.mark.parametrize(
    ("build", "rule"),
    [
        (lambda: StraightRound(diameter_cm=0, full_height_cm=10), "diameter"),
        (lambda: StraightRound(diameter_cm=10, full_height_cm=-1), "height"),
        (lambda: StraightRound(diameter_cm=math.inf, full_height_cm=10), "diameter"),
        (lambda: StraightBox(length_cm=10, width_cm=6, corner_radius_cm=3.1, full_height_cm=5), "corner radius"),
        (lambda: Tapered(bottom_cm=20, top_cm=0, full_height_cm=10), "top diameter"),
        (lambda: LyingCylinder(diameter_cm=20, length_cm=math.nan), "length"),
        (lambda: Bag(full_volume_l=0, full_height_cm=30), "volume"),
        (lambda: Bag(full_volume_l=10, full_height_cm=3000), "height"),
        (
            lambda: Shouldered(
                base=RoundBase(diameter_cm=20), straight_to_cm=30, neck_diameter_cm=5, full_height_cm=30
            ),
            "leaves no room for a shoulder",
        ),
        (
            lambda: Shouldered(
                base=BoxBase(length_cm=20, width_cm=20), straight_to_cm=20, neck_diameter_cm=25, full_height_cm=30
            ),
            "is a neck wider than the body",
        ),
    ],
)
def test_sizes_that_make_no_vessel_are_refused(build: Callable[[], Shape], rule: str) -> None:
    with pytest.raises(InputError, match=rule):
        build()

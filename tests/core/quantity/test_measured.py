"""A measured value keeps its doubt, and doubts add in quadrature."""

from __future__ import annotations

import math

import pytest

from core.quantity import Measured, alike, combined


def test_u95_is_twice_u() -> None:
    assert Measured(10.0, 0.15).u95 == pytest.approx(0.3)


def test_half_widths_become_standard_uncertainties() -> None:
    assert Measured.rectangular(5.0, 1.5).u == pytest.approx(0.866, abs=5e-4)
    assert Measured.triangular(5.0, 0.1).u == pytest.approx(0.1 / math.sqrt(6))


def test_sums_add_values_and_squares() -> None:
    total = combined([Measured(1.0, 3.0), Measured(2.0, 4.0)])
    assert (total.value, total.u) == (3.0, 5.0)


@pytest.mark.parametrize(("value", "u"), [(math.nan, 0.1), (1.0, math.inf), (1.0, -0.1), (math.inf, 0.0)])
def test_no_value_without_finite_numbers(value: float, u: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        Measured(value, u)


def test_alike_pieces_share_their_error() -> None:
    assert alike(Measured(14.7, 0.2), 2) == Measured(29.4, 0.4)

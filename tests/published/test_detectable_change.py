"""Measurement error and the smallest change of one person, after Weir 2005, J Strength Cond Res 19:231-40.

SEM = SD x √(1 - ICC); MDC95 = 1.96 x √2 x SEM. The cases are worked by hand. Gill et al. 2022, Musculoskeletal Care:
2.5 stands in the 30-second chair stand of people with early knee osteoarthritis.
"""

from __future__ import annotations

import math

import pytest

from catalog.protocols import load_protocols
from core.assess.retest import smallest_detectable, standard_error


@pytest.mark.parametrize(
    ("spread", "reliability", "error", "detectable"),
    [
        (10, 0.95, 2.236, 6.198),
        (10, 0.90, 3.162, 8.765),
        (3, 0.95, 0.671, 1.859),
        (63, 0.97, 10.912, 30.246),
        (72, 0.90, 22.768, 63.111),
    ],
)
def test_error_and_smallest_change_worked_by_hand(
    spread: float, reliability: float, error: float, detectable: float
) -> None:
    assert standard_error(spread, reliability) == pytest.approx(error, abs=0.001)
    assert smallest_detectable(standard_error(spread, reliability)) == pytest.approx(detectable, abs=0.001)


def test_at_ninety_per_cent_it_is_smaller() -> None:
    assert smallest_detectable(standard_error(10, 0.95), z=1.645) == pytest.approx(5.202, abs=0.001)
    assert smallest_detectable(1.0) == pytest.approx(1.96 * math.sqrt(2))


def test_a_spread_or_a_reliability_that_cannot_be_is_a_mistake() -> None:
    with pytest.raises(ValueError, match="reliability"):
        standard_error(10, 1.2)


def test_only_the_chair_stand_has_a_published_threshold() -> None:
    published = {protocol.id: protocol.change.amount for protocol in load_protocols() if protocol.change is not None}
    assert published == {"chair_stand_30": 2.5}

"""The loads of one container, cup by cup."""

from __future__ import annotations

from itertools import pairwise

import pytest

from core.loads.pours import LEAST_STEP, nearest_pour, pours_of
from core.mass.gauge import gauge_of
from core.mass.learning import Setting
from core.mass.model import Container, CupsLevel, FullLevel, Packing, StraightRound
from core.mass.weigh import estimate
from core.quantity import Measured
from tests.core.mass.examples import CARRIER, WATER

GAUGE = gauge_of(Setting(container=CARRIER, material=WATER, temperature_c=15.0, packing=Packing.LOOSE))
POURS = pours_of(GAUGE, 0.25)


def test_each_pour_weighs_what_the_estimate_says() -> None:
    for pour in POURS:
        assert estimate(CARRIER, WATER, pour.level(0.25)).mass.value == pytest.approx(pour.mass_kg)


def test_they_go_from_empty_to_full_in_steps_worth_taking() -> None:
    assert (POURS[0].cups, POURS[0].mass_kg, POURS[0].step_pct) == (0, 0.68, 0.0)
    assert POURS[-1].full
    assert POURS[-1].level(0.25) == FullLevel()
    assert POURS[1].level(0.25) == CupsLevel(count=1, cup_l=0.25)
    for below, above in pairwise(POURS):
        assert above.mass_kg >= below.mass_kg * (1 + LEAST_STEP) - 1e-9
        assert above.step_pct == pytest.approx(100 * (above.mass_kg / below.mass_kg - 1))


def test_only_steps_wider_than_a_tenth_are_wide() -> None:
    assert POURS[1].wide
    assert not POURS[-1].wide


def test_an_empty_bottle_is_no_load() -> None:
    bottle = Container(
        shape=StraightRound(diameter_cm=6.0, full_height_cm=18.4),
        nominal_l=Measured(0.5, 0.005),
        brimful_l=Measured(0.52, 0.005),
        tare_kg=Measured(0.011, 0.002),
    )
    gauge = gauge_of(Setting(container=bottle, material=WATER, temperature_c=15.0, packing=Packing.LOOSE))
    assert [pour.volume_l for pour in pours_of(gauge, 0.25)] == pytest.approx([0.25, 0.5])
    assert [pour.volume_l for pour in pours_of(gauge, 2.0)] == pytest.approx([0.5])


@pytest.mark.parametrize("off_kg", [-0.05, 0.0, 0.05])
def test_the_nearest_pour_is_found(off_kg: float) -> None:
    assert nearest_pour(POURS, POURS[3].mass_kg + off_kg) == 3
    assert nearest_pour(POURS, 0.0) == 0
    assert nearest_pour(POURS, 999.0) == len(POURS) - 1
    assert nearest_pour((), 3.0) == -1

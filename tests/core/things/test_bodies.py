"""The bend of the knee at a step."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.things.bodies import THIGH_OF_STATURE, knee_angle_deg
from tests.core.things.examples import INES


def test_the_floor_does_not_bend_the_knee() -> None:
    assert knee_angle_deg(0.0, INES) == 0.0


def test_a_thigh_high_step_bends_it_to_a_right_angle() -> None:
    assert knee_angle_deg(THIGH_OF_STATURE * INES.height_cm, INES) == pytest.approx(90.0)


def test_half_a_thigh_bends_it_to_sixty_degrees() -> None:
    assert knee_angle_deg(THIGH_OF_STATURE * INES.height_cm / 2, INES) == pytest.approx(60.0)


@given(low=st.floats(0, 60), more=st.floats(0.5, 20), stature=st.floats(140, 200))
def test_a_higher_step_bends_it_more_and_a_taller_person_less(low: float, more: float, stature: float) -> None:
    person = replace(INES, height_cm=stature)
    assert knee_angle_deg(low + more, person) > knee_angle_deg(low, person)
    assert knee_angle_deg(low + more, replace(INES, height_cm=stature + 10)) < knee_angle_deg(low + more, person)

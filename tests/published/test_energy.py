"""What movement costs, against worked examples, cases worked by hand and the two wrong forms that are known.

ACSM metabolic equations (Bushman 2020, ACSM's Health & Fitness Journal 24(4)); Pandolf, Givoni and Goldman 1977, J Appl
Physiol 43:577-81, form as in Alberti 2019, SoftwareX; Looney et al. 2019, Med Sci Sports Exerc (LCDA), form read
second-hand. Cases named so are worked by hand from the equations as published.
"""

from __future__ import annotations

import pytest

from core.assess.energy import (
    KCAL_H_PER_W,
    TERRAIN,
    kcal_per_min,
    lcda_w_kg,
    pandolf_w,
    running_ml,
    stepping_ml,
    walking_ml,
)
from core.errors import InputError

MILE_AN_HOUR = 26.8
"""m/min, as the ACSM rounds it."""


def test_worked_example_of_walking_at_three_and_a_half_miles_an_hour_uphill() -> None:
    assert walking_ml(3.5 * MILE_AN_HOUR, grade=0.10) == pytest.approx(29.76, abs=0.01)


def test_worked_example_of_stepping_on_twelve_inches() -> None:
    assert stepping_ml(30, 0.3048) == pytest.approx(31.4, abs=0.05)
    assert stepping_ml(24, 0.3048) == pytest.approx(25.81, abs=0.01)


def test_running_worked_by_hand() -> None:
    assert running_ml(160.8) == pytest.approx(35.66, abs=0.005)


def test_eight_mets_for_half_an_hour_at_70_kg_are_294_kcal() -> None:
    assert 30 * kcal_per_min(8 * 3.5, 70) == pytest.approx(294)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: walking_ml(120), "50 to 100 m/min"),
        (lambda: running_ml(60), "80 to 600 m/min"),
        (lambda: stepping_ml(40, 0.3), "12 to 30 a minute"),
        (lambda: stepping_ml(24, 0.5), "0.04 to 0.4 m"),
        (lambda: lcda_w_kg(2.5), "0 to 1.97 m/s"),
        (lambda: lcda_w_kg(1.0, grade_pct=60), "-40 to 45 %"),
        (lambda: pandolf_w(80, 90, 1.3), "0 to 70 kg"),
        (lambda: pandolf_w(80, 20, 3), "0 to 2 m/s"),
        (lambda: pandolf_w(80, 20, 1.3, grade_pct=-5), "does not hold"),
        (lambda: walking_ml(float("nan")), "walking speed"),
    ],
)
def test_outside_its_range_an_equation_is_refused(call: object, words: str) -> None:
    assert callable(call)
    with pytest.raises(InputError, match=words):
        call()


@pytest.mark.parametrize(
    ("body_kg", "load_kg", "speed", "grade", "terrain", "watts"),
    [
        (70, 0, 1.2, 0, 1.0, 256.2),
        (80, 0, 1.34, 0, 1.0, 335.5),
        (80, 20, 1.34, 0, 1.0, 401.8),
        (80, 20, 1.34, 0, 1.1, 428.8),
        (80, 20, 1.34, 0, 2.1, 698.1),
        (80, 20, 1.34, 5, 1.0, 636.3),
        (80, 20, 0, 0, 1.0, 132.5),
        (80.2, 0, 1.34, 0, 1.1, 357.9),
        (80.2, 13.6, 1.34, 0, 1.1, 403.6),
        (80.2, 27.2, 1.34, 0, 1.1, 463.2),
    ],
)
def test_pandolf_agrees_with_cases_worked_by_hand(
    body_kg: float, load_kg: float, speed: float, grade: float, terrain: float, watts: float
) -> None:
    assert pandolf_w(body_kg, load_kg, speed, grade_pct=grade, terrain=terrain) == pytest.approx(watts, abs=0.06)


def test_pandolf_takes_its_grade_in_per_cent_not_as_a_share() -> None:
    flat, hill = pandolf_w(80, 20, 1.34), pandolf_w(80, 20, 1.34, grade_pct=5)
    assert hill / flat == pytest.approx(636.3 / 401.8, abs=0.001)
    assert pandolf_w(80, 20, 1.34, grade_pct=0.05) / flat < 1.01


def test_watts_are_kilocalories_an_hour() -> None:
    assert pytest.approx(345.5, abs=0.05) == 401.8 * KCAL_H_PER_W


def test_terrain_factors_are_those_of_the_energy_equations() -> None:
    """Not those of models of walking speed, which put grass at 1.03 and beach sand at 1.19."""
    assert TERRAIN["dirt road or grass"] == 1.1
    assert TERRAIN["loose sand"] == 2.1


LCDA_LEVEL = {0.0: 1.440, 0.5: 2.895, 1.0: 3.620, 1.34: 4.414, 1.5: 4.965, 1.97: 7.651}
LCDA_GRADED = {-12.0: 3.081, -8.0: 3.136, -4.0: 3.538, 5.0: 6.237, 10.0: 8.639}


@pytest.mark.parametrize(("speed", "watts"), LCDA_LEVEL.items())
def test_lcda_on_the_level(speed: float, watts: float) -> None:
    assert lcda_w_kg(speed) == pytest.approx(watts, abs=0.001)


@pytest.mark.parametrize(("grade", "watts"), LCDA_GRADED.items())
def test_lcda_on_a_grade(grade: float, watts: float) -> None:
    assert lcda_w_kg(1.34, grade_pct=grade) == pytest.approx(watts, abs=0.001)


@pytest.mark.parametrize(("speed", "wrong"), [(0.5, 2.470), (1.97, 6.193)])
def test_lcda_keeps_the_exponents_of_speed(speed: float, wrong: float) -> None:
    """The version that lost them gives the same at 1.0 m/s and nearly so at 1.34, so it is looked at elsewhere."""
    assert 1.44 + 1.94 * speed + 0.24 * speed**2 == pytest.approx(wrong, abs=0.001)
    assert abs(lcda_w_kg(speed) - wrong) > 0.4
    assert pytest.approx(lcda_w_kg(1.0), abs=0.001) == 1.44 + 1.94 + 0.24


def test_lcda_keeps_1_1_in_the_grade_term() -> None:
    """The version with 1.11 gives 2.875 W/kg at 1.34 m/s and -8 %."""
    wrong = lcda_w_kg(1.34) + 0.34 * 1.34 * -8 * (1 - 1.05 ** (1 - 1.11 ** (-8 + 32)))
    assert wrong == pytest.approx(2.875, abs=0.001)
    assert lcda_w_kg(1.34, grade_pct=-8) - wrong > 0.2

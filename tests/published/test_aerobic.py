"""Equations of oxygen uptake against cases worked by hand, and the traps that are known of them.

Kline et al. 1987, Med Sci Sports Exerc 19:253-9 (mile walk); George et al. 1993, Med Sci Sports Exerc 25:401-6 (mile
jog); Larsen et al. 2002 (1.5 miles at "somewhat hard"); Cureton et al. 1995, Med Sci Sports Exerc 27:445-51 (mile run,
from memory); Keller 2002 (Kline reads low under 30). The cases are worked by hand from the equations as published.
"""

from __future__ import annotations

import pytest

from core.assess.aerobic import (
    CURETON_TURN_MIN,
    KG_PER_LB,
    Answer,
    Estimate,
    NoEstimate,
    Runner,
    cureton_1995,
    george_1993,
    kline_1987,
    kline_1987_l_min,
    larsen_2002,
)
from core.house.model import Sex


def man(kg: float, age: int | None = 45) -> Runner:
    return Runner(body_mass_kg=kg, age=age, sex=Sex.MALE)


def woman(kg: float, age: int | None = 45) -> Runner:
    return Runner(body_mass_kg=kg, age=age, sex=Sex.FEMALE)


def value(answer: Answer) -> float:
    assert isinstance(answer, Estimate), answer
    return answer.ml_kg_min


def test_the_walk_of_a_man_of_45_in_14_and_a_half_minutes() -> None:
    walker = man(165 * KG_PER_LB)
    assert value(kline_1987(walker, 14.5, 130)) == pytest.approx(41.347, abs=0.001)
    assert kline_1987_l_min(walker, 14.5, 130) == pytest.approx(3.1627, abs=0.0001)


def test_the_two_forms_of_the_walk_equation_differ_by_about_one() -> None:
    walker = man(165 * KG_PER_LB)
    absolute = 1000 * kline_1987_l_min(walker, 14.5, 130) / walker.body_mass_kg
    assert absolute == pytest.approx(42.258, abs=0.001)
    assert 0.5 < absolute - value(kline_1987(walker, 14.5, 130)) < 1.5


def test_the_walk_takes_beats_a_minute_not_in_ten_seconds() -> None:
    """A known wrong answer puts the beats of ten seconds in and gets 57.23 for 38.06."""
    walker = woman(130 * KG_PER_LB, age=52)
    assert value(kline_1987(walker, 12.75, 147)) == pytest.approx(38.06, abs=0.01)
    assert value(kline_1987(walker, 12.75, 147 / 6)) == pytest.approx(57.23, abs=0.05)


@pytest.mark.parametrize("age", [18, 29, 70, 85])
def test_the_walk_gives_no_score_outside_30_to_69(age: int) -> None:
    found = kline_1987(woman(68, age=age), 14, 130)
    assert isinstance(found, NoEstimate)
    assert "30 to 69" in found.why


def test_the_jog_of_fit_young_people() -> None:
    assert value(george_1993(man(70, age=24), 9, 150)) == pytest.approx(55.530, abs=0.001)
    assert value(george_1993(woman(60, age=24), 10, 160)) == pytest.approx(45.456, abs=0.001)


@pytest.mark.parametrize(
    ("runner", "time_min", "pulse", "words"),
    [
        (man(70, age=24), 7.9, 150, "8 min or slower"),
        (woman(60, age=24), 8.9, 150, "9 min or slower"),
        (man(70, age=24), 9, 181, "180 or lower"),
        (man(70, age=30), 9, 150, "18 to 29"),
        (man(70, age=17), 9, 150, "18 to 29"),
    ],
)
def test_the_jog_gives_no_score_outside_what_it_was_made_for(
    runner: Runner, time_min: float, pulse: float, words: str
) -> None:
    found = george_1993(runner, time_min, pulse)
    assert isinstance(found, NoEstimate)
    assert words in found.why


def test_a_mile_and_a_half_at_somewhat_hard() -> None:
    assert value(larsen_2002(man(75, age=22), 14)) == pytest.approx(49.384, abs=0.001)
    assert value(larsen_2002(woman(60, age=22), 18)) == pytest.approx(40.690, abs=0.001)
    assert value(larsen_2002(man(75, age=22), 14, 150)) == pytest.approx(53.941, abs=0.001)
    assert isinstance(larsen_2002(man(75, age=27), 14), NoEstimate)


def test_the_mile_run_of_a_man_of_20() -> None:
    height_cm = 100 * (70 / 22) ** 0.5
    assert value(cureton_1995(man(70, age=20), height_cm, 8)) == pytest.approx(49.14, abs=0.01)


def test_the_mile_run_gives_no_score_past_its_turn() -> None:
    """The quadratic turns at 8.41 / 0.68 = 12.37 min: slower runners would score better again."""
    runner, height_cm = woman(60, age=20), 100 * (60 / 22) ** 0.5
    assert pytest.approx(12.37, abs=0.005) == CURETON_TURN_MIN
    before = [value(cureton_1995(runner, height_cm, time_min)) for time_min in (9, 10, 11, 12, 12.36)]
    assert before == sorted(before, reverse=True)
    assert before[1] == pytest.approx(40.36, abs=0.01)
    for time_min in (12.38, 14, 16):
        found = cureton_1995(runner, height_cm, time_min)
        assert isinstance(found, NoEstimate)
        assert "12.4 min" in found.why


def test_an_equation_from_memory_says_so() -> None:
    found = cureton_1995(man(70, age=20), 178, 8)
    assert isinstance(found, Estimate)
    assert "memory" in found.note


@pytest.mark.parametrize("runner", [woman(68, age=None), Runner(body_mass_kg=68, age=40, sex=None)])
def test_without_age_and_sex_there_is_no_score(runner: Runner) -> None:
    for found in (kline_1987(runner, 14, 130), george_1993(runner, 10, 150), larsen_2002(runner, 14)):
        assert isinstance(found, NoEstimate)
        assert "age and sex" in found.why


def test_numbers_no_living_person_has_are_no_score() -> None:
    found = kline_1987(man(200, age=69), 30, 200)
    assert isinstance(found, NoEstimate)
    assert "can't be" in found.why

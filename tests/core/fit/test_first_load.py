"""Rules of first loads: light for anyone, lighter for the new, lighter overhead, and never past the most."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.load import load_catalog
from core.exercise.model import Exercise, Family, Use
from core.fit.bind import bind
from core.fit.first_load import MOST_SHARE, MOST_WALK_SHARE, most_at_first_kg
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.house.model import Experience, Person
from tests.dipper import CABIN, TOMAS, TOWPATH, dipper

CATALOG = load_catalog()
LOADED = tuple(exercise for exercise in CATALOG.exercises if exercise.load_need is not None and not exercise.needs_gym)
BODY_KG = st.floats(30, 250)


def person(body_kg: float, experience: Experience, height_cm: float = 160.0) -> Person:
    return Person(id="p", name="Someone", body_mass_kg=body_kg, height_cm=height_cm, experience=experience)


def named(exercise_id: str) -> Exercise:
    return CATALOG.exercise_by_id[exercise_id]


@given(st.sampled_from(LOADED), BODY_KG, st.sampled_from(Experience))
def test_no_first_load_passes_the_most_for_the_experience(
    exercise: Exercise, body_kg: float, experience: Experience
) -> None:
    need = exercise.load_need
    assert need is not None
    in_all = max(MOST_SHARE[experience][1], MOST_WALK_SHARE[experience])
    for use in need.uses:
        assert 0 < most_at_first_kg(exercise, use, need.count, person(body_kg, experience)) <= in_all * body_kg + 1e-9


@given(st.sampled_from(LOADED), BODY_KG)
def test_more_experience_never_means_a_lighter_most(exercise: Exercise, body_kg: float) -> None:
    need = exercise.load_need
    assert need is not None
    new, some, trained = (
        most_at_first_kg(exercise, need.uses[0], need.count, person(body_kg, experience)) for experience in Experience
    )
    assert new <= some <= trained


def test_a_light_older_beginner_starts_with_a_fifth_of_body_mass_at_most_and_less_overhead() -> None:
    someone = person(52.0, Experience.NEW)
    assert most_at_first_kg(named("floor_press"), Use.PAIR, 1, someone) == pytest.approx(10.4)
    assert most_at_first_kg(named("one_hand_row"), Use.ONE_HAND, 1, someone) == pytest.approx(5.2)
    assert most_at_first_kg(named("pair_press"), Use.OVERHEAD, 2, someone) == pytest.approx(5.2)
    assert most_at_first_kg(named("one_hand_press"), Use.OVERHEAD, 1, someone) == pytest.approx(2.6)
    assert most_at_first_kg(named("one_hand_curl"), Use.ONE_HAND, 1, someone) == pytest.approx(2.6)


def test_a_pack_for_walking_starts_at_a_tenth_of_body_mass() -> None:
    assert named("loaded_walk").family is Family.GAIT
    assert most_at_first_kg(named("loaded_walk"), Use.BACK, 1, person(70.0, Experience.NEW)) == pytest.approx(7.0)


@pytest.mark.parametrize("place", [CABIN, TOWPATH], ids=lambda place: place.id)
def test_a_wanted_load_is_kept_light_until_the_person_has_proven_it(place: object) -> None:
    setting = Setting(dipper(), TOMAS, CATALOG.material_by_id, TOWPATH if place is TOWPATH else CABIN)
    bound = 0
    for exercise in LOADED:
        made = bind(exercise, setting, wanted_kg=200.0)
        if isinstance(made, Missing) or made.load is None or exercise.load_need is None:
            continue
        bound += 1
        most_kg = most_at_first_kg(exercise, made.load.use, exercise.load_need.count, TOMAS)
        assert made.load.mass.value <= most_kg + 1e-9, exercise.id
    assert bound > 20


def test_a_proven_load_is_only_held_to_the_range_of_the_movement() -> None:
    setting = Setting(dipper(), TOMAS, CATALOG.material_by_id, TOWPATH)
    exercise = named("jug_deadlift")
    first, proven = bind(exercise, setting, wanted_kg=25.0), bind(exercise, setting, wanted_kg=25.0, proven=True)
    assert isinstance(first, Binding)
    assert isinstance(proven, Binding)
    assert first.load_kg <= 0.2 * TOMAS.body_mass_kg < proven.load_kg
    assert proven.load_kg == pytest.approx(25.0, abs=0.3)


def test_what_is_too_heavy_to_begin_with_is_missing_with_the_most_it_may_be() -> None:
    house = dipper()
    only_coal = type(house)(name="Coal", things=tuple(thing for thing in house.things if thing.id == "coal"))
    someone = person(45.0, Experience.NEW)
    made = bind(named("hug_squat"), Setting(only_coal, someone, CATALOG.material_by_id), wanted_kg=10.0)
    assert isinstance(made, Missing)
    assert made.why == ("nothing for it is light enough to begin with (at most 9.0 kg)",)

"""Rules of a swap: what is left out and on what ground, what a cause changes, and the order of the answers."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from catalog.load import load_catalog
from core.effort.capacity import Prescription
from core.errors import InputError
from core.exercise.model import Demand, Exercise, Family, Pattern
from core.exercise.strength import carries_over, is_strength, leading_muscle, single_joint
from core.fit.setting import Setting
from core.house.model import Experience, House, Person, Place
from core.swap.aim import aim_of
from core.swap.closeness import bout_closeness, muscle_closeness, pattern_closeness, set_up_closeness
from core.swap.form import form_closeness
from core.swap.model import BY_BOUT, BY_MUSCLE, CAUSE_WEIGHTS, Answer, Cause, Ground, Swap, SwapRequest
from core.swap.ranking import SPREAD, by_closeness, spread, twins
from core.swap.swap import swap
from tests.core.swap.truth_houses import PEOPLE, PLACES, house_named
from tests.dipper import CABIN, INES, TOMAS, TOWPATH, dipper

CATALOG = load_catalog()
BY_ID = CATALOG.exercise_by_id
ASKABLE = st.sampled_from(CATALOG.exercises)
SETTINGS = {
    (house, person, place): Setting(house_named(house), PEOPLE[person], CATALOG.material_by_id, PLACES[place])
    for house, person, place in (
        ("flat", "usual", "room"),
        ("flat", "new", "upstairs"),
        ("stairs", "elder", "hall"),
        ("bar", "trained", "room"),
        ("empty", "heavy", "park"),
        ("dumbbells", "usual", "room"),
    )
}
HERE = st.sampled_from(list(SETTINGS.values()))
FEW = settings(max_examples=10)
"""Each example is a whole swap or two."""
FLAT = SETTINGS["flat", "usual", "room"]


def asked(exercise_id: str, setting: Setting = FLAT, **changes: object) -> Swap:
    request = SwapRequest(asked=BY_ID[exercise_id], **changes)  # type: ignore[arg-type]  # fields of a request
    return swap(request, setting, CATALOG)


def ids(found: Swap) -> list[str]:
    return [answer.exercise.id for answer in found.answers]


@FEW
@given(ASKABLE, HERE, st.sampled_from(Cause))
def test_every_related_movement_is_answered_or_left_out_with_a_reason(
    exercise: Exercise, setting: Setting, cause: Cause
) -> None:
    found = swap(SwapRequest(asked=exercise, cause=cause), setting, CATALOG)
    offered, left = ids(found), [one.exercise_id for one in found.left_out]
    assert len(set(offered)) == len(offered)
    assert set(offered).isdisjoint(left)
    assert all(one.why and not one.why.endswith(".") for one in found.left_out)
    for answer in found.answers:
        close = answer.closeness
        assert 0 <= close.total <= 1 + 1e-9
        for part in (close.pattern, close.muscles, close.effort, close.set_up):
            assert 0 <= part <= 1 + 1e-9
        assert answer.why


@FEW
@given(ASKABLE, HERE, st.sampled_from(Cause), st.integers(0, 2**16))
def test_the_order_of_things_and_exercises_changes_nothing(
    exercise: Exercise, setting: Setting, cause: Cause, seed: int
) -> None:
    things = list(setting.house.things)
    random.Random(seed).shuffle(things)
    turned = Setting(
        replace(setting.house, things=tuple(things)), setting.person, CATALOG.material_by_id, setting.place
    )
    request = SwapRequest(asked=exercise, cause=cause)
    assert swap(request, setting, CATALOG) == swap(request, turned, CATALOG)


@FEW
@given(ASKABLE, HERE, st.frozensets(st.sampled_from(Demand), max_size=4))
def test_what_is_spared_is_asked_of_nobody(exercise: Exercise, setting: Setting, spare: frozenset[Demand]) -> None:
    found = swap(SwapRequest(asked=exercise, cause=Cause.HURTS, spare=spare), setting, CATALOG)
    assert all(answer.exercise.demands.isdisjoint(spare) for answer in found.answers)
    assert exercise.id not in ids(found)


@FEW
@given(ASKABLE, HERE)
def test_too_loud_means_no_landing_and_little_noise(exercise: Exercise, setting: Setting) -> None:
    for answer in swap(SwapRequest(asked=exercise, cause=Cause.TOO_LOUD), setting, CATALOG).answers:
        other = answer.exercise
        assert other.impact <= 1
        assert other.noise <= 1
        assert (other.impact, other.noise) < (exercise.impact, exercise.noise) or other.noise == other.impact == 0


@FEW
@given(ASKABLE, HERE)
def test_too_hard_is_never_answered_by_a_harder_level_nor_too_easy_by_an_easier(
    exercise: Exercise, setting: Setting
) -> None:
    for cause, sign in ((Cause.TOO_HARD, -1), (Cause.TOO_EASY, 1)):
        for answer in swap(SwapRequest(asked=exercise, cause=cause), setting, CATALOG).answers:
            assert sign * (answer.exercise.level - exercise.level) >= 0


@FEW
@given(ASKABLE, HERE)
def test_no_room_means_a_mat_and_no_way_to_travel(exercise: Exercise, setting: Setting) -> None:
    for answer in swap(SwapRequest(asked=exercise, cause=Cause.NO_ROOM), setting, CATALOG).answers:
        assert answer.exercise.floor_m2 <= max(1.0, min(2.0, exercise.floor_m2 - 0.5))


@FEW
@given(ASKABLE, HERE)
def test_nobody_is_offered_a_level_above_their_experience_unless_they_have_mastered_it(
    exercise: Exercise, setting: Setting
) -> None:
    highest = {Experience.NEW: 3, Experience.SOME: 4, Experience.TRAINED: 5}[setting.person.experience]
    mastered = 0 if exercise.needs_gym else min(exercise.level, 4)
    for answer in swap(SwapRequest(asked=exercise), setting, CATALOG).answers:
        assert answer.exercise.level <= max(highest, mastered)


@FEW
@given(ASKABLE, HERE)
def test_single_joint_work_is_answered_for_its_muscle_alone(exercise: Exercise, setting: Setting) -> None:
    if not (is_strength(exercise) and single_joint(exercise)):
        return
    lead = leading_muscle(exercise)
    for answer in swap(SwapRequest(asked=exercise), setting, CATALOG).answers:
        assert dict(answer.exercise.muscles)[lead] >= 0.5


GROUNDS = [
    (Ground.THINGS, "pull_up", {}, FLAT, "pull_up", "rated to hang"),
    (
        Ground.PLACE,
        "overhead_press_bar",
        {},
        Setting(house_named("flat"), INES, CATALOG.material_by_id, CABIN),
        "standing_press",
        "m high",
    ),
    (
        Ground.SPARED,
        "push_up",
        {"cause": Cause.HURTS, "spare": frozenset({Demand.KNEELING})},
        FLAT,
        "knee_push_up",
        "which you spare",
    ),
    (Ground.NOISE, "jump_squat", {}, SETTINGS["flat", "new", "upstairs"], "jump_squat", "has neighbours"),
    (Ground.NOISE, "jump_squat", {"most_noise": 1}, FLAT, "jump_squat", "too much noise"),
    (Ground.LEVEL, "push_up", {}, SETTINGS["flat", "new", "upstairs"], "one_arm_push_up", "work up to it"),
    (Ground.EFFORT, "pull_up", {}, SETTINGS["bar", "trained", "room"], "side_to_side_pull_up", "about all you can do"),
    (Ground.EFFORT, "push_up", {"cause": Cause.TOO_HARD}, FLAT, "push_up", "no lighter"),
    (Ground.EFFORT, "body_squat", {"cause": Cause.TOO_EASY}, FLAT, "body_squat", "no heavier"),
    (Ground.EFFORT, "plank", {"cause": Cause.TOO_HARD}, FLAT, "plank", "nothing says it is easier"),
    (Ground.EFFORT, "plank", {"cause": Cause.TOO_EASY}, FLAT, "plank", "nothing says it is harder"),
    (Ground.CAUSE, "push_up", {"cause": Cause.TOO_HARD}, FLAT, "feet_raised_push_up", "it is harder"),
    (Ground.CAUSE, "push_up", {"cause": Cause.TOO_EASY}, FLAT, "wall_push_up", "it is easier"),
    (Ground.CAUSE, "push_up", {"cause": Cause.HURTS}, FLAT, "push_up", "the movement that hurts"),
    (Ground.CAUSE, "jump_squat", {"cause": Cause.TOO_LOUD}, FLAT, "tuck_jump", "lands with impact"),
    (Ground.CAUSE, "pair_march", {"cause": Cause.TOO_LOUD}, FLAT, "suitcase_hold", "hardly quieter"),
    (Ground.CAUSE, "walking_lunge", {"cause": Cause.NO_ROOM}, FLAT, "side_lunge", "m² of floor"),
    (Ground.CAUSE, "walking_lunge", {"cause": Cause.NO_ROOM}, FLAT, "walking_lunge", "it travels"),
]


@pytest.mark.parametrize(("ground", "exercise_id", "changes", "setting", "left", "words"), GROUNDS)
def test_every_ground_for_leaving_out_is_told_in_words(
    ground: Ground, exercise_id: str, changes: dict[str, object], setting: Setting, left: str, words: str
) -> None:
    found = {one.exercise_id: one for one in asked(exercise_id, setting, **changes).left_out}
    assert found[left].ground is ground
    assert words in found[left].why


def test_every_ground_can_be_reached() -> None:
    assert {row[0] for row in GROUNDS} == set(Ground)


def test_the_movement_asked_for_stands_first_where_it_can_be_done() -> None:
    for exercise_id in ("push_up", "goblet_squat", "one_hand_row", "plank", "reverse_lunge"):
        assert ids(asked(exercise_id))[0] == exercise_id


def test_the_same_movement_with_another_thing_stands_ahead_of_a_little_closer_ones() -> None:
    found = asked("good_morning_bar")
    pack = next(answer for answer in found.answers if answer.exercise.id == "pack_good_morning")
    assert pack.closeness.ahead > 0
    behind = found.answers[found.answers.index(pack) + 1 :]
    assert any(answer.closeness.total > pack.closeness.total for answer in behind)


def test_the_first_answers_are_spread_and_the_rest_stand_by_closeness() -> None:
    for exercise_id in ("bench_press_bar", "back_squat_bar", "cable_row", "plank"):
        found = asked(exercise_id)
        rest = [by_closeness(answer) for answer in found.answers[SPREAD:]]
        assert rest == sorted(rest)
        assert len({answer.exercise.id for answer in found.answers}) == len(found.answers)


def test_twins_give_way_to_a_different_movement_a_little_behind() -> None:
    found = asked("bench_press_bar", SETTINGS["flat", "new", "upstairs"])
    ordered = sorted(found.answers, key=by_closeness)
    assert spread(ordered)[0] is ordered[0]
    first = found.answers[:SPREAD]
    paired = sum(twins(one, other) for place, one in enumerate(first) for other in first[place + 1 :])
    straight = ordered[:SPREAD]
    before = sum(twins(one, other) for place, one in enumerate(straight) for other in straight[place + 1 :])
    assert paired <= before


def test_a_written_load_is_reached_with_what_there_is() -> None:
    wanted = Prescription(sets=4, reps=5, load_kg=16.0, effort=8.0)
    first = asked(
        "goblet_squat", Setting(dipper(), INES, CATALOG.material_by_id, TOWPATH), prescription=wanted
    ).answers[0]
    assert first.exercise.id == "goblet_squat"
    assert first.binding.load_kg == pytest.approx(16.0, rel=0.03)
    assert first.dose.sets == 4


def test_a_load_out_of_reach_is_said_to_be() -> None:
    wanted = Prescription(sets=5, reps=5, load_kg=150.0, effort=8.0)
    found = asked("deadlift_bar", prescription=wanted)
    assert "Nothing you own reaches that" in found.note
    assert any("carry over" in " ".join(answer.why) for answer in found.answers[:SPREAD])


def test_a_load_matched_on_one_side_only_is_said_to_be() -> None:
    wanted = Prescription(sets=3, reps=8, load_kg=60.0, effort=8.0)
    found = asked("deadlift_bar", SETTINGS["bar", "trained", "room"], prescription=wanted)
    assert "each side" in found.note or "Nothing you own" in found.note


def test_nothing_to_do_says_so() -> None:
    nowhere = Setting(
        House(name="x"), INES, CATALOG.material_by_id, Place(id="shaft", name="Shaft", floor_m2=0.2, walk_m=0.0)
    )
    found = asked("back_squat_bar", nowhere)
    assert found.answers == ()
    assert "left-out list" in found.note


def test_pain_without_a_word_on_what_to_spare_asks_for_it_and_turns_to_other_demands() -> None:
    found = asked("body_squat", cause=Cause.HURTS)
    assert "Say what to spare" in found.note
    assert Demand.DEEP_KNEE_BEND not in found.answers[0].exercise.demands


@pytest.mark.parametrize("using", ["water_carrier_ten", "backpack", "dining_chair", "towel"])
def test_an_answer_using_a_thing_uses_it(using: str) -> None:
    found = asked("back_squat_bar", using=using)
    assert all(using in answer.binding.thing_ids for answer in found.answers)
    assert any("does not use" in one.why for one in found.left_out)
    assert found.answers or using == "towel"


def test_a_thing_that_is_not_here_cannot_be_used() -> None:
    with pytest.raises(InputError, match="is not in Room"):
        asked("back_squat_bar", using="beam")


@pytest.mark.parametrize("cause", list(Cause))
def test_the_weights_of_every_cause_sum_to_one(cause: Cause) -> None:
    for weights in (CAUSE_WEIGHTS[cause], BY_MUSCLE, BY_BOUT):
        assert weights.pattern + weights.muscles + weights.effort + weights.set_up == pytest.approx(1.0)


@given(ASKABLE, ASKABLE)
def test_likeness_is_whole_with_oneself_and_the_same_both_ways(one: Exercise, other: Exercise) -> None:
    for close in (pattern_closeness, muscle_closeness):
        assert close(one, one) == pytest.approx(1.0)
        assert close(one, other) == pytest.approx(close(other, one))
        assert 0 <= close(one, other) <= 1 + 1e-9
    assert 0 <= form_closeness(one, other, loaded=True, spare=frozenset()) <= 1


@given(st.floats(1, 10_000), st.floats(1, 10_000))
def test_bouts_grow_unlike_with_their_ratio(one_s: float, other_s: float) -> None:
    close = bout_closeness(one_s, other_s)
    assert close == pytest.approx(bout_closeness(other_s, one_s))
    assert (close == 0) is (max(one_s, other_s) / min(one_s, other_s) >= 8 - 1e-9)
    assert bout_closeness(one_s, one_s) == 1.0


def test_setting_up_costs_nothing_for_half_a_minute_and_all_at_ten() -> None:
    assert set_up_closeness(30.0) == 1.0
    assert set_up_closeness(600.0) == 0.0
    assert set_up_closeness(60.0) > set_up_closeness(120.0) > 0


def test_a_step_down_and_up_aims_lower_and_higher() -> None:
    def wanted(cause: Cause) -> float:
        aim = aim_of(SwapRequest(asked=BY_ID["push_up"], cause=cause), TOMAS, CATALOG)
        assert aim.wanted is not None
        return aim.wanted

    assert wanted(Cause.TOO_HARD) <= wanted(Cause.NO_GEAR) < wanted(Cause.TOO_EASY)


def test_the_next_easier_by_the_catalog_come_with_the_cause() -> None:
    def steps(cause: Cause) -> dict[str, float]:
        return dict(aim_of(SwapRequest(asked=BY_ID["push_up"], cause=cause), INES, CATALOG).steps)

    assert steps(Cause.NO_GEAR) == {}
    assert {one for one, near in steps(Cause.TOO_HARD).items() if near == 1.0} == set(BY_ID["push_up"].easier)
    assert {one for one, near in steps(Cause.TOO_EASY).items() if near == 1.0} == set(BY_ID["push_up"].harder)


def test_a_distance_written_for_a_run_is_its_time() -> None:
    found = asked(
        "easy_run",
        Setting(House(name="x"), PEOPLE["usual"], CATALOG.material_by_id, PLACES["park"]),
        prescription=Prescription(sets=1, distance_m=5000.0),
    )
    first = found.answers[0]
    assert first.exercise.id == "easy_run"
    assert first.dose.seconds is not None
    assert first.dose.seconds[0] <= 2000 <= first.dose.seconds[1]


def test_warm_ups_and_stretches_stay_among_themselves() -> None:
    for answer in asked("cat_cow").answers:
        assert answer.exercise.family is Family.MOBILITY
    assert all(answer.exercise.family is not Family.MOBILITY for answer in asked("plank").answers)


def test_only_near_patterns_are_considered() -> None:
    found = asked("pull_up")
    near = {Pattern.PULL_OVERHEAD, Pattern.PULL_LEVEL}
    considered = [BY_ID[one.exercise_id] for one in found.left_out] + [answer.exercise for answer in found.answers]
    assert all(not near.isdisjoint(pattern for pattern, _ in one.patterns) for one in considered)


def test_strength_work_is_told_from_single_joint_work() -> None:
    assert carries_over(BY_ID["push_up"])
    assert single_joint(BY_ID["floor_fly"])
    assert not single_joint(BY_ID["plank"])


def test_a_person_is_never_changed_by_a_request() -> None:
    before: Person = FLAT.person
    asked("push_up", cause=Cause.HURTS, spare=frozenset({Demand.KNEELING}))
    assert FLAT.person == before
    assert isinstance(asked("push_up").answers[0], Answer)

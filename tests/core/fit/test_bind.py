"""Rules of binding: distinct things that bear what they must, a load beside them, or every reason why not."""

from __future__ import annotations

import datetime
import itertools
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog.load import load_catalog
from core.exercise.model import Basis, BodyShare, Demand, DoseKind, Exercise, Muscle, Need, Pattern, Posture, Use
from core.fit.bind import bind
from core.fit.model import Binding, Missing
from core.fit.setting import Setting
from core.house.model import Experience, House, Person, Place
from core.loads.ladder import most_kg
from core.quantity import Measured
from core.swap.additions import as_thing
from core.things.affordance import Grade
from core.things.model import OwnCheck, RatingOrigin, Thing
from tests.dipper import (
    CABIN,
    INES,
    TOMAS,
    TOWPATH,
    beam,
    bench,
    bucket,
    carrier,
    coal,
    daypack,
    dipper,
    steps,
    stool,
    tins,
)

CATALOG = load_catalog()
MATERIALS = CATALOG.material_by_id
HOME = [exercise for exercise in CATALOG.exercises if not exercise.needs_gym]


def exercise(*needs: Need, **changes: object) -> Exercise:
    values: dict[str, object] = {
        "id": "made_up",
        "name": "Made up",
        "patterns": ((Pattern.SQUAT, 1.0),),
        "muscles": ((Muscle.QUADS, 1.0), (Muscle.GLUTES, 0.8)),
        "dose": DoseKind.REPS,
        "needs": needs,
        "body": BodyShare(share=0.88, basis=Basis.DERIVED),
        "level": 2,
        "typical": (5.0, 15.0),
    }
    return Exercise(**(values | changes))  # type: ignore[arg-type]  # one valid exercise plus the change under test


def at(place: Place, *things: Thing, person: Person = INES) -> Setting:
    return Setting(House(name="x", places=(place,), things=things), person, MATERIALS, place)


def made(found: Binding | Missing) -> Binding:
    assert isinstance(found, Binding), found
    return found


def missing(found: Binding | Missing) -> Missing:
    assert isinstance(found, Missing), found
    return found


def kind(kind_id: str, **changes: object) -> Thing:
    thing = as_thing(CATALOG.kind_by_id[kind_id])
    return replace(thing, id=kind_id, **changes)  # type: ignore[arg-type]  # fields of a thing


STEP, SIT = Need(uses=(Use.STEP,), bears=1.0), Need(uses=(Use.SIT,), bears=1.0)
HUG = Need(uses=(Use.HUG,), mass_share=(0.02, 0.4))


def test_one_thing_never_meets_two_needs() -> None:
    both = exercise(Need(uses=(Use.SIT,)), Need(uses=(Use.FEET,)))
    assert "it needs 2 things at once" in missing(bind(both, at(CABIN, bench()))).why[0]
    two = made(bind(both, at(CABIN, bench(), kind("dining_chair"))))
    assert len(set(two.thing_ids)) == 2


def test_two_pieces_of_one_thing_meet_two_needs() -> None:
    both = exercise(Need(uses=(Use.SIT,)), Need(uses=(Use.FEET,)))
    chairs = replace(kind("dining_chair"), count=2)
    assert made(bind(both, at(CABIN, chairs))).thing_ids == ("dining_chair",)


def test_a_thing_stood_on_is_not_lifted_too() -> None:
    steps_up = exercise(STEP, replace(HUG, mass_share=(0.02, 0.9)))
    facts = replace(CATALOG.kind_by_id["concrete_block"].facts, length_cm=45.0, width_cm=25.0)
    checked = OwnCheck(date=datetime.date(2026, 11, 3), took_kg=150.0)
    block = kind("concrete_block", facts=facts, own_check=checked)
    assert "only load for it is needed to stand" in missing(bind(steps_up, at(TOWPATH, block))).why[0]
    with_tins = made(bind(steps_up, at(TOWPATH, block, kind("tin_catering"))))
    assert with_tins.fixtures[0].thing_id == "concrete_block"
    assert with_tins.load is not None
    assert with_tins.load.recipe.thing_ids == ("tin_catering",)


def test_a_pair_asks_for_two_alike() -> None:
    pair = exercise(Need(uses=(Use.PAIR,), mass_share=(0.02, 0.9)))
    one = missing(bind(pair, at(CABIN, carrier(1), kind("dumbbell"))))
    assert one.lacking == (Use.PAIR,)
    two = made(bind(pair, at(CABIN, carrier(2))))
    assert two.load is not None
    assert two.load.recipe.parts[0].count == 2


def test_two_alike_overhead_come_from_one_sort() -> None:
    overhead = exercise(Need(uses=(Use.OVERHEAD,), count=2, mass_share=(0.01, 0.5)), reach_over_head=True)
    assert isinstance(bind(overhead, at(TOWPATH, tins(1))), Missing)
    both = made(bind(overhead, at(TOWPATH, tins(2))))
    assert both.load is not None
    assert both.load_kg == pytest.approx(0.94)


def test_a_rating_counts_body_and_load_with_its_doubt() -> None:
    box = replace(kind("step_stool"), facts=replace(kind("step_stool").facts, rating_kg=75.0))
    loaded = exercise(STEP, replace(HUG, mass_share=(0.02, 0.6)))
    bound = made(bind(loaded, at(TOWPATH, box, carrier()), wanted_kg=30.0, proven=True))
    assert bound.load is not None
    assert INES.body_mass_kg + most_kg(bound.load) <= 75.0
    heavier = missing(bind(loaded, at(TOWPATH, box, carrier(), person=TOMAS)))
    assert any("rated 75 kg" in why for why in heavier.why)


def test_a_check_of_ones_own_holds_as_far_as_it_went() -> None:
    checked = OwnCheck(date=datetime.date(2026, 11, 3), took_kg=90.0)
    chair = kind("dining_chair", own_check=checked)
    assert made(bind(exercise(STEP), at(TOWPATH, chair, person=TOMAS))).fixtures[0].thing_id == "dining_chair"
    heavy = replace(TOMAS, body_mass_kg=95.0)
    assert "took 90 kg" in missing(bind(exercise(STEP), at(TOWPATH, chair, person=heavy))).why[0]


@pytest.mark.parametrize("kind_id", ["folding_stool", "folding_chair", "office_chair", "glass_table", "sofa", "stool"])
def test_nothing_folding_rolling_glass_soft_or_unrated_is_stood_on(kind_id: str) -> None:
    checked = kind(kind_id, own_check=OwnCheck(date=datetime.date(2026, 11, 3), took_kg=150.0))
    found = bind(exercise(STEP), at(CABIN, kind(kind_id)))
    assert isinstance(found, Missing)
    if kind_id != "stool":  # a plain stool may be checked, what folds, rolls, breaks or gives way may not
        assert isinstance(bind(exercise(STEP), at(CABIN, checked)), Missing)


def test_an_ordinary_chair_stays_good_to_sit_and_lean_on() -> None:
    chair = kind("dining_chair")
    assert made(bind(exercise(SIT), at(CABIN, chair))).fixtures[0].grade is Grade.GOOD
    assert isinstance(bind(exercise(Need(uses=(Use.HANDS,), bears=0.64)), at(CABIN, chair)), Binding)


@pytest.mark.parametrize("thing", [bucket(), kind("glass_jar"), kind("fuel_can"), kind("coal_bag")], ids=lambda t: t.id)
def test_nothing_open_glass_dusty_or_once_full_of_chemicals_goes_overhead(thing: Thing) -> None:
    overhead = exercise(Need(uses=(Use.OVERHEAD,), mass_share=(0.0, 0.9)), reach_over_head=True)
    assert isinstance(bind(overhead, at(TOWPATH, thing)), Missing)


PULLOVER, FLOOR_PRESS = CATALOG.exercise_by_id["floor_pullover"], CATALOG.exercise_by_id["bag_floor_press"]


@pytest.mark.parametrize("lying", [PULLOVER, FLOOR_PRESS], ids=lambda one: str(one.id))
@pytest.mark.parametrize("thing", [bucket(), coal()], ids=lambda thing: str(thing.id))
def test_nothing_open_or_dusty_is_held_above_the_face(lying: Exercise, thing: Thing) -> None:
    strong = replace(TOMAS, experience=Experience.TRAINED)
    why = missing(bind(lying, at(TOWPATH, thing, person=strong))).why
    assert any("above your face" in one for one in why)
    assert isinstance(bind(lying, at(TOWPATH, thing, carrier(1), person=strong)), Binding)


def test_what_lies_on_the_hips_or_stands_upright_may_be_dusty() -> None:
    here = at(TOWPATH, coal(), person=TOMAS)
    for exercise_id in ("loaded_bridge", "hug_squat"):
        assert made(bind(CATALOG.exercise_by_id[exercise_id], here)).load is not None


@pytest.mark.parametrize("exercise_id", ["standing_press", "floor_pullover", "bag_floor_press"])
def test_nothing_dusty_is_packed_for_overhead_or_above_the_face(exercise_id: str) -> None:
    here = at(TOWPATH, daypack(), coal(), tins(6), person=replace(TOMAS, experience=Experience.TRAINED))
    for wanted_kg in (2.0, 5.0, 9.0, 12.0):
        found = bind(CATALOG.exercise_by_id[exercise_id], here, wanted_kg=wanted_kg)
        if isinstance(found, Binding) and found.load is not None:
            assert "coal" not in found.load.recipe.thing_ids
    on_the_back = made(bind(CATALOG.exercise_by_id["pack_squat"], here, wanted_kg=12.0))
    assert "coal" in on_the_back.thing_ids


def test_one_hand_presses_overhead_only_what_it_holds_well() -> None:
    press = CATALOG.exercise_by_id["one_hand_press"]
    sack = replace(kind("training_sandbag"), facts=replace(kind("training_sandbag").facts, mass=Measured(4.0, 0.1)))
    strong = replace(TOMAS, experience=Experience.TRAINED)
    assert isinstance(bind(CATALOG.exercise_by_id["standing_press"], at(TOWPATH, sack, person=strong)), Binding)
    assert "held well overhead in one hand" in missing(bind(press, at(TOWPATH, sack, person=strong))).why[0]
    assert isinstance(bind(press, at(TOWPATH, kind("dumbbell_light"), person=strong)), Binding)


def test_hanging_takes_a_rating_for_all_of_you_even_where_a_foot_helps() -> None:
    helped = exercise(Need(uses=(Use.HANG_BAR,), bears=0.5), demands=frozenset({Demand.HANGING}))
    bar = kind("pull_up_bar_wall")
    assert isinstance(bind(helped, at(CABIN, bar)), Binding)
    heavy = replace(INES, body_mass_kg=125.0)
    assert "puts 125 kg on it" in missing(bind(helped, at(CABIN, bar, person=heavy))).why[0]
    unrated = kind("tree_branch")
    assert isinstance(bind(helped, at(TOWPATH, unrated)), Missing)


def test_the_ceiling_counts_the_reach_and_sitting_lowers_it() -> None:
    press = exercise(Need(uses=(Use.OVERHEAD,), mass_share=(0.0, 0.3)), reach_over_head=True)
    why = missing(bind(press, at(CABIN, tins()))).why
    assert any("1.93 m high" in one for one in why)
    assert isinstance(bind(replace(press, posture=Posture.SEATED), at(CABIN, tins())), Binding)
    assert isinstance(bind(press, at(TOWPATH, tins())), Binding)


def test_a_step_may_be_too_high_under_a_ceiling() -> None:
    low = replace(CABIN, ceiling_cm=200.0)
    box = kind("training_box")
    assert "too much under the ceiling" in missing(bind(exercise(STEP), at(low, box))).why[0]


@pytest.mark.parametrize(
    ("changes", "place", "words"),
    [
        ({"outdoors_only": True}, CABIN, "done outdoors"),
        ({"floor_m2": 9.0}, CABIN, "9.0 m² of clear floor"),
        ({"skip_when_wet": True}, replace(TOWPATH, wet=True), "not safe on a wet surface"),
    ],
)
def test_the_place_itself_may_rule_it_out(changes: dict[str, object], place: Place, words: str) -> None:
    assert words in missing(bind(exercise(**changes), at(place))).why[0]


def test_everything_missing_is_named_at_once() -> None:
    much = exercise(STEP, Need(uses=(Use.HANG_BAR,), bears=1.0), HUG, outdoors_only=True)
    found = missing(bind(much, at(CABIN)))
    assert len(found.why) == 4
    assert found.lacking == (Use.STEP, Use.HANG_BAR, Use.HUG)


def test_a_height_that_does_not_fit_is_told_with_what_is_needed() -> None:
    low_seat = exercise(Need(uses=(Use.SIT,), height_cm=(50.0, 60.0)))
    assert missing(bind(low_seat, at(CABIN, bench()))).why == ("Cabin bench is 45 cm high, it needs 50 to 60 cm",)


def test_a_flight_serves_at_the_height_of_one_two_or_three_steps() -> None:
    raised = exercise(Need(uses=(Use.HANDS,), height_cm=(35.0, 45.0)))
    assert made(bind(raised, at(TOWPATH, steps()))).height_cm == 38.0


def test_an_optional_load_is_left_where_none_is_wanted() -> None:
    optional = exercise(replace(HUG, optional=True))
    assert made(bind(optional, at(CABIN, carrier()), wanted_kg=0.0)).load is None
    assert made(bind(optional, at(CABIN, carrier()), wanted_kg=12.0)).load_kg == pytest.approx(12.0, abs=0.5)


def test_the_thing_to_use_is_taken_wherever_it_serves() -> None:
    here = at(CABIN, carrier(), bench(), kind("dining_chair"))
    seat = exercise(SIT)
    first = made(bind(seat, here)).fixtures[0].thing_id
    other = {"bench": "dining_chair", "dining_chair": "bench"}[first]
    assert made(bind(seat, here, using=other)).fixtures[0].thing_id == other
    assert made(bind(seat, here, using="carrier")).fixtures[0].thing_id == first


def test_cautions_of_movement_and_things_come_along_once() -> None:
    careful = exercise(SIT, cautions=("Mind the step.", "Mind the step."))
    bound = made(bind(careful, at(CABIN, replace(bench(), cautions=("It is hard.",)))))
    assert bound.cautions == ("Mind the step.", "It is hard.")


@given(st.sampled_from(HOME), st.integers(0, 5))
def test_the_order_in_which_things_are_listed_changes_nothing(one: Exercise, turn: int) -> None:
    house = dipper()
    turned = replace(house, things=(*house.things[turn:], *house.things[:turn]))
    for place in house.places:
        first = bind(one, Setting(house, INES, MATERIALS, place))
        assert first == bind(one, Setting(turned, INES, MATERIALS, place))


def test_no_binding_uses_a_piece_twice() -> None:
    for place, one in itertools.product((CABIN, TOWPATH), HOME):
        found = bind(one, Setting(dipper(), TOMAS, MATERIALS, place))
        if isinstance(found, Missing):
            continue
        held = [held.thing_id for held in found.fixtures if held.thing_id]
        loads = set(found.load.recipe.thing_ids) if found.load is not None else set()
        assert not loads & set(held), one.id


def test_the_beam_and_the_stool_are_what_they_are() -> None:
    assert beam().facts.rating_origin is RatingOrigin.LABEL
    assert isinstance(bind(CATALOG.exercise_by_id["step_up"], at(CABIN, stool())), Missing)

"""What each command changes, what it calls that, and what it refuses. Household invented."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.errors import InputError
from core.house.model import House, Person, Place
from core.house.wishes import DayWish, Pin, WeekWishes
from core.store.changes import HouseFacts
from core.store.commands import (
    AddOwn,
    AddPerson,
    AddPlace,
    AddReading,
    AddSession,
    AddTest,
    AddThing,
    ChangeHouse,
    ChangeOwn,
    ChangePerson,
    ChangePlace,
    ChangeSession,
    ChangeSettings,
    ChangeThing,
    Command,
    ForgetBlock,
    ForgetWeek,
    LoadHouse,
    RemoveOwn,
    RemovePerson,
    RemovePlace,
    RemoveReading,
    RemoveSession,
    RemoveTest,
    RemoveThing,
    SaveBlock,
    SavePlan,
    SaveWeek,
    SetFill,
    SetFills,
    SetOwnCheck,
    SetPins,
    SetWishes,
)
from core.store.commands.base import free_id
from core.store.record import Record
from core.store.values import ChangeSet, SavedBlock, Settings, Theme, Units
from core.things.model import Fill, OwnCheck
from tests.core.store.examples import (
    BLOCK,
    CABIN,
    COAL_BAG,
    DIPPER,
    FENDER,
    INES,
    LOCK_STEPS,
    MONDAY,
    READING,
    SESSION,
    STOOL,
    TEST,
    TOMAS,
    TOWPATH,
    WATER_CARRIER,
    WEEK,
    WISHES,
)

KETTLE = replace(COAL_BAG, id="kettle", name="Kettle")


@pytest.mark.parametrize(
    ("command", "kinds", "sentence"),
    [
        (AddThing(KETTLE), {"things"}, "Added Kettle"),
        (ChangeThing(replace(COAL_BAG, count=3)), {"things"}, "Changed Coal bag"),
        (RemoveThing("coal_bag"), {"things"}, "Removed Coal bag"),
        (SetFill("carrier", None), {"things"}, "Emptied Water carrier"),
        (SetFill("carrier", Fill(material_id="sand_dry", volume_l=3)), {"things"}, "Changed what is in Water carrier"),
        (
            SetFills((("carrier", Fill(material_id="water", volume_l=3)), ("coal_bag", None))),
            {"things"},
            "Changed what is in Water carrier and Coal bag",
        ),
        (AddReading("carrier", READING), {"things"}, "Weighed Water carrier"),
        (RemoveReading("carrier", 0), {"things"}, "Removed a reading of Water carrier"),
        (SetOwnCheck("stool", OwnCheck(date=MONDAY, took_kg=90)), {"things"}, "Checked Stool"),
        (SetOwnCheck("lock_steps", None), {"things"}, "Withdrew the check of Lock steps"),
        (AddOwn(replace(FENDER, id="own_tyre", name="Tyre")), {"catalog"}, "Added Tyre"),
        (ChangeOwn(replace(FENDER, name="Fender")), {"catalog"}, "Changed Fender"),
        (RemoveOwn("own_lock_walk"), {"catalog"}, "Removed Lock walk"),
        (AddPlace(Place(id="quay", name="Quay")), {"places"}, "Added Quay"),
        (ChangePlace(replace(CABIN, wet=True)), {"places"}, "Changed Cabin"),
        (AddPerson(replace(TOMAS, id="guest", name="Guest")), {"people"}, "Added Guest"),
        (ChangePerson(replace(INES, body_mass_kg=67)), {"people"}, "Changed Ines"),
        (RemovePerson("tomas"), {"people"}, "Removed Tomas"),
        (SetWishes("tomas", WISHES), {"week"}, "Changed the wishes of Tomas"),
        (SetPins("tomas", (Pin(weekday=2, kind="rest"),)), {"week"}, "Changed the pins of Tomas"),
        (SaveWeek("tomas", WEEK), {"week"}, "Planned the week of Tomas"),
        (SaveWeek("ines", replace(WEEK, version=2)), {"week"}, "Changed the week of Ines"),
        (ForgetWeek("ines"), {"week"}, "Removed the week of Ines"),
        (SaveBlock("tomas", BLOCK), {"week"}, "Planned the block of Tomas"),
        (SaveBlock("ines", replace(BLOCK, version=2)), {"week"}, "Changed the block of Ines"),
        (SaveBlock("ines", replace(BLOCK, version=2), "Logged Tuesday of Ines"), {"week"}, "Logged Tuesday of Ines"),
        (ForgetBlock("ines"), {"week"}, "Removed the block of Ines"),
        (SavePlan("tomas", WEEK, BLOCK), {"week"}, "Planned the week of Tomas"),
        (SavePlan("ines", replace(WEEK, version=2), BLOCK, WISHES, "Moved Tuesday"), {"week"}, "Moved Tuesday"),
        (ChangeHouse(HouseFacts(name="Dipper", fills=("water",), cup_l=0.25)), {"house", "things"}, "Changed Dipper"),
        (ChangeSettings(Settings(units=Units.US, theme=Theme.DARK)), {"settings"}, "Changed the settings"),
        (ChangeSession(SESSION, replace(SESSION, effort=8)), {"log"}, "Changed the session of Ines on 2026-05-04"),
        (RemoveSession(SESSION), {"log"}, "Removed the session of Ines on 2026-05-04"),
        (RemoveTest(TEST), {"log"}, "Removed a test of Ines on 2026-05-04"),
        (AddTest(replace(TEST, id="t2"), ()), {"log", "people"}, "Logged a test of Ines on 2026-05-04"),
    ],
)
def test_a_command_says_what_it_changed_and_one_undo_takes_it_back(
    dipper: Record, command: Command, kinds: set[str], sentence: str
) -> None:
    before = dipper.contents()
    assert dipper.do(command) == ChangeSet(kinds=frozenset(kinds), sentence=sentence)  # type: ignore[arg-type]  # words
    after = dipper.contents()
    assert after != before
    assert dipper.undo_text == sentence
    assert dipper.undo().kinds == kinds
    assert dipper.contents() == before
    assert dipper.redo().sentence == sentence
    assert dipper.contents() == after


def test_a_movement_that_goes_leaves_no_pin_ban_week_or_block_that_names_it(dipper: Record) -> None:
    gone, stays = "own_lock_walk", "plank"
    plan = f'{{"exercise":"{gone}"}}'
    pins = (Pin(weekday=1, exercise_id=gone), Pin(weekday=2, exercise_id=stays))
    dipper.do(SetWishes("ines", replace(WISHES, pins=pins, bans=(gone, stays))))
    dipper.do(SaveWeek("ines", replace(WEEK, plan=plan)))
    dipper.do(SaveBlock("ines", SavedBlock(starts=MONDAY, version=1, plan=plan)))
    dipper.do(SaveWeek("tomas", WEEK))
    before = dipper.contents()
    dipper.do(RemoveOwn(gone))
    assert dipper.wishes("ines").pins == (Pin(weekday=2, exercise_id=stays),)
    assert dipper.wishes("ines").bans == (stays,)
    assert (dipper.week("ines"), dipper.state().blocks.get("ines"), dipper.week("tomas")) == (None, None, WEEK)
    dipper.undo()
    assert dipper.contents() == before


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (AddThing(COAL_BAG), "“coal_bag” is already the id of a thing"),
        (AddThing(replace(KETTLE, place_ids=("moon",))), "“moon” is no place here"),
        (AddThing(replace(KETTLE, name="")), "must be 1 to 120 characters"),
        (AddOwn(FENDER), "“own_rope_fender” is already the id of an own entry here"),
        (ChangeOwn(replace(FENDER, id="own_tyre")), "“own_tyre” is no own entry here"),
        (ChangeOwn(replace(FENDER, id="own_lock_walk")), "“Lock walk” is a movement and can't become a kind of thing"),
        (RemoveOwn("own_tyre"), "“own_tyre” is no own entry here; choose one of: own_lock_walk, own_rope_fender"),
        (ChangeThing(KETTLE), "“kettle” is no thing here"),
        (ChangeThing(replace(COAL_BAG, place_ids=("moon",))), "“moon” is no place here"),
        (RemoveThing("kettle"), "“kettle” is no thing here"),
        (SetFill("kettle", None), "“kettle” is no thing here"),
        (SetFills((("carrier", None), ("kettle", None))), "“kettle” is no thing here"),
        (SetFills(()), "“nothing” is poured for this load"),
        (SetFill("carrier", Fill(material_id="water", volume_l=-1)), "“-1” is not from 0"),
        (RemoveReading("carrier", 1), "“1” is no reading of Water carrier, which has 1"),
        (RemoveReading("carrier", -1), "“-1” is no reading"),
        (AddPlace(CABIN), "“cabin” is already the id of a place"),
        (ChangePlace(Place(id="quay", name="Quay")), "“quay” is no place here"),
        (RemovePlace("quay"), "“quay” is no place here"),
        (AddPerson(INES), "“ines” is already the id of a person"),
        (ChangePerson(replace(INES, id="nobody")), "“nobody” is no person here"),
        (RemovePerson("nobody"), "“nobody” is no person here"),
        (SetWishes("nobody", WISHES), "“nobody” is no person here"),
        (SetWishes("ines", WeekWishes(days=(DayWish(weekday=0, minutes=30, place_id="moon"),))), "“moon” is no place"),
        (SaveWeek("nobody", WEEK), "“nobody” is no person here"),
        (SaveWeek("ines", replace(WEEK, plan="[]")), "is not a plan"),
        (ForgetWeek("tomas"), "“Tomas” has no planned week"),
        (SaveBlock("nobody", BLOCK), "“nobody” is no person here"),
        (SavePlan("nobody", WEEK, BLOCK), "“nobody” is no person here"),
        (SaveBlock("ines", replace(BLOCK, plan="[]")), "is not a plan"),
        (ForgetBlock("tomas"), "“Tomas” has no planned block"),
        (ChangeSettings(Settings(person_id="nobody")), "“nobody” is no person here"),
        (ChangeHouse(HouseFacts(name="")), "must be 1 to 120 characters"),
        (AddSession(replace(SESSION, id="s2", person_id="nobody")), "“nobody” is no person here"),
        (ChangeSession(SESSION, replace(SESSION, id="s2")), "is not the session s1"),
        (LoadHouse(replace(DIPPER, places=())), "“towpath” is named by Lock steps of Dipper"),
        (LoadHouse(replace(DIPPER, things=(STOOL, STOOL))), "“stool” is the id of two entries"),
        (LoadHouse(DIPPER, wishes=(("nobody", WISHES),)), "“nobody” is named by the wishes"),
    ],
)
def test_a_command_that_cannot_be_done_says_why_and_changes_nothing(
    dipper: Record, command: Command, words: str
) -> None:
    before = dipper.contents()
    with pytest.raises(InputError, match=words):
        dipper.do(command)
    assert dipper.contents() == before
    assert dipper.undo_text == "Logged a test of Ines on 2026-05-04"


def test_the_first_person_is_the_chosen_one(record: Record) -> None:
    record.do(AddPerson(TOMAS))
    record.do(AddPerson(INES))
    assert record.settings().person_id == "tomas"


def test_when_the_chosen_person_goes_the_next_is_chosen_and_wishes_and_week_go_along(dipper: Record) -> None:
    assert dipper.settings().person_id == "ines"
    assert dipper.do(RemovePerson("ines")).kinds == {"people", "week", "settings"}
    assert dipper.settings().person_id == "tomas"
    assert dipper.wishes("ines") == WeekWishes()
    assert dipper.week("ines") is None
    assert dipper.sessions("ines") == (SESSION,)
    dipper.undo()
    assert (dipper.settings().person_id, dipper.wishes(), dipper.week()) == ("ines", WISHES, WEEK)


def test_a_place_goes_with_what_is_fixed_there_and_what_can_be_carried_stays(dipper: Record) -> None:
    changed = dipper.do(RemovePlace("towpath"))
    assert changed.sentence == "Removed Towpath with what is fixed there: Lock steps"
    assert changed.kinds == {"places", "things", "week"}
    assert "lock_steps" not in dipper.state().things
    assert dipper.house().thing("stool").place_ids == ("cabin",)
    assert [day.place_id for day in dipper.wishes().days] == ["cabin", None, None]


def test_new_things_come_last_and_a_thing_taken_back_stands_where_it_stood(dipper: Record) -> None:
    order = [thing.id for thing in dipper.house().things]
    dipper.do(AddThing(KETTLE))
    assert [thing.id for thing in dipper.house().things] == [*order, "kettle"]
    dipper.do(RemoveThing(order[1]))
    dipper.do(ChangeThing(replace(WATER_CARRIER, count=5)))
    dipper.undo()
    dipper.undo()
    dipper.undo()
    assert [thing.id for thing in dipper.house().things] == order


def test_loading_a_house_in_place_of_all_leaves_the_log_and_one_undo_brings_all_back(dipper: Record) -> None:
    before = dipper.contents()
    heron = House(
        name="Heron", places=(TOWPATH,), things=(STOOL_ON_TOWPATH, KETTLE), people=(TOMAS,), fills=("sand_dry",)
    )
    dipper.do(LoadHouse(heron, replace_all=True))
    assert dipper.house() == heron
    assert dipper.settings().person_id == "tomas"
    assert dipper.sessions() == (SESSION,)
    dipper.undo()
    assert dipper.contents() == before


STOOL_ON_TOWPATH = replace(STOOL, place_ids=("towpath",))


def test_loading_a_house_beside_adds_to_it_and_replaces_equal_ids(dipper: Record) -> None:
    guest = Person(id="guest", name="Guest", body_mass_kg=70, height_cm=170)
    heron = House(
        name="Heron",
        places=(TOWPATH,),
        things=(KETTLE, STOOL_ON_TOWPATH),
        people=(guest,),
        fills=("water", "sand_dry"),
        cup_l=0.2,
    )
    dipper.do(LoadHouse(heron, wishes=(("guest", WeekWishes()),)))
    house = dipper.house()
    assert (house.name, house.cup_l, house.fills) == ("Dipper", 0.3, ("water", "coal", "sand_dry"))
    assert house.things == (WATER_CARRIER, COAL_BAG, LOCK_STEPS, STOOL_ON_TOWPATH, KETTLE)
    assert house.people == (INES, TOMAS, guest)
    assert dipper.settings().person_id == "ines"


def test_a_session_that_changed_meanwhile_is_not_overwritten(dipper: Record) -> None:
    from core.errors import StoreError

    stale = replace(SESSION, effort=1)
    with pytest.raises(StoreError, match="can no longer be taken back or repeated"):
        dipper.do(RemoveSession(stale))
    assert dipper.sessions() == (SESSION,)


@pytest.mark.parametrize(
    ("name", "taken", "wanted"),
    [
        ("Coal bag", (), "coal_bag"),
        ("Coal bag", ("coal_bag",), "coal_bag_2"),
        ("Coal bag", ("coal_bag", "coal_bag_2"), "coal_bag_3"),
        ("Kübel, 10 L", (), "kubel_10_l"),
        ("水桶", (), "item"),
        ("x" * 200, (), "x" * 60),
    ],
)
def test_a_free_id_is_the_name_in_plain_letters(name: str, taken: tuple[str, ...], wanted: str) -> None:
    assert free_id(name, taken) == wanted

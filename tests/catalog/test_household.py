"""Household files: what they say is read, what they get wrong is named all at once."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import pytest

from catalog.errors import CatalogFaults
from catalog.household.ids import ids_for
from catalog.household.load import HouseholdFile, load_household, read_household
from catalog.household.schema import HouseholdForm, form_schema
from catalog.load import load_catalog
from core.errors import InputError
from core.exercise.model import Demand, Pattern
from core.house.model import Experience, QuietHours
from core.house.wishes import DayWish, Goals, Pin, PinnedDose, WeekWishes
from core.mass.model import CupsLevel, Packing, ScaleKind, ShareLevel
from core.quantity import Measured, Origin
from core.things.model import Fill, Hazard, OwnCheck, RatingOrigin

CATALOG = load_catalog()
DEMO = Path(__file__).parents[2] / "resources" / "demo" / "dipper.toml"

SHORT = """
fillmark = 1
things = ["2 water carriers, 25 L", "6 bean tins", "daypack 28 L", "lock steps, 7 at 19 cm", "folding stool"]
[[people]]
name = "Ines"
body_mass = "68 kg"
height = "171 cm"
[week]
days = { tue = "50 min", fri = "30 min", sat = "50 min", sun = "60 min" }
"""


def read(text: str) -> HouseholdFile:
    return read_household(text, "home.toml", CATALOG)


def sentences(text: str) -> tuple[str, ...]:
    with pytest.raises(CatalogFaults) as refused:
        read(text)
    return refused.value.sentences


def things(words: str) -> str:
    return f"fillmark = 1\nthings = [{words}]\n"


def test_the_shortest_file_is_read() -> None:
    found = read(SHORT)
    assert [(thing.id, thing.count) for thing in found.house.things] == [
        ("water-carrier", 2),
        ("bean-tin", 6),
        ("daypack-28-l", 1),
        ("lock-steps", 1),
        ("folding-stool", 1),
    ]
    assert found.house.people[0].experience is Experience.NEW
    assert found.wishes["ines"].days[0] == DayWish(weekday=1, minutes=50)
    assert not found.invented


def test_a_file_may_be_empty_but_for_its_version() -> None:
    found = read("fillmark = 1")
    assert (found.house.things, found.house.people, found.house.places) == ((), (), ())
    assert found.house.fills == ("water",)
    assert found.wishes == {}


def test_the_demo_says_that_it_is_invented() -> None:
    found = load_household(DEMO, CATALOG)
    assert found.invented
    assert [person.name for person in found.house.people] == ["Ines", "Tomas"]
    assert found.house.places[1].quiet == QuietHours(start=datetime.time(20), end=datetime.time(7))
    beam = found.house.thing("stern-beam")
    assert (beam.facts.surface_cm, beam.facts.rating_kg, beam.place_ids) == (118.0, 150.0, ("towpath",))


def test_corrections_change_the_facts() -> None:
    table = """{ is = "chair", name = "Galley chair", mass = "5 kg", surface = "46 cm", rating = "120 kg",
        hazards = ["tips"], check = { date = 2026-05-04, took = "90 kg" } }"""
    (chair,) = read(things(table.replace("\n", ""))).house.things
    assert chair.name == "Galley chair"
    assert chair.facts.mass == Measured.rectangular(5.0, 0.1, Origin.MEASURED)
    assert chair.facts.surface_cm == 46.0
    assert (chair.facts.rating_kg, chair.facts.rating_origin) == (120.0, RatingOrigin.LABEL)
    assert chair.facts.hazards == {Hazard.TIPS}
    assert chair.own_check == OwnCheck(date=datetime.date(2026, 5, 4), took_kg=90.0)


def test_weighings_and_what_is_in_it_are_read() -> None:
    table = """{ is = "5 L bottle", fills = ["water", "dry sand"], mass = "150 g",
        filled = { material = "dry sand", volume = "3 L", packing = "settled" }, weighed = [
        { reading = "0.152 kg", fill = "empty", date = 2026-05-04 },
        { scale = "bathroom", reading = "72.9 kg", without = "68 kg", fill = "19 cups" } ] }"""
    (bottle,) = read(things(table.replace("\n", ""))).house.things
    assert bottle.fills == ("water", "sand_dry")
    assert bottle.facts.container is not None
    assert bottle.facts.container.tare_kg.value == 0.15
    assert bottle.fill == Fill(material_id="sand_dry", volume_l=3.0, packing=Packing.SETTLED)
    empty, cups = bottle.readings
    assert (empty.kind, empty.reading_kg, empty.at_level) == (ScaleKind.KITCHEN, 0.152, ShareLevel(share=0.0))
    assert (cups.without_kg, cups.at_level) == (68.0, CupsLevel(count=19.0, cup_l=0.25))


def test_a_person_has_bests_and_a_week_of_their_own() -> None:
    found = read(
        """
fillmark = 1
[[people]]
name = "Ines"
body_mass = "10 st 10 lb"
height = "5 ft 7 in"
spares = ["deep_knee_bend"]
best = [{ pattern = "squat", one_rep = "60 kg", plus_minus = "6 kg", exercise = "goblet squat" }]
[people.week]
days = { mon = { minutes = "1 h", start = 18:30:00 } }
bans = ["burpee"]
pins = [
    { day = "mon", exercise = "push-up", sets = 4, reps = [4, 6], rest = ["30 s", "45 s"] },
    { day = "tue", kind = "intervals", sets = 8, work = "20 s", rest = "10 s" },
    { day = "wed", exercise = "plank", sets = 3, work = "1 min" },
    { day = "thu", exercise = "push-up", sets = 3, reps = 12 },
    { day = "sun", kind = "rest" },
]
goals = { strength = 1, run_walk = 0 }
[[people]]
name = "Tomas"
body_mass = "84 kg"
height = "183 cm"
[week]
days = { sat = "40 min" }
"""
    )
    ines = found.house.people[0]
    assert ines.body_mass_kg == pytest.approx(68.04, abs=0.01)
    assert ines.spares == {Demand.DEEP_KNEE_BEND}
    assert (ines.capacities[0].pattern, ines.capacities[0].one_rep_kg) == (Pattern.SQUAT, Measured(60.0, 3.0))
    assert ines.capacities[0].exercise_id == "goblet_squat"
    own = found.wishes["ines"]
    assert own.days == (DayWish(weekday=0, minutes=60, start=datetime.time(18, 30)),)
    assert own.pins == (
        Pin(weekday=0, exercise_id="push_up", dose=PinnedDose(sets=4, reps=(4, 6), rest_s=(30, 45))),
        Pin(weekday=1, kind="intervals", dose=PinnedDose(sets=8, work_s=20, rest_s=(10, 10))),
        Pin(weekday=2, exercise_id="plank", dose=PinnedDose(sets=3, work_s=60)),
        Pin(weekday=3, exercise_id="push_up", dose=PinnedDose(sets=3, reps=(12, 12))),
        Pin(weekday=6, kind="rest"),
    )
    assert own.goals == Goals(strength=1, run_walk=0)
    assert found.wishes["tomas"] == WeekWishes(days=(DayWish(weekday=5, minutes=40),))


FAULTS = {
    "things = ['zorp']": "things number 1 (zorp): “zorp” is not a thing known here for sure; say which, like ",
    "things = ['5 L bottle, 9000 L']": "is far from the usual size",
    "things = ['-3 bottles']": "is no number of things",
    "things = [{ is = 'chair', colour = 'red' }]": "field colour: “colour” is not known here; remove it, ",
    "things = [{ name = 'Chair' }]": "things number 1 (Chair), field is: “is” is missing; say what the thing is",
    "things = [{ is = 'chair', mass = '5 L' }]": "field mass: “5 L” is a volume, not a mass",
    "things = [{ is = 'chair', surface = '9 m' }]": "field surface: “900 cm” is no usable height (3 to 350 cm)",
    "things = [{ is = 'chair', places = ['Attic'] }]": "“Attic” is no place of this household; list it in places",
    "things = [{ is = 'chair', hazards = ['lava'] }]": "field hazards 1: “lava” is refused",
    "things = [{ is = '2 chairs, 3 books' }]": "names more than one thing; write a table for each",
    "things = [{ is = '5 L bottle', fills = ['petrol'] }]": "field fills: “petrol” is not a fill",
    "things = [{ is = '5 L bottle', filled = { volume = '50 L' } }]": "“50 L” is more than it holds to the brim",
    "things = [{ is = 'chair', filled = { volume = '1 L' } }]": "“Chair” is nothing that can be filled",
    "things = [{ is = '5 L bottle', weighed = [{ reading = '5 kg' }] }]": "does not say how full it was",
    "things = [{ is = 'chair', weighed = [{ reading = '5 kg', fill = 'full' }] }]": "this thing can't be filled",
    "things = [{ is = 'chair', weighed = [{ scale = 'bathroom', reading = '5 kg' }] }]": "a difference needs two",
    "things = [{ is = 'chair', id = 'a' }, { is = 'book', id = 'a' }]": "field id: “a” is used twice",
    "things = [{ exact = { is = 'thing' } }]": "field exact",
    "things = [{ exact = { is = 'thing' }, name = 'x' }]": "“exact” stands for everything but the id",
    "[[people]]\nname = 'Ines'\nbody_mass = '20 kg'\nheight = '171 cm'": "people number 1 (Ines), field body_mass, "
    "height: “20 kg” is not a body mass this program can plan for (30 to 250 kg)",
    "[[people]]\nname = 'Ines'": "field body_mass: “body_mass” is missing; add it.",
    "[[people]]\nname = ''\nbody_mass = '68 kg'\nheight = '171 cm'": "people number 1, field name",
    "[[people]]\nname = \"a\\u0007b\"\nbody_mass = '68 kg'\nheight = '171 cm'": "holds characters that cannot be seen",
    f"[[people]]\nname = '{'x' * 10_000}'\nbody_mass = '68 kg'\nheight = '171 cm'": "make it shorter",
    "[[places]]\nname = 'Cabin'\n[[places]]\nname = 'cabin'": "“cabin” is there twice",
    "[[places]]\nname = 'Cabin'\nceiling = '19 m 3 km'": "field ceiling",
    "[[places]]\nname = 'Cabin'\nceiling = '2 cm'": "is no height of a ceiling",
    "[[places]]\nname = 'Cabin'\nfloor_m2 = inf": "field floor_m2",
    "[[places]]\nname = 'Cabin'\nquiet = { from = '20:00Z', to = '07:00' }": "has a zone",
    "[week]\ndays = { tue = '0 min' }": "week, field days.tue: “0 min” is no session length this program plans for",
    "[week]\ndays = { tuesday = '50 min' }": "week, field days.tuesday",
    "[week]\ndays = { tue = { minutes = '50 min', place = 'Attic' } }": "field days.tue: “Attic” is no place",
    "[week]\nbans = ['zzzzzz']": "week, field bans: “zzzzzz” is no movement in the catalog",
    "[week]\npins = [{ day = 'tue', exercise = 'xqxqxq' }]": "field pins 1: “xqxqxq” is no movement in the catalog",
    "[week]\npins = [{ day = 'tue', kind = 'party' }]": "“party” is no kind of day; use one of strength, easy,",
    "[week]\npins = [{ day = 'tue' }]": "is pinned to nothing",
    "[week]\npins = [{ day = 'tue', exercise = 'plank', work = '20 s' }]": "is pinned with a dose but no sets",
    "[week]\npins = [{ day = 'tue', exercise = 'plank', sets = 3 }]": "need either reps or seconds of work",
    "[week]\npins = [{ day = 'tue', exercise = 'push-up', sets = 3, reps = [6, 4] }]": "can't be pinned (1 to 300",
    "[week]\npins = [{ day = 'tue', exercise = 'push-up', sets = 3, reps = 5, rest = 'x' }]": "field pins 1",
    "[week]\ngoals = { strength = 0, run_walk = 0, loaded_walk = 0, mobility = 0 }": "leaves nothing to plan",
    "[week]\ngoals = { strength = 7 }": "week, field goals.strength: “7” is refused",
    "cup = '250 L'": "the file itself, field cup: “250 L” is no cup to pour with",
    "fills = ['lava']": "field fills: “lava” is not one fill material known here",
    "fils = ['water']": "the file itself, field fils",
}


@pytest.mark.parametrize("text", FAULTS, ids=range(len(FAULTS)))
def test_a_fault_names_file_entry_field_rule_and_way_out(text: str) -> None:
    found = sentences(f"fillmark = 1\n{text}\n")
    assert any(FAULTS[text] in sentence for sentence in found), found
    assert all(sentence.startswith("home.toml: ") and sentence.endswith(".") for sentence in found)
    assert all("\n" not in sentence and len(sentence) < 400 for sentence in found)


def test_all_faults_are_told_at_once() -> None:
    found = sentences("fillmark = 1\nthings = ['zorp', 'chair', 'wibble']\ncup = '9 kg'\n[week]\nbans = ['xqxqxq']\n")
    assert len(found) == 4


NOT_READ = {
    "": "does not begin with fillmark = 1",
    "fillmark = ": "is not a TOML file",
    "fillmark = 1\nfillmark = 1": "is not a TOML file",
    "fillmark = 2": "is the form of a newer Fillmark",
    "x" * 1_000_001: "is larger than a household file can be",
    "fillmark = 1\na = " + "[" * 100_000: "is not a TOML file",
}


@pytest.mark.parametrize("text", NOT_READ, ids=range(len(NOT_READ)))
def test_what_is_no_household_file_is_refused(text: str) -> None:
    with pytest.raises(InputError, match=NOT_READ[text]) as refused:
        read(text)
    assert len(refused.value.sentence()) < 400


@pytest.mark.parametrize("name", ["missing.toml", ".", "latin.toml"])
def test_a_file_that_cannot_be_read_is_named(tmp_path: Path, name: str) -> None:
    (tmp_path / "latin.toml").write_bytes("fillmark = 1\nname = 'Größe'".encode("latin-1"))
    with pytest.raises(InputError, match="is not there|is no file|no UTF-8 text"):
        load_household(tmp_path / name, CATALOG)


def test_ids_are_made_from_names_and_numbered() -> None:
    assert ids_for(["Bean tin", "Bean tin", "Żółty kubek", "???"], "thing") == (
        "bean-tin",
        "bean-tin-2",
        "zoty-kubek",
        "thing",
    )
    assert ids_for(["A", "A"], "x", taken=["a"]) == ("a-2", "a-3")


def test_the_schema_describes_what_is_read() -> None:
    schema = form_schema()
    assert json.loads(json.dumps(schema)) == schema
    assert set(schema["properties"]) == set(HouseholdForm.model_fields)
    assert schema["required"] == ["fillmark"]
    assert schema["additionalProperties"] is False

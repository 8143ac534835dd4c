"""Every command on the invented household: the keys programs count on, and the lines people read."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from core.exercise.model import LOAD_USES
from core.swap.model import Cause
from gui.command_line.options import COMMANDS
from tests.command_line.conftest import NOW, Run

ROOT = Path(__file__).parents[2]
SHORT = ("--days", "tue 30 min")
"""One day is planned in a moment; the whole week of the demo is planned once."""
HOME = """
fillmark = 1
things = ["2 five-litre bottles", "backpack 25 L", "6 bean tins", "kitchen chair"]
[[people]]
name = "Ines"
body_mass = "68 kg"
height = "171 cm"
[week]
days = { tue = "30 min", sat = "40 min" }
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    path = tmp_path / "home.toml"
    path.write_text(HOME, encoding="utf-8")
    return path


def test_the_start_script_knows_the_same_commands() -> None:
    script = (ROOT / "run").read_text(encoding="utf-8")
    listed = re.search(r'^commands="(.*)"$', script, re.MULTILINE)
    assert listed is not None
    assert listed[1].split() == list(COMMANDS)


# --- weigh ----------------------------------------------------------------------------------------------------------


def test_a_filled_thing_is_weighed_with_its_budget(demo: Run) -> None:
    found = demo("weigh", "water carrier", "--fill", "water", "--level", "14 L", "--json").document
    assert found["mass_kg"] == pytest.approx(found["tare_kg"] + found["contents_kg"])
    assert found["mass_kg"] == pytest.approx(15.09, abs=0.01)
    assert found["volume_l"] == pytest.approx(14.0)
    assert 0 < found["height_cm"] < 40
    shares = [line["u_kg"] for line in found["budget"]]
    assert shares == sorted(shares, reverse=True)
    assert found["u95_kg"] == pytest.approx(2 * sum(share**2 for share in shares) ** 0.5)
    assert found["cautions"]


@pytest.mark.parametrize("level", ["80%", "20 L", "80 x 250 mL", "80 cups", "full", "brim", "29.7 cm", "half"])
def test_levels_are_typed_as_people_say_them(level: str, demo: Run) -> None:
    assert demo("weigh", "water carrier", "--level", level, "--json").document["mass_kg"] > 10


def test_a_wanted_mass_tells_how_to_fill(demo: Run) -> None:
    found = demo("weigh", "water carrier", "--fill", "water", "--for", "12 kg", "--json").document
    assert found["reachable"] is True
    assert found["mass_kg"] == pytest.approx(12.0)
    assert found["fill_to"]["volume_l"] == pytest.approx(10.91, abs=0.01)
    assert found["fill_to"]["whole_cups"] == 44
    lines = demo("weigh", "water carrier", "--for", "12 kg").out
    assert "For 12.0 kg, fill Water carrier (each of 2) with 10.9 L of water." in lines
    assert "Or pour 44 cups of 250 mL." in lines


def test_a_mass_out_of_reach_is_an_answer_too(demo: Run) -> None:
    told = demo("weigh", "water carrier", "--fill", "water", "--for", "40 kg", "--json").document
    assert told["reachable"] is False
    assert told["fill_to"] is None
    assert told["limit_kg"] == pytest.approx(26.08, abs=0.02)
    assert demo("weigh", "water carrier", "--for", "40 kg").out.startswith("40.0 kg is not reachable: full of water")


def test_scale_readings_narrow_the_estimate(demo: Run) -> None:
    plain = demo("weigh", "water carrier", "--level", "14 L", "--json").document
    readings = ("--scale", "15.1 kg luggage", "--scale", "15.0 kg luggage", "--scale", "83.1 kg - 68.1 kg")
    found = demo("weigh", "water carrier", "--level", "14 L", *readings, "--json").document
    assert found["weighing"]["agrees"] is True
    assert found["u95_kg"] < plain["u95_kg"]


def test_a_reading_far_off_is_not_averaged(demo: Run) -> None:
    found = demo("weigh", "water carrier", "--level", "14 L", "--scale", "19 kg", "--json").document
    assert found["weighing"]["agrees"] is False
    assert "too far apart to average" in found["weighing"]["sentence"]


def test_a_thing_the_house_does_not_have_is_read_from_the_words(demo: Run, run: Run) -> None:
    assert demo("weigh", "5 L bottle", "--level", "full", "--json").document["thing"] == "Bottle 5 L"
    told = run("weigh", "25 L water carrier", "--fill", "water", "--json")
    assert told.code == 0
    assert told.document["mass_kg"] == pytest.approx(26.08, abs=0.02)


def test_a_slip_of_the_pen_finds_the_thing(demo: Run) -> None:
    assert demo("weigh", "watter carrier", "--json").document["count"] == 2


def test_a_thing_that_is_not_filled_has_its_mass(demo: Run) -> None:
    found = demo("weigh", "coal bag", "--json").document
    assert found["mass_kg"] == pytest.approx(10.1)
    assert (found["fill"], found["volume_l"]) == (None, None)


def test_units_change_what_is_printed_and_not_the_document(demo: Run) -> None:
    metric = demo("weigh", "water carrier", "--level", "14 L", "--json").document
    assert (
        demo("weigh", "water carrier", "--level", "14 L", "--units", "us", "--json").document["mass_kg"]
        == metric["mass_kg"]
    )
    assert "33.3 lb" in demo("weigh", "water carrier", "--level", "14 L", "--units", "us").out
    assert "15.1 kg" in demo("weigh", "water carrier", "--level", "14 L").out


@pytest.mark.parametrize(
    ("typed", "kind_kg"),
    [
        ("14.3 kg luggage", 14.3),
        ("14.6 kg - 0.3 kg luggage", 14.3),
        ("82.6 kg - 68.3 kg", 14.3),
        ("14.3 kg bathroom", 14.3),
        ("14.6 kg - 0.3 kg luggage in steps of 0.1 kg", 14.3),
    ],
)
def test_each_way_of_weighing_can_be_typed(demo: Run, typed: str, kind_kg: float) -> None:
    found = demo("weigh", "water carrier", "--level", "13.3 L", "--scale", typed, "--json").document
    assert found["weighing"]["agrees"]
    assert found["weighing"]["sentence"].startswith(f"The scale says {kind_kg:.1f}")


def test_a_coarser_step_leaves_more_doubt(demo: Run) -> None:
    fine, coarse = (
        demo("weigh", "water carrier", "--level", "13.3 L", "--scale", typed, "--json").document["u95_kg"]
        for typed in ("14.3 kg luggage", "14.3 kg luggage in steps of 1 kg")
    )
    assert coarse > fine


# --- loads, swap, gaps ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("use", ["hug", "front", "one_hand", "pair", "back", "shoulder", "overhead"])
def test_loads_rise_and_gaps_lie_between_them(use: str, demo: Run) -> None:
    found = demo("loads", "--use", use, "--place", "Towpath", "--json").document
    masses = [rung["mass_kg"] for rung in found["rungs"]]
    assert masses == sorted(masses)
    assert len(masses) == found["all"] > 0
    for rung in found["rungs"]:
        parts = sum(part["count"] * part["mass_kg"] for part in rung["recipe"])
        assert parts == pytest.approx(rung["mass_kg"], abs=0.011)
        assert rung["u95_kg"] > 0
    for gap in found["gaps"]:
        assert gap["step_pct"] == pytest.approx(100 * (gap["to_kg"] - gap["from_kg"]) / gap["from_kg"])


def test_near_shows_the_nearest_loads(demo: Run) -> None:
    found = demo("loads", "--use", "hug", "--near", "12 kg", "--json").document
    assert len(found["rungs"]) == 7
    assert all(abs(rung["mass_kg"] - 12) < 1.5 for rung in found["rungs"])
    assert found["next_above_kg"] > 12


def test_the_best_ways_to_a_mass_are_told_with_what_to_do(demo: Run) -> None:
    found = demo("loads", "--use", "pair", "--near", "10 kg", "--json").document
    assert [way["recipe"][0]["thing"] for way in found["ways"]] == ["Water carrier", "Mop bucket"]
    for way in found["ways"]:
        assert abs(way["off_kg"]) <= 0.5
        assert way["apart_kg"] <= 0.15
        assert way["u95_kg"] > 0
        assert way["steps"]
    said = demo("loads", "--use", "pair", "--near", "10 kg").out
    assert "2 ways to 10.0 kg within 5 %, the best first:" in said
    assert "69 g apart" in said
    assert "pour in 4.50 L water (18 × 250 mL)" in said


def test_without_a_way_the_nearest_loads_are_told(demo: Run) -> None:
    said = demo("loads", "--use", "back", "--near", "6 kg").out
    assert "Nothing here makes 6.00 kg within 5 %. The nearest:" in said
    assert demo("loads", "--use", "back", "--near", "6 kg", "--within", "45 %", "--json").document["ways"]


def test_every_use_of_a_load_is_answered(demo: Run) -> None:
    for use in LOAD_USES:
        assert demo("loads", "--use", use.value).out


def test_a_swap_gives_answers_and_what_was_left_out(demo: Run) -> None:
    found = demo("swap", "back squat", "--dose", "4 x 5 at 40 kg, effort 8", "--json").document
    assert (found["asked"]["exercise"], found["asked"]["name"]) == ("back_squat_bar", "Barbell back squat")
    assert found["asked"]["patterns"][0] == {"pattern": "squat", "weight": 1.0}
    places = [one["closeness"]["total"] + one["closeness"]["ahead"] for one in found["answers"]]
    assert places[0] == max(places)
    assert places[5:] == sorted(places[5:], reverse=True)  # the first five are spread over different movements
    best = found["answers"][0]
    assert best["sets"] == 4
    assert best["things"]
    assert set(best) >= {"demands", "impact", "reps", "seconds", "distance_m", "why", "cautions"}
    assert all(one["why"] for one in found["left_out"])


def test_what_is_spared_is_asked_of_nobody(demo: Run) -> None:
    found = demo("swap", "push-up", "--because", "hurts", "--spare", "loaded wrist extension", "--json").document
    assert found["answers"]
    assert all("loaded_wrist_extension" not in one["demands"] for one in found["answers"])
    assert any("bent-back wrist" in one["why"] for one in found["left_out"])


@pytest.mark.parametrize("cause", Cause)
def test_every_cause_is_answered(cause: Cause, demo: Run) -> None:
    assert demo("swap", "pull-up", "--because", cause.value, "--place", "Towpath", "--person", "tomas").out


def test_person_and_place_are_told(demo: Run) -> None:
    assert "(Tomas, Towpath)" in demo("swap", "bench press", "--person", "Tomas", "--place", "towpath").out


def test_gaps_count_every_pattern_and_name_what_would_help(demo: Run, run: Run, home: Path) -> None:
    found = demo("gaps", "--json").document
    assert [one["pattern"] for one in found["patterns"]][:3] == ["squat", "hinge", "lunge"]
    assert all(one["movements"] == len(one["exercises"]) for one in found["patterns"])
    poor = run("gaps", "--home", home, "--json").document
    assert poor["would_help"][0]["movements"] > 0
    assert "what would help" in run("gaps", "--home", home).out


# --- planning -------------------------------------------------------------------------------------------------------


def test_a_week_is_planned_within_its_minutes(demo: Run) -> None:
    found = demo("week", "--json").document
    assert found["status"] == "optimal"
    assert [day["day"] for day in found["days"]] == ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
    assert found["clash"] == []
    for day in found["days"]:
        assert day["minutes"] <= day["limit_min"]
        parts = [*day["warm_up"], *day["blocks"], *day["cool_down"]]
        assert sum(block["minutes"] for block in parts) + day["pour_min"] == pytest.approx(day["minutes"])
    assert all(check["met"] for check in found["checks"] if check["hard"])
    assert all(fill["before"] in ("mon", "tue", "wed", "fri", "sat", "sun") for fill in found["fills"])


def test_pins_bans_and_days_are_kept(demo: Run) -> None:
    words = ("--days", "tue 45 min, sat 50 min", "--pin", "tue strength push-up", "--ban", "pinch carry")
    found = demo("week", *words, "--json").document
    days = {day["day"]: day for day in found["days"]}
    assert [name for name, day in days.items() if day["kind"] != "rest"] == ["tue", "sat"]
    assert days["tue"]["kind"] == "strength"
    assert "push_up" in [block["exercise"] for block in days["tue"]["blocks"]]
    assert all(block["exercise"] != "pinch_carry" for day in days.values() for block in day["blocks"])


def test_a_week_kept_from_a_file_changes_little(demo: Run, tmp_path: Path) -> None:
    first = demo("week", *SHORT, "--json")
    kept = tmp_path / "week.json"
    kept.write_text(first.out, encoding="utf-8")
    again = demo("week", *SHORT, "--from", kept, "--json").document
    assert again["days"] == first.document["days"]


def test_wishes_that_clash_are_an_answer(demo: Run) -> None:
    found = demo("week", "--days", "tue 5 min", "--pin", "tue strength", "--json").document
    assert found["status"] == "impossible"
    assert found["clash"]
    assert "can't hold together" in demo("week", "--days", "tue 5 min", "--pin", "tue strength").out


def test_the_week_reads_as_a_list_of_days(demo: Run) -> None:
    out = demo("week", "--days", "mon 45 min").out
    assert out.startswith("Ines: the week, proven best\n\nMonday: ")
    assert "Thursday: rest" in out
    assert "warm up, " in out


def test_a_block_starts_and_ends_with_tests(demo: Run) -> None:
    found = demo("block", "--weeks", "4", "--days", "tue 40 min, sat 40 min", "--json").document
    assert [week["n"] for week in found["weeks"]] == [0, 1, 2, 3, 4]
    assert (found["weeks"][0]["kind"], found["weeks"][-1]["kind"]) == ("test", "retest")
    assert {test["id"] for test in found["tests"]} >= {"push_up", "plank"}
    assert all(len(week["days"]) == 7 for week in found["weeks"])
    assert (found["starts"], found["weeks"][4]["starts"]) == ("2026-05-04", "2026-06-01")
    first, last = found["weeks"][0]["tests"], found["weeks"][-1]["tests"]
    assert first == last
    assert [test["id"] for test in first] == [test["id"] for test in found["tests"]]
    assert all(test["how"] and test["stop"] and test["unit"] for test in found["tests"])


def test_a_block_starts_on_the_monday_asked_for(demo: Run) -> None:
    words = ("block", "--weeks", "4", "--days", "tue 40 min", "--start")
    assert demo(*words, "2026-06-01", "--json").document["weeks"][1]["starts"] == "2026-06-08"
    out = demo(*words, "2026-06-01").out
    assert out.startswith("Ines: 5 weeks from 2026-06-01, the first one to test")
    assert "Push-ups in one set, in reps, Tuesday of the first and the last week" in out


# --- files ----------------------------------------------------------------------------------------------------------


def test_a_sheet_and_a_calendar_are_written(demo: Run, tmp_path: Path) -> None:
    pdf, ics = tmp_path / "week.pdf", tmp_path / "week.ics"
    assert demo("sheet", *SHORT, "--pdf", pdf, "--json").document["written"] == str(pdf)
    assert pdf.read_bytes().startswith(b"%PDF")
    demo("calendar", *SHORT, "--ics", ics, "--starts", "2026-05-04")
    assert ics.read_text(encoding="utf-8").startswith("BEGIN:VCALENDAR")
    assert f"DTSTAMP:{NOW:%Y%m%dT%H%M%S}Z" in ics.read_text(encoding="utf-8")


def test_the_calendar_starts_on_the_next_monday(demo: Run, tmp_path: Path) -> None:
    assert demo("calendar", *SHORT, "--ics", tmp_path / "a.ics", "--json").document["starts"] == "2026-05-04"


def test_paper_follows_the_units(demo: Run, tmp_path: Path) -> None:
    words = ("strip", "water carrier", "mop bucket", "--fill", "water", "--json", "--pdf")
    assert demo(*words, tmp_path / "a.pdf").document["paper"] == "a4"
    assert demo(*words, tmp_path / "b.pdf", "--units", "us").document["paper"] == "letter"
    found = demo(*words, tmp_path / "c.pdf", "--paper", "letter").document
    assert [strip["thing"] for strip in found["strips"]] == ["Water carrier", "Mop bucket"]


def test_the_same_question_writes_the_same_bytes(demo: Run, tmp_path: Path) -> None:
    for command, flag in (("sheet", "--pdf"), ("calendar", "--ics")):
        for name in ("a", "b"):
            demo(command, flag, tmp_path / f"{command}-{name}", *SHORT)
        assert (tmp_path / f"{command}-a").read_bytes() == (tmp_path / f"{command}-b").read_bytes()


def test_a_file_that_is_there_is_not_replaced_unasked(demo: Run, run: Run, tmp_path: Path) -> None:
    pdf = tmp_path / "strip.pdf"
    pdf.write_bytes(b"mine")
    told = run("strip", "water carrier", "--demo", "--pdf", pdf)
    assert (told.code, told.out) == (2, "")
    assert told.err.endswith("is there already; choose another name, or add --force to replace it.\n")
    assert pdf.read_bytes() == b"mine"
    demo("strip", "water carrier", "--pdf", pdf, "--force")
    assert pdf.read_bytes().startswith(b"%PDF")


def test_everything_can_be_taken_along(demo: Run, run: Run, tmp_path: Path) -> None:
    for flag in ("--json", "--csv", "--toml", "--schema"):
        demo("export", flag, tmp_path / f"a{flag}")
    assert (tmp_path / "a--csv").read_text(encoding="utf-8-sig").startswith("date,person,exercise")
    assert run("check", tmp_path / "a--toml").code == 0
    taken = run("gaps", "--home", tmp_path / "a--toml", "--json").document
    assert taken == demo("gaps", "--json").document


def test_a_household_file_and_the_catalog_are_checked(run: Run, home: Path) -> None:
    assert run("check", home).out == "home.toml is in order.\n"
    found = run("check", "--catalog", "--report", "--json").document
    assert found["faults"] == []
    assert found["counts"]["exercises"] >= 300
    assert found["report"]
    assert run("check", "--schema").document["required"] == ["fillmark"]


def test_every_fault_of_a_file_is_listed(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "bad.toml"
    path.write_text("fillmark = 1\nthings = ['zorp', 'chair']\ncup = '9 kg'\n", encoding="utf-8")
    told = run("check", path)
    assert told.code == 2
    assert len(told.out.splitlines()) == 2
    assert told.err == "“bad.toml” has 2 faults; correct them.\n"
    assert len(run("check", path, "--json").document["faults"]) == 2


# --- around it ------------------------------------------------------------------------------------------------------


def test_a_household_file_serves_every_command(run: Run, home: Path, tmp_path: Path) -> None:
    questions = (
        ("weigh", "bottle"),
        ("loads", "--use", "pair"),
        ("swap", "deadlift"),
        ("gaps",),
        ("week",),
        ("block", "--weeks", "4"),
        ("sheet", "--pdf", tmp_path / "a.pdf"),
        ("strip", "bottle", "--pdf", tmp_path / "b.pdf"),
        ("calendar", "--ics", tmp_path / "c.ics"),
        ("export", "--json", tmp_path / "d.json"),
    )
    assert {str(question[0]) for question in questions} == set(COMMANDS) - {"check"}
    for question in questions:
        told = run(*question, "--home", home)
        assert (told.code, told.err) == (0, ""), question
        assert told.out.strip()


def test_options_may_stand_before_the_command(run: Run) -> None:
    before = run("--demo", "--json", "gaps")
    assert before.document == run("gaps", "--demo", "--json").document


@pytest.mark.parametrize("command", [None, *COMMANDS])
def test_help_names_every_option(command: str | None, capsys: pytest.CaptureFixture[str]) -> None:
    from gui.command_line.main import main

    with pytest.raises(SystemExit) as left:
        main([*([command] if command else []), "--help"])
    assert left.value.code == 0
    out = capsys.readouterr().out
    assert "--demo" in out
    assert all(len(line) <= 100 for line in out.splitlines())


def test_the_version_is_told(run: Run) -> None:
    assert re.fullmatch(r"fillmark \d+\.\d+\.\d+\S*\n", run("--version").out)

"""The loader of exercises: what a good entry becomes, and how every fault of a file is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from catalog.errors import CatalogFaults
from catalog.exercises import load_exercises
from core.errors import InputError
from core.exercise.model import Basis, Demand, DoseKind, Muscle, Need, Option, Pattern, Posture, Sides, Use

GOOD = """
[[exercise]]
id = "pail_squat"
name = "Pail squat"
aliases = ["bucket squat"]
patterns = { squat = 1.0, hinge = 0.3 }
muscles = { quads = 1.0, glutes = 0.8 }
dose = "reps"
posture = "standing"
needs = [
  { uses = ["hug", "front"], mass_share = [0.05, 0.5] },
  { uses = ["sit"], height_cm = [38, 55], bears = 1.0, optional = true },
]
body = { share = 0.88, basis = "derived", source_ids = ["de_leva_1996"] }
demands = ["deep_knee_bend"]
level = 3
typical = [6, 15]
options = ["pause"]
easier = ["body_squat"]
cues = ["Sit down.", "Stand up."]
faults = ["Rounding."]
"""


def sentences_of(text: str, file: str = "mine.toml") -> tuple[str, ...]:
    with pytest.raises(CatalogFaults) as caught:
        load_exercises({file: text})
    return caught.value.sentences


def test_a_table_becomes_an_exercise_with_the_usual_values_for_what_it_leaves_out() -> None:
    (exercise,) = load_exercises({"mine.toml": GOOD})
    assert exercise.patterns == ((Pattern.SQUAT, 1.0), (Pattern.HINGE, 0.3))
    assert exercise.muscles == ((Muscle.QUADS, 1.0), (Muscle.GLUTES, 0.8))
    assert exercise.needs == (
        Need(uses=(Use.HUG, Use.FRONT), mass_share=(0.05, 0.5)),
        Need(uses=(Use.SIT,), height_cm=(38.0, 55.0), bears=1.0, optional=True),
    )
    assert (exercise.dose, exercise.posture, exercise.sides) == (DoseKind.REPS, Posture.STANDING, Sides.BOTH)
    assert (exercise.body.share, exercise.body.basis) == (0.88, Basis.DERIVED)
    assert exercise.demands == {Demand.DEEP_KNEE_BEND}
    assert exercise.options == (Option.PAUSE,)
    assert (exercise.load_share, exercise.side_share, exercise.rep_s) == (1.0, 0.5, 4.0)
    assert (exercise.easier, exercise.harder) == (("body_squat",), ())


def test_exercises_of_several_files_come_sorted_by_id(tmp_path: Path) -> None:
    (tmp_path / "b.toml").write_text(GOOD, encoding="utf-8")
    (tmp_path / "a.toml").write_text(GOOD.replace("pail_squat", "zeal_squat"), encoding="utf-8")
    (tmp_path / "notes.txt").write_text("not data", encoding="utf-8")
    assert [exercise.id for exercise in load_exercises(tmp_path)] == ["pail_squat", "zeal_squat"]


def test_a_folder_without_data_is_refused_by_name(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="holds no TOML files"):
        load_exercises(tmp_path)


def test_all_faults_of_a_file_are_told_at_once_each_with_file_entry_field_and_way_out() -> None:
    broken = (
        GOOD.replace("level = 3", "level = 9\ncolour = 4")
        .replace('dose = "reps"', 'dose = "sets"')
        .replace('name = "Pail squat"\n', "")
    )
    at = "mine.toml: entry pail_squat, field "
    assert sentences_of(broken) == (
        f"{at}name: “name” is missing; add the field.",
        f"{at}dose: “sets” is refused: should be 'reps', 'time' or 'distance'; use one of these words.",
        f"{at}level: “9” is refused: should be less than or equal to 5; correct it.",
        f"{at}colour: “4” is refused: Extra inputs are not permitted; remove the field or check its spelling.",
    )


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ('name = "Pail squat"\n', "", "field name"),
        ("share = 0.88", "share = nan", "field body.share"),
        ("share = 0.88", "share = inf", "field body.share"),
        ("share = 0.88", "share = 1.2", "less than or equal to 1"),
        ("share = 0.88", 'share = "0.88"', "valid number"),
        ("share = 0.88", "share = true", "valid number"),
        ('source_ids = ["de_leva_1996"]', "source_ids = []", "a derived share needs source_ids"),
        ("squat = 1.0, hinge = 0.3", "squat = 1.0, hinge = 1.0", "one pattern must weigh more than the others"),
        ("squat = 1.0, hinge = 0.3", "squats = 1.0", "should be 'squat'"),
        ('uses = ["hug", "front"]', 'uses = ["hug", "sit"]', "all loads or all fixtures"),
        ('uses = ["hug", "front"]', 'uses = ["hug", "barbell"]', "a gym use stands alone"),
        ('uses = ["hug", "front"]', 'uses = ["hug", "hug"]', "must not list one twice"),
        (", mass_share = [0.05, 0.5]", "", "a load needs mass_share"),
        ("mass_share = [0.05, 0.5]", "mass_share = [0.5, 0.05]", "mass_share must be low, high"),
        ("mass_share = [0.05, 0.5]", "mass_share = [0.05, 0.5], bears = 1", "belong to a fixture"),
        ("bears = 1.0", "mass_share = [0, 1]", "mass_share belongs to a load"),
        ("bears = 1.0", "space_m = 5", "space_m belongs to a route"),
        ('["sit"], height_cm = [38, 55], bears = 1.0', '["back"], mass_share = [0, 1]', "only one need can be a load"),
        ("typical = [6, 15]", "typical = [15, 6]", "typical must be low, high"),
        ('easier = ["body_squat"]', 'easier = ["pail_squat"]', "not its own neighbour"),
        ('demands = ["deep_knee_bend"]', 'demands = ["impact", "impact"]', "must not list one twice"),
        ('id = "pail_squat"', 'id = "Pail Squat"', "should match pattern"),
        ("level = 3", "level = true", "valid integer"),
        ("level = 3", "reach_over_head = 1\nlevel = 3", "valid boolean"),
    ],
)
def test_a_wrong_value_is_refused_with_its_rule(was: str, now: str, told: str) -> None:
    assert was in GOOD
    assert told in " ".join(sentences_of(GOOD.replace(was, now, 1)))


def test_heights_of_a_body_share_must_rise() -> None:
    fallen = GOOD.replace("share = 0.88,", "share = 0.88, by_height = [[30, 0.5], [0, 0.6]],")
    assert "by_height must rise in height" in sentences_of(fallen)[0]
    lonely = GOOD.replace("share = 0.88,", "share = 0.88, by_height = [[30, 0.5]],")
    assert "by_height needs two heights or none" in sentences_of(lonely)[0]


def test_an_id_used_in_two_files_is_told() -> None:
    with pytest.raises(CatalogFaults) as caught:
        load_exercises({"a.toml": GOOD, "b.toml": GOOD})
    assert caught.value.sentences == (
        "exercises: entry pail_squat, field id: “pail_squat” is used twice; give one of them another id.",
    )


def test_a_file_that_is_no_toml_names_file_and_line_and_the_other_files_are_still_read() -> None:
    with pytest.raises(CatalogFaults) as caught:
        load_exercises({"a.toml": "[[exercise]\n", "b.toml": GOOD.replace("level = 3", "level = 0")})
    first, second = caught.value.sentences
    assert first.startswith("“a.toml” is not a TOML file:")
    assert "line 1" in first
    assert second.startswith("b.toml: entry pail_squat, field level:")


def test_a_key_given_twice_is_refused() -> None:
    assert "is not a TOML file" in sentences_of(GOOD.replace("level = 3", "level = 3\nlevel = 4"))[0]


def test_only_exercise_tables_may_stand_in_a_file() -> None:
    assert "use only [[exercise]] tables" in sentences_of('title = "mine"\n' + GOOD)[0]


def test_the_message_says_how_many_faults_there_are_and_the_first() -> None:
    with pytest.raises(CatalogFaults) as caught:
        load_exercises({"mine.toml": GOOD.replace("level = 3", "level = 0").replace('"reps"', '"sets"')})
    assert str(caught.value).startswith("“mine.toml” has 2 faults; correct them. First: mine.toml: entry pail_squat")

"""Rules of effective load, ceilings and equivalent dose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.effort.capacity import Prescription, ceiling, one_rep_from_set
from core.effort.dose import equivalent_dose, target_share, wanted_load_kg
from core.effort.load import body_share, effective_kg, external_for_effective_kg
from core.exercise.model import Basis, BodyShare, DoseKind, Exercise, Muscle, Option, Pattern
from core.exercise.strength import carries_over
from core.fit.model import Binding
from core.house.model import Experience, Person
from core.quantity import Measured

INES = Person(id="ines", name="Ines", body_mass_kg=68.0, height_cm=171.0, experience=Experience.SOME)


def squat(**changes: object) -> Exercise:
    values: dict[str, object] = {
        "id": "squat",
        "name": "Squat",
        "patterns": ((Pattern.SQUAT, 1.0),),
        "muscles": ((Muscle.QUADS, 1.0), (Muscle.GLUTES, 0.8)),
        "dose": DoseKind.REPS,
        "body": BodyShare(share=0.88, basis=Basis.DERIVED),
        "level": 2,
        "typical": (5.0, 15.0),
    }
    return Exercise(**(values | changes))  # type: ignore[arg-type]  # one valid exercise plus the change under test


def test_effective_load_counts_the_body_that_moves_on_one_side() -> None:
    assert effective_kg(squat(), 40.0, 68.0) == pytest.approx((40 + 0.88 * 68) / 2)


@given(st.floats(0, 200), st.floats(30, 250))
def test_external_load_undoes_effective_load(external_kg: float, body_kg: float) -> None:
    exercise = squat()
    moved = effective_kg(exercise, external_kg, body_kg)
    assert external_for_effective_kg(exercise, moved, body_kg) == pytest.approx(external_kg, abs=1e-9)


def test_share_by_height_is_interpolated_inside_and_never_beyond_the_series() -> None:
    body = BodyShare(share=0.64, by_height=((0.0, 0.64), (30.48, 0.55), (60.96, 0.41)), basis=Basis.PUBLISHED)
    assert body_share(body, 45.0) == pytest.approx(0.55 - (45 - 30.48) / 30.48 * 0.14)
    assert body_share(body, 90.0) == 0.41
    assert body_share(body) == 0.64


def test_the_prescription_speaks_for_the_person() -> None:
    one_rep = one_rep_from_set(squat(), load=Measured(40.0), reps=5, effort=8, body_mass_kg=68.0)
    assert one_rep.value == pytest.approx((40 + 0.88 * 68) / 2 * (1 + 7 / 30))
    assert one_rep.u > 0


def test_lighter_loads_ask_for_more_repetitions_at_the_same_effort() -> None:
    asked = squat(id="asked")
    wanted = Prescription(sets=4, reps=5, load_kg=40.0, effort=8.0)
    known = (asked, one_rep_from_set(asked, load=Measured(40.0), reps=5, effort=8, body_mass_kg=68.0))
    top = ceiling(squat(), INES, known)
    dose = equivalent_dose(squat(), Binding(exercise_id="squat"), INES, top, wanted, target_share(wanted, asked))
    assert dose.reps is not None
    assert dose.reps[0] > 5
    assert dose.sets == 4


def test_the_same_load_gives_back_the_asked_repetitions_inside_the_range() -> None:
    asked = squat(id="asked")
    wanted = Prescription(sets=4, reps=5, load_kg=40.0, effort=8.0)
    known = (asked, one_rep_from_set(asked, load=Measured(40.0), reps=5, effort=8, body_mass_kg=68.0))
    top = ceiling(asked, INES, known)
    load_kg = wanted_load_kg(asked, top, INES, target_share(wanted, asked))
    assert load_kg == pytest.approx(40.0)


def test_far_too_light_changes_tempo_and_says_what_does_not_carry_over() -> None:
    light = squat(body=BodyShare(share=0.2, basis=Basis.ORDINAL), options=(Option.SLOW_LOWERING, Option.PAUSE))
    wanted = Prescription(sets=3, reps=8, effort=8.0)
    dose = equivalent_dose(light, Binding(exercise_id="squat"), INES, ceiling(light, INES), wanted, None)
    assert dose.options == (Option.SLOW_LOWERING, Option.PAUSE)
    assert any("does not carry over" in note for note in dose.notes)


def test_a_curl_says_nothing_about_a_row() -> None:
    curl = squat(patterns=((Pattern.PULL_LEVEL, 1.0),), muscles=((Muscle.BICEPS, 1.0), (Muscle.GRIP, 0.3)))
    assert not carries_over(curl)

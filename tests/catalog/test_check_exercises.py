"""The checker of exercises: a small catalog full of faults gives exactly the sentences expected, a good one none."""

from __future__ import annotations

from dataclasses import replace

import pytest

from catalog.check_exercises import find_exercise_errors
from core.exercise.model import (
    Basis,
    BodyShare,
    Demand,
    DoseKind,
    Exercise,
    Muscle,
    Need,
    Pattern,
    Posture,
    Use,
)

SOURCES = frozenset({"de_leva_1996"})


def one(exercise_id: str, **changes: object) -> Exercise:
    """A faultless entry of a pattern that may be thin, with changes."""
    made = Exercise(
        id=exercise_id,
        name=exercise_id.replace("_", " ").capitalize(),
        patterns=((Pattern.MOBILITY, 1.0),),
        muscles=((Muscle.QUADS, 1.0),),
        dose=DoseKind.REPS,
        body=BodyShare(share=0.5),
        level=1,
        typical=(5.0, 10.0),
        cues=("Sit down.", "Stand up."),
        faults=("Rounding.",),
    )
    return replace(made, **changes)  # type: ignore[arg-type] # the tests name any field


def errors(*exercises: Exercise) -> list[str]:
    return list(find_exercise_errors(exercises, SOURCES))


def test_a_faultless_entry_gives_no_sentence() -> None:
    assert errors(one("knee_circle")) == []


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"patterns": ((Pattern.MOBILITY, 1.0), (Pattern.WARM_UP, 1.0))},
            "mobility and warm_up both weigh 1.0; only the main pattern may",
        ),
        ({"patterns": ((Pattern.MOBILITY, 1.2),)}, "a weight of 1.2 is not above 0 and at most 1"),
        ({"muscles": ((Muscle.QUADS, 0.8),)}, "no muscle weighs 1.0; the prime mover must"),
        ({"posture": Posture.FLOOR}, "it is done on the floor but does not demand floor_transfer"),
        (
            {"posture": Posture.FLOOR, "demands": frozenset({Demand.FLOOR_TRANSFER}), "floor_m2": 0.5},
            "it is done on the floor but asks for less than 1 m² of it",
        ),
        ({"demands": frozenset({Demand.IMPACT})}, "it demands impact but has impact 0"),
        ({"impact": 3, "noise": 3}, "it has impact 3 but does not demand impact"),
        ({"impact": 2, "demands": frozenset({Demand.IMPACT})}, "it has impact 2 but noise 0"),
        (
            {"needs": (Need(uses=(Use.OVERHEAD,), mass_share=(0.1, 0.2)),), "reach_over_head": True},
            "it works overhead but does not demand overhead_reach",
        ),
        (
            {
                "needs": (Need(uses=(Use.OVERHEAD,), mass_share=(0.1, 0.2)),),
                "demands": frozenset({Demand.OVERHEAD_REACH}),
            },
            "it holds a load overhead but reach_over_head is false",
        ),
        ({"typical": (0.0, 10.0)}, "a usual dose of 0 to 10 is not sane for reps (1 to 60)"),
        (
            {"dose": DoseKind.TIME, "rep_s": 1.0, "typical": (3.0, 10.0)},
            "a usual dose of 3 to 10 is not sane for time (5 to 14400)",
        ),
        ({"dose": DoseKind.TIME, "typical": (30.0, 60.0)}, "rep_s must be 1 where time is counted"),
        ({"rep_s": 61.0}, "a repetition of 61 s is too long; count time instead"),
        ({"body": BodyShare(share=1.1)}, "a body share of 1.1 is not from 0 to 1"),
        ({"body": BodyShare(share=0.5, basis=Basis.PUBLISHED)}, "a published share names no source"),
        ({"load_share": 0.0}, "load_share and side_share must be above 0 and at most 1"),
        (
            {"needs": (Need(uses=(Use.BARBELL, Use.HUG), mass_share=(0.1, 0.2)),)},
            "the need barbell/hug mixes gym and home uses",
        ),
        ({"needs": (Need(uses=(Use.RACK,), optional=True),)}, "the gym need rack must not be optional"),
        (
            {"needs": (Need(uses=(Use.HUG,)), Need(uses=(Use.BACK,)))},
            "it has more than one load need; only the first would be found",
        ),
        ({"cues": ("Sit down.",)}, "it has 1 cues, not 2 to 4"),
        ({"faults": ()}, "it has 0 faults, not 1 or 2"),
        ({"cues": ("Sit down", "Stand up.")}, "“Sit down” must be one sentence that ends with a full stop"),
        ({"cues": ("Sit. Stand.", "Up.")}, "“Sit. Stand.” must be one sentence that ends with a full stop"),
        ({"cues": ("Go!", "Up.")}, "“Go!” must be one sentence that ends with a full stop"),
        ({"faults": ("x" * 90 + ".",)}, f"“{'x' * 90}.” has 91 characters, not at most 90"),
        (
            {"cautions": ("Careful",)},
            "the caution “Careful” must end with a full stop and have at most 160 characters",
        ),
        ({"source_ids": ("hearsay",)}, "the source hearsay is not listed"),
        ({"body": BodyShare(share=0.5, source_ids=("hearsay",))}, "the source hearsay is not listed"),
        ({"staple": True, "needs": (Need(uses=(Use.CABLE,)),)}, "a movement that needs a gym is no staple"),
        ({"easier": ("nothing",)}, "the easier neighbour nothing does not exist"),
        ({"harder": ("nothing",)}, "the harder neighbour nothing does not exist"),
    ],
)
def test_a_fault_gives_its_own_sentence_and_no_other(changes: dict[str, object], sentence: str) -> None:
    assert errors(one("knee_circle", **changes)) == [f"knee_circle: {sentence}"]


def test_a_gym_lift_lying_on_a_bench_needs_no_floor_transfer() -> None:
    bench = Need(uses=(Use.FLAT_BENCH,), bears=1.0)
    assert errors(one("bench_lift", posture=Posture.FLOOR, needs=(bench,))) == []


def test_a_link_must_be_named_from_both_ends() -> None:
    first, second = one("first", harder=("second",)), one("second", level=2)
    assert errors(first, second) == ["first: second is named as harder but does not name it as easier"]
    first, second = one("first"), one("second", level=2, easier=("first",))
    assert errors(first, second) == ["second: first is named as easier but does not name it as harder"]


def test_a_harder_neighbour_is_not_at_a_lower_level() -> None:
    first, second = one("first", level=3, harder=("second",)), one("second", level=2, easier=("first",))
    assert errors(first, second) == ["first: second is named as harder but is level 2, below level 3"]


def test_a_harder_neighbour_is_one_level_up_at_the_most() -> None:
    first, second = one("first", level=1, harder=("second",)), one("second", level=3, easier=("first",))
    assert errors(first, second) == ["first: second is named as harder but is level 3, too far above level 1"]


def test_a_circle_is_told_once_by_its_smallest_id() -> None:
    ring = ("b_one", "c_two", "a_three")
    entries = [one(here, harder=(ring[(i + 1) % 3],), easier=(ring[(i - 1) % 3],)) for i, here in enumerate(ring)]
    leading_in = one("z_start", harder=("b_one",))
    entries[0] = replace(entries[0], easier=(*entries[0].easier, "z_start"))
    assert errors(*entries, leading_in) == ["a_three: following harder neighbours leads back to it"]


def test_names_and_aliases_belong_to_one_exercise_whatever_their_case() -> None:
    first, second = one("first", aliases=("Knee Circle",)), one("knee_circle")
    assert errors(first, second) == ["first: the name or alias “knee circle” also belongs to knee_circle"]


def test_an_id_used_twice_is_told() -> None:
    assert errors(one("first"), one("first", name="Other")) == ["first: the id is used 2 times"]


def ladder_of_squats(levels: tuple[int, ...], *, linked: bool, staple: bool = True) -> list[Exercise]:
    ids = [f"squat_{number:02}" for number in range(len(levels))]
    return [
        one(
            here,
            patterns=((Pattern.SQUAT, 1.0),),
            level=level,
            staple=staple,
            easier=tuple(ids[i - 1 : i]) if linked else (),
            harder=tuple(ids[i + 1 : i + 2]) if linked else (),
        )
        for i, (here, level) in enumerate(zip(ids, levels, strict=True))
    ]


def test_a_strength_pattern_leads_from_chair_level_to_hard() -> None:
    levels = (1, 1, 2, 2, 3, 3, 4, 5)
    assert errors(*ladder_of_squats(levels, linked=True)) == []
    assert errors(*ladder_of_squats(levels, linked=False)) == [
        "squat: no way along harder neighbours leads from level 1 or 2 to level 4 or 5"
    ]


def test_a_strength_pattern_has_enough_entries_for_any_home_in_each_band() -> None:
    assert errors(*ladder_of_squats((1, 1, 2, 2, 2, 4), linked=True)) == [
        "squat_04: squat_05 is named as harder but is level 4, too far above level 2",
        "squat: 6 entries with common things only, not 8",
        "squat: no entry at level 3 needs only common things",
    ]


def test_a_strength_pattern_has_a_staple_in_each_band() -> None:
    entries = ladder_of_squats((1, 1, 2, 2, 3, 3, 4, 5), linked=True, staple=False)
    entries[4] = replace(entries[4], staple=True)
    entries[7] = replace(entries[7], staple=True, needs=(Need(uses=(Use.BAND,)),))
    assert errors(*entries) == [
        "squat: 7 entries with common things only, not 8",
        "squat: no staple at level 1-2 needs only common things",
        "squat: no staple at level 4-5 needs only common things",
    ]


def test_uncommon_things_do_not_count_for_any_home() -> None:
    entries = ladder_of_squats((1, 1, 2, 2, 3, 3, 4, 5), linked=True)
    entries[4] = replace(entries[4], needs=(Need(uses=(Use.BAND,)),))
    assert errors(*entries) == ["squat: 7 entries with common things only, not 8"]
    entries[4] = replace(entries[4], needs=(Need(uses=(Use.BAND,), optional=True),))
    assert errors(*entries) == []

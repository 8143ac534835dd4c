"""Small problems made by hand: candidates with any seconds, cost and fills, so that every week can be tried out."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence

from core.effort.dose import Dose
from core.exercise.model import BodyShare, DoseKind, Exercise, Muscle, Pattern, Use
from core.fit.model import Binding
from core.house.model import Experience, Person
from core.house.wishes import DayWish, Pin, WeekWishes
from core.loads.model import Part, Recipe, Rung
from core.plan.menu import Candidate
from core.plan.model import Block, DayKind, DayPlan, FillState, Status, Week, WeekRequest
from core.plan.problem import DayChoice, Problem
from core.quantity import Measured

INES = Person(id="ines", name="Ines", body_mass_kg=68.0, height_cm=171.0, experience=Experience.SOME)
PATTERNS = (Pattern.SQUAT, Pattern.HINGE, Pattern.PUSH_LEVEL, Pattern.PULL_LEVEL)


def movement(name: str, pattern: Pattern = Pattern.SQUAT) -> Exercise:
    """A movement of repetitions that needs nothing."""
    return Exercise(
        id=name,
        name=name.replace("_", " "),
        patterns=((pattern, 1.0),),
        muscles=((Muscle.QUADS, 1.0),),
        dose=DoseKind.REPS,
        body=BodyShare(share=0.7),
        level=2,
        typical=(5, 15),
    )


def water(thing_id: str, volume_l: float) -> FillState:
    """A container at a fill of water."""
    return FillState(thing_id, "water", volume_l)


def held(*fills: tuple[FillState, int]) -> Rung:
    """A load of filled containers, each with how many pieces of it."""
    parts = tuple(
        Part(
            thing_id=state.thing_id,
            name=state.thing_id,
            count=pieces,
            each=Measured(state.volume_l),
            material_id=state.material_id,
            fill_l=state.volume_l,
        )
        for state, pieces in fills
    )
    return Rung(use=Use.HUG, mass=Measured(10.0), recipe=Recipe(parts=parts), set_up_s=0.0)


def candidate(
    exercise: Exercise,
    *,
    kind: DayKind = DayKind.STRENGTH,
    seconds: int = 300,
    cost: int = 0,
    sets: int = 3,
    fills: Sequence[tuple[FillState, int]] = (),
) -> Candidate:
    """A choice with these figures; strength work is hard."""
    states = tuple(sorted(state for state, _ in fills))
    key = f"{exercise.id}|{kind}|{sets}|{[(s.thing_id, s.volume_l, pieces) for s, pieces in fills]}"
    return Candidate(
        key=key,
        kind=kind,
        exercise=exercise,
        binding=Binding(exercise_id=exercise.id, load=held(*fills) if fills else None),
        dose=Dose(sets=sets, reps=(8, 12)),
        rest_s=90,
        seconds=seconds,
        cost=cost,
        states=states,
        hard=kind is DayKind.STRENGTH,
    )


def day_choice(
    weekday: int, menus: dict[DayKind, tuple[Candidate, ...]], *, minutes: float = 40, fixed_s: int = 300
) -> DayChoice:
    """A day with these menus."""
    return DayChoice(
        wish=DayWish(weekday=weekday, minutes=minutes),
        limit_s=round(minutes * 60),
        fixed_s=fixed_s,
        places={},
        menus=menus,
    )


def problem(
    days: Sequence[DayChoice],
    wanted: dict[DayKind, int],
    *,
    counts: dict[str, int] | None = None,
    pins: tuple[Pin, ...] = (),
    keep: Week | None = None,
) -> Problem:
    """The problem of choosing from these days for Ines."""
    wishes = WeekWishes(days=tuple(day.wish for day in days), pins=pins)
    return Problem(
        days=tuple(days),
        wanted=wanted,
        request=WeekRequest(wishes=wishes, keep=keep),
        person=INES,
        unmet_pins={},
        counts=counts or {},
    )


def as_block(chosen: Candidate) -> Block:
    """The candidate as it stands in a week."""
    return Block(
        exercise=chosen.exercise,
        binding=chosen.binding,
        dose=chosen.dose,
        rest_s=chosen.rest_s,
        seconds=chosen.seconds,
        hard=chosen.hard,
        states=chosen.states,
    )


def kept_week(kinds: Mapping[int, DayKind], chosen: Mapping[int, Sequence[Candidate]]) -> Week:
    """A week the person has: kinds and movements by weekday, rest elsewhere."""
    days = (
        DayPlan(
            weekday=weekday,
            kind=kinds.get(weekday, DayKind.REST),
            blocks=tuple(as_block(one) for one in chosen.get(weekday, ())),
        )
        for weekday in range(7)
    )
    return Week(status=Status.OPTIMAL, days=tuple(days))


def random_problem(seed: int, *, kept: bool = False) -> Problem:
    """Two to three days with a handful of candidates each, some with shared containers."""
    draw = random.Random(seed)
    counts = {"jug": draw.choice((1, 2)), "bucket": 1}
    weekdays = sorted(draw.sample(range(7), draw.choice((2, 2, 3))))
    most = 2 if len(weekdays) == 2 else 1
    days = [_random_day(draw, weekday, counts["jug"], most) for weekday in weekdays]
    wanted = {DayKind.STRENGTH: draw.choice((1, 2)), DayKind.EASY: 1}
    keep = None
    if kept:
        menus = {day.weekday: day.menus[DayKind.STRENGTH] for day in days}
        mine = {weekday: draw.sample(list(menu), min(2, len(menu))) for weekday, menu in menus.items()}
        keep = kept_week(dict.fromkeys(menus, DayKind.STRENGTH), mine)
    return problem(days, wanted, counts=counts, keep=keep)


def _random_day(draw: random.Random, weekday: int, jugs: int, most: int) -> DayChoice:
    strength = []
    for pattern in draw.sample(PATTERNS, 3):
        for number in range(draw.choice((1, 1, most))):
            fills = _random_fills(draw, jugs)
            cost = draw.randrange(60)
            for sets in (2, 3):
                one = movement(f"{pattern}_{number}", pattern)
                seconds = sets * draw.randrange(90, 160) + 30
                strength.append(candidate(one, seconds=seconds, cost=cost, sets=sets, fills=fills))
    walks = [candidate(movement("walk", Pattern.WALK), kind=DayKind.EASY, seconds=draw.randrange(600, 2400), sets=1)]
    moves = [
        candidate(
            movement(f"move_{number}", Pattern.MOBILITY),
            kind=DayKind.MOBILITY,
            seconds=draw.randrange(60, 300),
            cost=draw.randrange(30),
            sets=1,
        )
        for number in range(4)
    ]
    menus = {DayKind.STRENGTH: tuple(strength), DayKind.EASY: tuple(walks), DayKind.MOBILITY: tuple(moves)}
    return day_choice(weekday, menus, minutes=draw.choice((15, 20, 25, 40)))


def _random_fills(draw: random.Random, jugs: int) -> list[tuple[FillState, int]]:
    chosen = draw.choice(("none", "none", "jug", "pair", "bucket", "both"))
    jug, bucket = water("jug", draw.choice((1.0, 2.0))), water("bucket", draw.choice((3.0, 5.0)))
    return {
        "none": [],
        "jug": [(jug, 1)],
        "pair": [(jug, jugs)],
        "bucket": [(bucket, 1)],
        "both": [(jug, 1), (bucket, 1)],
    }[chosen]

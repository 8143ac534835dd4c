"""An invented week made by hand, without the solver, and a way to read what stands on a PDF page."""

from __future__ import annotations

import datetime
import io
from collections.abc import Iterator
from dataclasses import dataclass, replace

import pypdf

from catalog.materials import load_materials
from core.effort.dose import Dose
from core.exercise.model import BodyShare, DoseKind, Exercise, Muscle, Need, Pattern, Sides, Use
from core.fit.model import Binding, Held
from core.house.wishes import DayWish, WeekWishes
from core.loads.model import Part, Recipe, Rung
from core.paper.sheet import SheetRequest
from core.plan.model import Block, DayKind, DayPlan, FillStep, Status, Week
from core.quantity import Measured
from core.things.affordance import Grade
from tests.dipper import INES, dipper

MATERIALS = {material.id: material for material in load_materials()}
WATER = MATERIALS["water"]
MASS = Measured(14.1, 0.2)
MM = 72 / 25.4


def movement(name: str, **changes: object) -> Exercise:
    plain = Exercise(
        id=name.lower().replace(" ", "_"),
        name=name,
        patterns=((Pattern.SQUAT, 1.0),),
        muscles=((Muscle.QUADS, 1.0),),
        dose=DoseKind.REPS,
        body=BodyShare(share=0.7),
        level=2,
        typical=(5, 15),
        cues=("Stand tall.", "Sit down slowly."),
    )
    return replace(plain, **changes)  # type: ignore[arg-type]  # any fields, as the test names them


SQUAT = movement("Suitcase squat", needs=(Need(uses=(Use.PAIR,)),))
WALK = movement("Easy walk", dose=DoseKind.TIME, cues=("Talk in sentences.",))
LUNGE = movement("Split squat", sides=Sides.EACH)


def binding(exercise: Exercise, *, loaded: bool) -> Binding:
    part = Part(
        thing_id="carrier",
        name="Water carrier",
        count=2,
        each=MASS,
        material_id="water",
        material_name="Water",
        fill_l=13,
    )
    rung = Rung(use=Use.PAIR, mass=Measured(28.2, 0.4), recipe=Recipe(parts=(part,)), set_up_s=120)
    bench = Held(use=Use.SIT, thing_id="bench", name="Cabin bench", grade=Grade.GOOD, reason="it is fixed")
    cautions = ("Close the caps.",) if loaded else ("Mind the step.",)
    return Binding(
        exercise_id=exercise.id, load=rung if loaded else None, fixtures=() if loaded else (bench,), cautions=cautions
    )


def block(exercise: Exercise, dose: Dose, *, loaded: bool = False, rest_s: int = 90, seconds: int = 400) -> Block:
    return Block(
        exercise=exercise,
        binding=binding(exercise, loaded=loaded),
        dose=dose,
        rest_s=rest_s,
        seconds=seconds,
        hard=True,
    )


REPS = Dose(sets=4, reps=(9, 15), effort=7.5)
MINUTES = Dose(sets=1, seconds=(1800, 1800), effort=4)
WARM = block(movement("Arm swings"), Dose(sets=1, seconds=(60, 60), effort=3), rest_s=0, seconds=60)


def week() -> Week:
    """Tuesday strength with a pour, Saturday a walk, else rest."""
    strength = DayPlan(
        weekday=1,
        kind=DayKind.STRENGTH,
        place_id="towpath",
        limit_s=3000,
        seconds=920,
        warm_up=(WARM,),
        blocks=(block(SQUAT, REPS, loaded=True), block(LUNGE, replace(REPS, sets=2))),
        cool_down=(WARM,),
    )
    walk = DayPlan(
        weekday=5,
        kind=DayKind.EASY,
        place_id="towpath",
        limit_s=1800,
        seconds=1801,
        blocks=(block(WALK, MINUTES, rest_s=0),),
    )
    days = {1: strength, 5: walk}
    pour = FillStep(
        weekday=1,
        thing_id="carrier",
        name="Water carrier",
        material_id="water",
        volume_l=13.0,
        mass=MASS,
        for_exercise="Suitcase squat",
    )
    refill = replace(pour, during=True, volume_l=8.0, for_exercise="Split squat")
    return Week(
        status=Status.OPTIMAL,
        days=tuple(days.get(weekday, DayPlan(weekday=weekday, kind=DayKind.REST)) for weekday in range(7)),
        fills=(pour, pour, refill),
    )


WISHES = WeekWishes(days=(DayWish(weekday=1, minutes=50, start=datetime.time(18)), DayWish(weekday=5, minutes=30)))


def sheet_request(**changes: object) -> SheetRequest:
    plain = SheetRequest(week=week(), house=dipper(), person=INES, materials=MATERIALS, wishes=WISHES)
    return replace(plain, **changes)  # type: ignore[arg-type]  # any fields, as the test names them


@dataclass(frozen=True)
class Stroke:
    """A straight line on a page, in mm from the lower left corner."""

    x1: float
    y1: float
    x2: float
    y2: float

    @property
    def length(self) -> float:
        return float(((self.x2 - self.x1) ** 2 + (self.y2 - self.y1) ** 2) ** 0.5)


@dataclass(frozen=True)
class Box:
    """A rectangle on a page, in mm from the lower left corner."""

    left: float
    bottom: float
    width: float
    height: float


def opened(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def _operations(page: pypdf.PageObject) -> Iterator[tuple[str, list[float]]]:
    contents = page.get_contents()
    assert contents is not None
    for operands, operator in contents.operations:
        if operator in (b"m", b"l", b"re", b"cm"):
            yield operator.decode(), [float(number) for number in operands]


def drawn(page: pypdf.PageObject) -> tuple[list[Stroke], list[Box]]:
    """The lines and rectangles of a page; a change of scale would make all lengths untrue, so there may be none."""
    strokes, boxes, at = [], [], (0.0, 0.0)
    for operator, numbers in _operations(page):
        if operator == "cm":
            assert numbers == [1, 0, 0, 1, 0, 0]
        elif operator == "re":
            boxes.append(Box(*(number / MM for number in numbers)))
        elif operator == "m":
            at = (numbers[0] / MM, numbers[1] / MM)
        else:
            strokes.append(Stroke(*at, numbers[0] / MM, numbers[1] / MM))
    return strokes, boxes

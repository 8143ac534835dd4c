"""The words and pictures the window uses for what core names: families, patterns, demands, things."""

from __future__ import annotations

from core.exercise.model import Demand, Family, Muscle, Pattern, Use
from core.plan.model import DayKind
from gui.theme import Family as Colour
from gui.theme import MovePicture, ThingPicture, UsePicture

INVENTED = "(invented)"
"""Ends the name of the demo household, so that nobody takes it for their own."""
FAMILY_NAMES: dict[Family, str] = {
    Family.SQUAT: "Squat",
    Family.HINGE: "Hinge",
    Family.LUNGE: "Lunge and step",
    Family.PUSH_LEVEL: "Push, level",
    Family.PUSH_OVERHEAD: "Push, overhead",
    Family.PULL_LEVEL: "Pull, level",
    Family.PULL_OVERHEAD: "Pull, overhead",
    Family.CARRY: "Carry",
    Family.TRUNK: "Trunk",
    Family.GAIT: "Walk, run, climb",
    Family.MOBILITY: "Mobility",
}
FAMILY_COLOURS: dict[Family, Colour] = {
    Family.SQUAT: Colour.SQUAT,
    Family.HINGE: Colour.SQUAT,
    Family.LUNGE: Colour.SQUAT,
    Family.PUSH_LEVEL: Colour.PUSH,
    Family.PUSH_OVERHEAD: Colour.PUSH,
    Family.PULL_LEVEL: Colour.PULL,
    Family.PULL_OVERHEAD: Colour.PULL,
    Family.CARRY: Colour.CARRY,
    Family.TRUNK: Colour.TRUNK,
    Family.GAIT: Colour.GAIT,
    Family.MOBILITY: Colour.MOBILITY,
}
MOVE_PICTURES: dict[Pattern, MovePicture] = {
    Pattern.SQUAT: MovePicture.SQUAT,
    Pattern.HINGE: MovePicture.HINGE,
    Pattern.LUNGE: MovePicture.LUNGE,
    Pattern.PUSH_LEVEL: MovePicture.PUSH_LEVEL,
    Pattern.PUSH_OVERHEAD: MovePicture.PUSH_OVERHEAD,
    Pattern.PULL_LEVEL: MovePicture.PULL_LEVEL,
    Pattern.PULL_OVERHEAD: MovePicture.PULL_OVERHEAD,
    Pattern.CARRY: MovePicture.CARRY,
    Pattern.BRACE_FRONT: MovePicture.TRUNK,
    Pattern.BRACE_SIDE: MovePicture.BRACE_SIDE,
    Pattern.BRACE_TWIST: MovePicture.BRACE_TWIST,
    Pattern.GROUND_TO_OVERHEAD: MovePicture.GROUND_TO_OVERHEAD,
    Pattern.WALK: MovePicture.WALK,
    Pattern.RUN: MovePicture.RUN,
    Pattern.CLIMB: MovePicture.CLIMB,
    Pattern.MARCH: MovePicture.MARCH,
    Pattern.JUMP: MovePicture.JUMP,
    Pattern.QUICK_FEET: MovePicture.QUICK_FEET,
    Pattern.MOBILITY: MovePicture.MOBILITY,
    Pattern.WARM_UP: MovePicture.WARM_UP,
    Pattern.COOL_DOWN: MovePicture.COOL_DOWN,
}
PATTERN_NAMES: dict[Pattern, str] = {
    Pattern.SQUAT: "squat",
    Pattern.HINGE: "hinge",
    Pattern.LUNGE: "lunge",
    Pattern.PUSH_LEVEL: "level push",
    Pattern.PUSH_OVERHEAD: "push overhead",
    Pattern.PULL_LEVEL: "level pull",
    Pattern.PULL_OVERHEAD: "pull from overhead",
    Pattern.CARRY: "carry",
    Pattern.BRACE_FRONT: "front brace",
    Pattern.BRACE_SIDE: "side brace",
    Pattern.BRACE_TWIST: "twist brace",
    Pattern.GROUND_TO_OVERHEAD: "ground to overhead",
    Pattern.WALK: "walk",
    Pattern.RUN: "run",
    Pattern.CLIMB: "climb",
    Pattern.MARCH: "march",
    Pattern.JUMP: "jump",
    Pattern.QUICK_FEET: "quick feet",
    Pattern.MOBILITY: "mobility",
    Pattern.WARM_UP: "warm-up",
    Pattern.COOL_DOWN: "cool-down",
}
MUSCLE_NAMES: dict[Muscle, str] = {muscle: muscle.value.replace("_", " ") for muscle in Muscle}
DEMAND_NAMES: dict[Demand, str] = {
    Demand.DEEP_KNEE_BEND: "deep knee bend",
    Demand.LOADED_WRIST_EXTENSION: "weight on bent wrists",
    Demand.OVERHEAD_REACH: "reaching overhead",
    Demand.DEEP_SHOULDER_BEND: "deep shoulder bend",
    Demand.LOADED_SPINE_BEND: "loaded bend of the back",
    Demand.KNEELING: "kneeling",
    Demand.LYING_DOWN: "lying down",
    Demand.FLOOR_TRANSFER: "getting down to the floor",
    Demand.HANGING: "hanging",
    Demand.STRONG_GRIP: "strong grip",
    Demand.ONE_LEG_BALANCE: "balance on one leg",
    Demand.IMPACT: "jumping and landing",
    Demand.BREATH_HOLDING: "near-maximal brace",
}
USE_NAMES: dict[Use, str] = {
    Use.HUG: "hug to the chest",
    Use.FRONT: "in front",
    Use.ONE_HAND: "one hand",
    Use.TWO_HANDS: "two hands, hanging",
    Use.PAIR: "one in each hand",
    Use.BACK: "on the back",
    Use.SHOULDER: "on one shoulder",
    Use.OVERHEAD: "overhead",
    Use.BETWEEN_FEET: "lift between the feet",
    Use.DRAG: "drag",
    Use.SWING: "swing",
    Use.STEP: "step on",
    Use.SIT: "sit on",
    Use.HANDS: "lean hands on",
    Use.FEET: "rest feet on",
    Use.BALANCE: "hold for balance",
    Use.ROW_EDGE: "row from",
    Use.HANG_BAR: "hang from",
    Use.ANCHOR: "tie to",
    Use.TOWEL: "grip and pull",
    Use.BAND: "stretch",
    Use.STICK: "use as a stick",
    Use.SLIDER: "slide on",
    Use.PAD: "kneel and lie on",
    Use.WALL: "lean on",
    Use.DOOR_FRAME: "press against",
    Use.FLOOR: "lie and move on",
    Use.STAIRS: "climb",
    Use.ROUTE: "walk along",
    Use.BARBELL: "use as a barbell",
    Use.RACK: "use as a rack",
    Use.FLAT_BENCH: "use as a bench",
    Use.MACHINE: "use as a machine",
    Use.CABLE: "use as a cable",
    Use.RINGS: "use as rings",
}
USE_PICTURES: dict[Use, UsePicture] = {use: UsePicture(f"use-{use.value.replace('_', '-')}") for use in Use}
DAY_KIND_NAMES: dict[DayKind, str] = {
    DayKind.STRENGTH: "Strength",
    DayKind.EASY: "Easy run or walk",
    DayKind.INTERVALS: "Intervals",
    DayKind.LOADED_WALK: "Loaded walk",
    DayKind.MOBILITY: "Mobility",
    DayKind.REST: "Rest",
}
_PICTURE_OF = {picture.value.removeprefix("thing-"): picture for picture in ThingPicture}


def thing_picture(icon: str) -> ThingPicture:
    """The drawing for a thing's icon name as the catalog has it; a plain box for one there is no drawing of."""
    return _PICTURE_OF.get(icon, ThingPicture.OTHER)

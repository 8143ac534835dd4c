"""The words and pictures the window uses for what core names: families, patterns, demands, things."""

from __future__ import annotations

from core.exercise.model import Demand, Family, Pattern
from core.plan.model import DayKind
from gui.theme import Family as Colour
from gui.theme import MovePicture, ThingPicture

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
    Pattern.BRACE_SIDE: MovePicture.TRUNK,
    Pattern.BRACE_TWIST: MovePicture.TRUNK,
    Pattern.GROUND_TO_OVERHEAD: MovePicture.GROUND_TO_OVERHEAD,
    Pattern.WALK: MovePicture.WALK,
    Pattern.RUN: MovePicture.RUN,
    Pattern.CLIMB: MovePicture.CLIMB,
    Pattern.MARCH: MovePicture.WALK,
    Pattern.JUMP: MovePicture.JUMP,
    Pattern.QUICK_FEET: MovePicture.JUMP,
    Pattern.MOBILITY: MovePicture.MOBILITY,
    Pattern.WARM_UP: MovePicture.WARM_UP,
    Pattern.COOL_DOWN: MovePicture.COOL_DOWN,
}
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
DAY_KIND_NAMES: dict[DayKind, str] = {
    DayKind.STRENGTH: "Strength",
    DayKind.EASY: "Easy run or walk",
    DayKind.INTERVALS: "Intervals",
    DayKind.LOADED_WALK: "Loaded walk",
    DayKind.MOBILITY: "Mobility",
    DayKind.REST: "Rest",
}
_THING_PICTURES: dict[str, ThingPicture] = {
    "bottle": ThingPicture.BOTTLE,
    "jug": ThingPicture.JUG,
    "carrier": ThingPicture.JUG,
    "bucket": ThingPicture.BUCKET,
    "tin": ThingPicture.TIN,
    "sack": ThingPicture.SACK,
    "backpack": ThingPicture.BACKPACK,
    "tote": ThingPicture.TOTE,
    "crate": ThingPicture.BOX,
    "book": ThingPicture.BOOK,
    "block": ThingPicture.BRICK,
    "dumbbell": ThingPicture.DUMBBELL,
    "kettlebell": ThingPicture.KETTLEBELL,
    "band": ThingPicture.BAND,
    "towel": ThingPicture.TOWEL,
    "rope": ThingPicture.ROPE,
    "chair": ThingPicture.CHAIR,
    "stool": ThingPicture.STOOL,
    "table": ThingPicture.BENCH,
    "bed": ThingPicture.SOFA,
    "step": ThingPicture.STAIRS,
    "stairs": ThingPicture.STAIRS,
    "wall": ThingPicture.WALL,
    "door_frame": ThingPicture.DOOR_FRAME,
    "bar": ThingPicture.BEAM,
    "rail": ThingPicture.RAIL,
    "floor": ThingPicture.MAT,
    "route": ThingPicture.PATH,
    "tyre": ThingPicture.TYRE,
    "stick": ThingPicture.STICK,
    "pillow": ThingPicture.PILLOW,
    "slider": ThingPicture.MAT,
    "barbell": ThingPicture.DUMBBELL,
    "machine": ThingPicture.OTHER,
}


def thing_picture(icon: str) -> ThingPicture:
    """The drawing for a thing's icon name; a plain box for one this window does not know."""
    return _THING_PICTURES.get(icon, ThingPicture.OTHER)

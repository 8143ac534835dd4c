"""What an exercise is: patterns, muscles, needs, demands, the share of the body it moves, and its dose.

Shares are fractions of body mass (0 to 1), heights are cm, times are s. Numbers carry the ids of their sources.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Pattern(StrEnum):
    """Movement patterns, in the trade's words."""

    SQUAT = "squat"
    HINGE = "hinge"
    LUNGE = "lunge"
    PUSH_LEVEL = "push_level"
    PUSH_OVERHEAD = "push_overhead"
    PULL_LEVEL = "pull_level"
    PULL_OVERHEAD = "pull_overhead"
    CARRY = "carry"
    BRACE_FRONT = "brace_front"
    BRACE_SIDE = "brace_side"
    BRACE_TWIST = "brace_twist"
    GROUND_TO_OVERHEAD = "ground_to_overhead"
    WALK = "walk"
    RUN = "run"
    CLIMB = "climb"
    MARCH = "march"
    JUMP = "jump"
    QUICK_FEET = "quick_feet"
    MOBILITY = "mobility"
    WARM_UP = "warm_up"
    COOL_DOWN = "cool_down"


class Family(StrEnum):
    """The groups the house is judged by and the window colours; every pattern belongs to one."""

    SQUAT = "squat"
    HINGE = "hinge"
    LUNGE = "lunge"
    PUSH_LEVEL = "push_level"
    PUSH_OVERHEAD = "push_overhead"
    PULL_LEVEL = "pull_level"
    PULL_OVERHEAD = "pull_overhead"
    CARRY = "carry"
    TRUNK = "trunk"
    GAIT = "gait"
    MOBILITY = "mobility"


FAMILY_OF: dict[Pattern, Family] = {
    Pattern.SQUAT: Family.SQUAT,
    Pattern.HINGE: Family.HINGE,
    Pattern.LUNGE: Family.LUNGE,
    Pattern.PUSH_LEVEL: Family.PUSH_LEVEL,
    Pattern.PUSH_OVERHEAD: Family.PUSH_OVERHEAD,
    Pattern.PULL_LEVEL: Family.PULL_LEVEL,
    Pattern.PULL_OVERHEAD: Family.PULL_OVERHEAD,
    Pattern.CARRY: Family.CARRY,
    Pattern.BRACE_FRONT: Family.TRUNK,
    Pattern.BRACE_SIDE: Family.TRUNK,
    Pattern.BRACE_TWIST: Family.TRUNK,
    Pattern.GROUND_TO_OVERHEAD: Family.HINGE,
    Pattern.WALK: Family.GAIT,
    Pattern.RUN: Family.GAIT,
    Pattern.CLIMB: Family.GAIT,
    Pattern.MARCH: Family.GAIT,
    Pattern.JUMP: Family.GAIT,
    Pattern.QUICK_FEET: Family.GAIT,
    Pattern.MOBILITY: Family.MOBILITY,
    Pattern.WARM_UP: Family.MOBILITY,
    Pattern.COOL_DOWN: Family.MOBILITY,
}


class Muscle(StrEnum):
    """Muscle groups a set can be counted for."""

    QUADS = "quads"
    GLUTES = "glutes"
    HAMSTRINGS = "hamstrings"
    ADDUCTORS = "adductors"
    CALVES = "calves"
    SHINS = "shins"
    HIP_FLEXORS = "hip_flexors"
    BACK_EXTENSORS = "back_extensors"
    LATS = "lats"
    MID_BACK = "mid_back"
    CHEST = "chest"
    FRONT_SHOULDERS = "front_shoulders"
    SIDE_SHOULDERS = "side_shoulders"
    REAR_SHOULDERS = "rear_shoulders"
    BICEPS = "biceps"
    TRICEPS = "triceps"
    GRIP = "grip"
    ABDOMINALS = "abdominals"
    OBLIQUES = "obliques"
    NECK = "neck"


class Demand(StrEnum):
    """What an exercise asks of joints and nerves; a person may ask to spare any of them."""

    DEEP_KNEE_BEND = "deep_knee_bend"
    LOADED_WRIST_EXTENSION = "loaded_wrist_extension"
    OVERHEAD_REACH = "overhead_reach"
    DEEP_SHOULDER_BEND = "deep_shoulder_bend"
    LOADED_SPINE_BEND = "loaded_spine_bend"
    KNEELING = "kneeling"
    LYING_DOWN = "lying_down"
    FLOOR_TRANSFER = "floor_transfer"
    HANGING = "hanging"
    STRONG_GRIP = "strong_grip"
    ONE_LEG_BALANCE = "one_leg_balance"
    IMPACT = "impact"
    BREATH_HOLDING = "breath_holding"


class Use(StrEnum):
    """The ways a thing can serve: as a load in the hands or on the body, as a fixture, or as gym gear."""

    HUG = "hug"
    FRONT = "front"
    ONE_HAND = "one_hand"
    TWO_HANDS = "two_hands"
    PAIR = "pair"
    BACK = "back"
    SHOULDER = "shoulder"
    OVERHEAD = "overhead"
    BETWEEN_FEET = "between_feet"
    DRAG = "drag"
    SWING = "swing"
    STEP = "step"
    SIT = "sit"
    HANDS = "hands"
    FEET = "feet"
    BALANCE = "balance"
    ROW_EDGE = "row_edge"
    HANG_BAR = "hang_bar"
    ANCHOR = "anchor"
    TOWEL = "towel"
    BAND = "band"
    STICK = "stick"
    SLIDER = "slider"
    PAD = "pad"
    WALL = "wall"
    DOOR_FRAME = "door_frame"
    FLOOR = "floor"
    STAIRS = "stairs"
    ROUTE = "route"
    BARBELL = "barbell"
    RACK = "rack"
    FLAT_BENCH = "flat_bench"
    MACHINE = "machine"
    CABLE = "cable"
    RINGS = "rings"


LOAD_USES: tuple[Use, ...] = (
    Use.HUG,
    Use.FRONT,
    Use.ONE_HAND,
    Use.TWO_HANDS,
    Use.PAIR,
    Use.BACK,
    Use.SHOULDER,
    Use.OVERHEAD,
    Use.BETWEEN_FEET,
    Use.DRAG,
    Use.SWING,
    Use.BARBELL,
    Use.MACHINE,
    Use.CABLE,
)
GYM_USES: tuple[Use, ...] = (Use.BARBELL, Use.RACK, Use.FLAT_BENCH, Use.MACHINE, Use.CABLE, Use.RINGS)


class DoseKind(StrEnum):
    """What is counted."""

    REPS = "reps"
    TIME = "time"
    DISTANCE = "distance"


class Sides(StrEnum):
    """`both` works both sides at once, `each` one side after the other, `alternate` left and right in turn."""

    BOTH = "both"
    EACH = "each"
    ALTERNATE = "alternate"


class Posture(StrEnum):
    """The position the exercise is done in."""

    STANDING = "standing"
    SEATED = "seated"
    FLOOR = "floor"
    HANGING = "hanging"
    MOVING = "moving"


class Basis(StrEnum):
    """How far a share of body mass can be trusted."""

    PUBLISHED = "published"
    DERIVED = "derived"
    ORDINAL = "ordinal"


class Option(StrEnum):
    """Ways to make an exercise harder (or gentler) without another load."""

    SLOW_LOWERING = "slow_lowering"
    PAUSE = "pause"
    SHORTER_RANGE = "shorter_range"
    LONGER_RANGE = "longer_range"
    ONE_SIDE = "one_side"


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """One thing (or two alike) an exercise needs.

    `uses` are alternatives, best first. For a load, `mass_share` is the sensible range as a share of body mass and
    `optional` says the exercise also works with nothing. For a fixture, `height_cm` is the range of its working
    height and `bears` the share of body mass (plus any load) it must carry. `count` 2 asks for two alike.
    `space_m` is the clear straight distance a route must give.
    """

    uses: tuple[Use, ...]
    count: int = 1
    mass_share: tuple[float, float] | None = None
    height_cm: tuple[float, float] | None = None
    bears: float = 0.0
    space_m: float = 0.0
    optional: bool = False

    @property
    def is_load(self) -> bool:
        """Whether the need is a mass to move rather than something to stand, lean or hang on."""
        return self.uses[0] in LOAD_USES


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyShare:
    """Share of body mass that moves, at the usual geometry, or by height of hands or feet.

    `by_height` lists (height_cm, share), ascending, from one published series only; between points the share is
    interpolated linearly and never extrapolated. Positive heights are raised hands (or raised feet when
    `feet_raised`). `basis` is `ordinal` where no figure exists: the share then only ranks variants.
    """

    share: float
    by_height: tuple[tuple[float, float], ...] = ()
    feet_raised: bool = False
    basis: Basis = Basis.ORDINAL
    source_ids: tuple[str, ...] = ()


def _weight(pair: tuple[Pattern, float]) -> float:
    return pair[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """One movement a person can be asked to do, or (with gym needs) ask to have replaced.

    `load_share` is the part of the load in the hands that the working muscles move, `side_share` the part of the
    whole that one working side takes (0.5 with both sides at once, 1.0 on one). `staple` marks the movements a coach
    reaches for first in their pattern. `rep_s` is the usual time of a repetition; `typical` the usual range of the
    dose (reps, s or m). `level` runs from 1 (chair level) to 5 (hard), `impact` and `noise` from 0 to 3. `floor_m2`
    is the clear floor it needs, `reach_over_head` whether a load or the hands go above the head.
    """

    id: str
    name: str
    aliases: tuple[str, ...] = ()
    patterns: tuple[tuple[Pattern, float], ...]
    muscles: tuple[tuple[Muscle, float], ...]
    dose: DoseKind
    sides: Sides = Sides.BOTH
    posture: Posture = Posture.STANDING
    needs: tuple[Need, ...] = ()
    body: BodyShare
    load_share: float = 1.0
    side_share: float = 0.5
    demands: frozenset[Demand] = frozenset()
    level: int
    staple: bool = False
    impact: int = 0
    noise: int = 0
    floor_m2: float = 2.0
    reach_over_head: bool = False
    outdoors_only: bool = False
    skip_when_wet: bool = False
    rep_s: float = 4.0
    typical: tuple[float, float]
    options: tuple[Option, ...] = ()
    easier: tuple[str, ...] = ()
    harder: tuple[str, ...] = ()
    cues: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    source_ids: tuple[str, ...] = ()

    @property
    def main_pattern(self) -> Pattern:
        """The pattern with the greatest weight (the first of equals)."""
        return max(self.patterns, key=_weight)[0] if self.patterns[0][1] < 1 else self.patterns[0][0]

    @property
    def family(self) -> Family:
        """The family of the main pattern."""
        return FAMILY_OF[self.main_pattern]

    @property
    def needs_gym(self) -> bool:
        """Whether any need can only be met by gym gear; such entries are there to be asked about."""
        return any(all(use in GYM_USES for use in need.uses) and not need.optional for need in self.needs)

    @property
    def load_need(self) -> Need | None:
        """The need that is a mass to move, if there is one."""
        return next((need for need in self.needs if need.is_load), None)

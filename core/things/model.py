"""Household things as facts: what a thing is, how big, how it is held and closed, and what it may bear.

Facts describe; they never say what a thing is good for. That is computed in `core.things.affordance`.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from enum import StrEnum

from core.mass.model import Container, Packing, ScaleReading
from core.quantity import Measured


class Form(StrEnum):
    """What sort of object a thing is."""

    VESSEL = "vessel"
    TIN = "tin"
    SACK = "sack"
    BLOCK = "block"
    BOOK = "book"
    BAG = "bag"
    FREE_WEIGHT = "free_weight"
    SEAT = "seat"
    TABLE = "table"
    BED = "bed"
    STEP = "step"
    STAIRS = "stairs"
    BAR = "bar"
    ANCHOR_POINT = "anchor_point"
    RAIL = "rail"
    CLOTH = "cloth"
    ROPE = "rope"
    BAND = "band"
    STICK = "stick"
    PAD = "pad"
    SLIDER = "slider"
    WHEELED = "wheeled"
    WALL = "wall"
    DOOR_FRAME = "door_frame"
    FLOOR = "floor"
    ROUTE = "route"
    BARBELL = "barbell"
    RACK = "rack"
    FLAT_BENCH = "flat_bench"
    MACHINE = "machine"
    CABLE = "cable"
    RINGS = "rings"


class Handle(StrEnum):
    """What the hand closes round. `loop` is one webbing or cast loop, `straps` go over both shoulders."""

    NONE = "none"
    MOULDED = "moulded"
    BAIL = "bail"
    LOOP = "loop"
    TWO_LOOPS = "two_loops"
    STRAPS = "straps"
    BAR = "bar"
    RIM = "rim"
    CUT_OUT = "cut_out"


class Closure(StrEnum):
    """What keeps the contents in."""

    SOLID = "solid"
    SEALED = "sealed"
    LID = "lid"
    ZIP = "zip"
    TIED = "tied"
    OPEN = "open"


class Rigidity(StrEnum):
    """Whether the thing keeps its shape in the hands."""

    RIGID = "rigid"
    SEMI = "semi"
    SOFT = "soft"


class RatingOrigin(StrEnum):
    """Who says what a thing may bear."""

    NONE = "none"
    LABEL = "label"
    BUILDING = "building"
    OWN_CHECK = "own_check"


class Hazard(StrEnum):
    """Facts that forbid or limit uses."""

    FOLDING = "folding"
    WHEELED = "wheeled"
    GLASS = "glass"
    DUSTY = "dusty"
    SHARP = "sharp"
    HELD_CHEMICALS = "held_chemicals"
    SPLITS = "splits"
    SLIPPERY_WET = "slippery_wet"
    TIPS = "tips"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """A bag or crate that carries other things: inner volume and the most it should carry."""

    volume_l: float
    limit_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Flight:
    """A flight of steps: how many and how high each."""

    count: int
    rise_cm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """Everything the program knows about one piece of a thing.

    `mass` is the whole piece where it is fixed and the empty piece where it can be filled or packed. `surface_cm` is
    the height of the seat, edge, step, bar or anchor above the floor. `length_cm` >= `width_cm` are the outer plan
    size, `height_cm` the outer height of the object. `label_kg` is the net mass its label promises, where `mass` is
    that plus a tin or a bag. `grip_cm` is how thick the handle is, `grip_length_cm` how long, `grip_room_cm` the room
    for the fingers under it. `rating_kg` is the load it may bear; without one, `rating_origin` is NONE, or BUILDING
    for what is built to be walked on and names no figure. `route_m` and `area_m2` describe places to move. `pack_l` is
    the room it takes in a bag (None: its box).
    """

    form: Form
    mass: Measured | None = None
    label_kg: float | None = None
    container: Container | None = None
    hold: Hold | None = None
    length_cm: float = 0.0
    width_cm: float = 0.0
    height_cm: float = 0.0
    surface_cm: float | None = None
    handle: Handle = Handle.NONE
    grip_cm: float = 3.0
    grip_length_cm: float = 12.0
    grip_room_cm: float = 5.0
    closure: Closure = Closure.SOLID
    rigidity: Rigidity = Rigidity.RIGID
    rating_kg: float | None = None
    rating_origin: RatingOrigin = RatingOrigin.NONE
    flight: Flight | None = None
    hazards: frozenset[Hazard] = frozenset()
    fixed: bool = False
    outdoors: bool = False
    pack_l: float | None = None
    route_m: float = 0.0
    area_m2: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ThingKind:
    """A catalog entry: a sort of thing people have at home, with typical facts and the words people use for it.

    `common` is how usual it is at home: 0 rare, 1 many homes, 2 nearly every home. `cost` ranks what it takes to get
    one: 0 nothing, 1 cheap, 2 some money, 3 real gear. `fills` are the material ids it may be filled with. `standing`
    pairs each number's name with the id of the source it comes from, or of the word that it is assumed or remembered.
    """

    id: str
    name: str
    plural: str
    aliases: tuple[str, ...] = ()
    group: str
    icon: str
    facts: Facts
    fills: tuple[str, ...] = ()
    common: int = 1
    cost: int = 1
    cautions: tuple[str, ...] = ()
    standing: tuple[tuple[str, str], ...] = ()

    @property
    def source_ids(self) -> tuple[str, ...]:
        """The sources of all numbers, each once, sorted."""
        return tuple(sorted({source for _, source in self.standing}))


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnCheck:
    """The person's own recorded check that a thing bore a load: stands still, braced against a wall."""

    date: datetime.date
    took_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """What is in a container now: material, volume and packing."""

    material_id: str
    volume_l: float
    packing: Packing = Packing.LOOSE


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Something this house owns: a kind, how many alike, and facts the owner corrected or measured.

    `place_ids` empty means it can be carried to any place. `facts` are the kind's facts with the owner's changes.
    """

    id: str
    kind_id: str
    name: str
    count: int = 1
    facts: Facts
    icon: str = "other"
    place_ids: tuple[str, ...] = ()
    fills: tuple[str, ...] = ()
    fill: Fill | None = None
    readings: tuple[ScaleReading, ...] = ()
    own_check: OwnCheck | None = None
    cautions: tuple[str, ...] = field(default=())

"""A planned week: days, blocks, fills and checks. Times are whole seconds, weekdays run from 0 (Monday) to 6."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.effort.dose import Dose
from core.exercise.model import Exercise, Family
from core.fit.model import Binding
from core.house.wishes import WeekWishes
from core.quantity import Measured


class DayKind(StrEnum):
    """What a day is for."""

    STRENGTH = "strength"
    EASY = "easy"
    INTERVALS = "intervals"
    LOADED_WALK = "loaded_walk"
    MOBILITY = "mobility"
    REST = "rest"


KIND_WORDS: dict[DayKind, str] = {
    DayKind.STRENGTH: "Strength",
    DayKind.EASY: "Easy run or walk",
    DayKind.INTERVALS: "Intervals",
    DayKind.LOADED_WALK: "Loaded walk",
    DayKind.MOBILITY: "Mobility",
    DayKind.REST: "Rest",
}


class Status(StrEnum):
    """How a plan ended: proven best, out of time or stopped with the best so far, or no plan can meet the wishes."""

    OPTIMAL = "optimal"
    CUT_SHORT = "cut_short"
    STOPPED = "stopped"
    IMPOSSIBLE = "impossible"


@dataclass(frozen=True, slots=True, order=True)
class FillState:
    """A container at one fill; two blocks with the same state share one pour."""

    thing_id: str
    material_id: str
    volume_l: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One movement in a session: what, with which things, how much, how long, and why it was chosen."""

    exercise: Exercise
    binding: Binding
    dose: Dose
    rest_s: int
    seconds: int
    hard: bool
    states: tuple[FillState, ...] = ()
    why: tuple[str, ...] = ()

    @property
    def family(self) -> Family:
        """Family of the main pattern."""
        return self.exercise.family


@dataclass(frozen=True, slots=True, kw_only=True)
class DayPlan:
    """One day: its kind, place, the seconds it takes out of those there are, and its blocks in order."""

    weekday: int
    kind: DayKind
    place_id: str | None = None
    limit_s: int = 0
    seconds: int = 0
    warm_up: tuple[Block, ...] = ()
    blocks: tuple[Block, ...] = ()
    cool_down: tuple[Block, ...] = ()
    pour_s: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class FillStep:
    """A pour: before `weekday` starts, or `during` it before the block of `for_exercise`."""

    weekday: int
    thing_id: str
    name: str
    material_id: str
    volume_l: float
    mass: Measured
    during: bool = False
    for_exercise: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A rule the week is held to, whether it is met, and a note in numbers. `hard` rules can't be broken by a plan."""

    rule: str
    met: bool
    note: str = ""
    hard: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """The smallest set of wishes that can't hold together, in words, and what would help."""

    wishes: tuple[str, ...]
    ways_out: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """A plan for seven days, or the clash that makes one impossible. Stopped before there was one: no days."""

    status: Status
    days: tuple[DayPlan, ...] = ()
    fills: tuple[FillStep, ...] = ()
    checks: tuple[Check, ...] = ()
    clash: Clash | None = None
    objective: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Wave:
    """What kind of week within a block: `sets` and `effort_shift` scale the usual dose."""

    name: str = "build"
    sets: float = 1.0
    effort_shift: float = 0.0


USUAL_WAVE = Wave()


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekRequest:
    """Everything a plan depends on besides house, person and catalog.

    `keep` is the plan the person already has: with it, the fewest changes come before anything else. `last` are the
    exercise ids of the week before, for variety.
    """

    wishes: WeekWishes
    wave: Wave = USUAL_WAVE
    keep: Week | None = None
    keep_loads: bool = True
    last: tuple[str, ...] = ()

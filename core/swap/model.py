"""A swap asked for and its answers: closeness in parts, reasons, cautions, and everything left out with its reason."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.effort.capacity import Prescription
from core.effort.dose import Dose
from core.exercise.model import Demand, Exercise
from core.fit.model import Binding


class Cause(StrEnum):
    """What is in the way of the movement asked for."""

    NO_GEAR = "no_gear"
    HURTS = "hurts"
    TOO_HARD = "too_hard"
    TOO_EASY = "too_easy"
    TOO_LOUD = "too_loud"
    NO_ROOM = "no_room"


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """How much each part of closeness counts (they sum to 1), and what a step in level or kind costs.

    Judgement, no source: the pattern says what the movement is for, muscles and effort what a set of it is worth, and
    the set-up whether it will be done at all. `level_step` is taken off the effort for each level away from the one
    aimed at, `other_kind` off the total where one of the two is single-joint work and the other is not.
    """

    pattern: float = 0.40
    muscles: float = 0.25
    effort: float = 0.25
    set_up: float = 0.10
    level_step: float = 0.04
    other_kind: float = 0.15


WEIGHTS = Weights()
CAUSE_WEIGHTS: dict[Cause, Weights] = {
    Cause.NO_GEAR: WEIGHTS,
    Cause.HURTS: Weights(pattern=0.45, muscles=0.30, effort=0.15, set_up=0.10),
    Cause.TOO_HARD: Weights(pattern=0.45, muscles=0.25, effort=0.20, set_up=0.10, level_step=0.02),
    Cause.TOO_EASY: Weights(pattern=0.40, muscles=0.25, effort=0.30, set_up=0.05, level_step=0.02),
    Cause.TOO_LOUD: Weights(pattern=0.35, muscles=0.25, effort=0.25, set_up=0.15),
    Cause.NO_ROOM: Weights(pattern=0.40, muscles=0.25, effort=0.20, set_up=0.15),
}
CLEARLY_WORSE = 0.10
"""The movement asked for stands first, unless another is closer by more than this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapRequest:
    """The movement, what is in the way, what to spare beyond the person's own list, and the dose it was set at."""

    asked: Exercise
    cause: Cause = Cause.NO_GEAR
    spare: frozenset[Demand] = frozenset()
    prescription: Prescription | None = None
    most_noise: int = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Closeness:
    """How close the training effect should be, each part from 0 to 1, `total` weighted."""

    total: float
    pattern: float
    muscles: float
    effort: float
    set_up: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One movement that can be done instead, ready to train."""

    exercise: Exercise
    binding: Binding
    dose: Dose
    closeness: Closeness
    why: tuple[str, ...]
    cautions: tuple[str, ...]


class Ground(StrEnum):
    """What kind of reason leaves a movement out, in the order in which a person looks for a way out."""

    THINGS = "things"
    PLACE = "place"
    SPARED = "spared"
    NOISE = "noise"
    LEVEL = "level"
    EFFORT = "effort"
    CAUSE = "cause"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A movement that was considered and is not offered, with the reason and what kind of reason that is."""

    exercise_id: str
    name: str
    why: str
    ground: Ground


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """The answers, best first, what was left out, and a sentence on the load asked for against what is in reach.

    `chain` leads up to the movement asked for where that is beyond the person now: easier ones first, itself last.
    """

    asked: Exercise
    answers: tuple[Answer, ...]
    left_out: tuple[LeftOut, ...]
    note: str = ""
    chain: tuple[Exercise, ...] = ()

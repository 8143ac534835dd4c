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
    """How much each part of closeness counts (they sum to 1), and what moves the total beside them.

    Judgement, no source: the pattern says what the movement is for, muscles and effort what a set of it is worth, and
    the set-up whether it will be done at all. `form` is the part of the pattern that how it is done decides.
    `level_step` is taken off the effort for each level away from the one aimed at, `level_step_by_feel` where no load
    tells how hard it is. `other_kind` is taken off the total where one of the two is single-joint work and the other
    is not, `same_demands` for what it asks of the joints as the one that hurts does, where nothing is spared by name.
    `drill` is taken off where strength was asked for and hardly any of its effort is in reach. `staple` is added for
    what a coach reaches for first, `next_step` for the next easier (harder) one by the catalog.
    """

    pattern: float = 0.40
    muscles: float = 0.25
    effort: float = 0.25
    set_up: float = 0.10
    form: float = 0.35
    level_step: float = 0.12
    level_step_by_feel: float = 0.15
    other_kind: float = 0.15
    same_demands: float = 0.0
    staple: float = 0.03
    drill: float = 0.05
    next_step: float = 0.0


WEIGHTS = Weights()
CAUSE_WEIGHTS: dict[Cause, Weights] = {
    Cause.NO_GEAR: WEIGHTS,
    Cause.HURTS: Weights(pattern=0.45, muscles=0.30, effort=0.15, set_up=0.10, same_demands=0.15, next_step=0.03),
    Cause.TOO_HARD: Weights(pattern=0.50, muscles=0.25, effort=0.15, set_up=0.10, form=0.15, next_step=0.06),
    Cause.TOO_EASY: Weights(pattern=0.40, muscles=0.25, effort=0.30, set_up=0.05, form=0.15, next_step=0.06),
    Cause.TOO_LOUD: Weights(
        pattern=0.35, muscles=0.25, effort=0.25, set_up=0.15, level_step_by_feel=0.08, next_step=0.06
    ),
    Cause.NO_ROOM: Weights(pattern=0.40, muscles=0.25, effort=0.20, set_up=0.15),
}
BY_MUSCLE = Weights(pattern=0.25, muscles=0.45, effort=0.20, set_up=0.10)
"""Where one muscle is what the movement is for (single-joint work, a stretch), it counts more than the pattern."""
BY_BOUT = Weights(pattern=0.35, muscles=0.20, effort=0.35, set_up=0.10)
"""Walking, running and quick feet are told apart by how long a bout lasts at least as much as by their muscles."""
CLEARLY_WORSE, SAME_MOVEMENT = 0.15, 0.10
"""How much closer another must be to stand before the movement asked for, and before the same with another thing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapRequest:
    """The movement, what is in the way, what to spare beyond the person's own list, and the dose it was set at.

    `using` is the id of a thing that every answer must use; empty for any things or none.
    """

    asked: Exercise
    cause: Cause = Cause.NO_GEAR
    spare: frozenset[Demand] = frozenset()
    prescription: Prescription | None = None
    most_noise: int = 3
    using: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Closeness:
    """How close the training effect should be, each part from 0 to 1, `total` weighted.

    `ahead` is how much farther another may be before it comes first: the movement asked for, and the same movement
    with another thing, stand ahead unless clearly worse.
    """

    total: float
    pattern: float
    muscles: float
    effort: float
    set_up: float
    ahead: float = 0.0


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

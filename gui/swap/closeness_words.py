"""What the numbers of closeness mean for one answer, what it asks of the body, and what it does not carry over."""

from __future__ import annotations

from collections.abc import Iterator

from core.exercise.model import DoseKind, Exercise, Muscle
from core.swap.model import Answer, Cause, SwapRequest
from core.swap.ranking import weights_for
from gui.desk.names import MUSCLE_NAMES, PATTERN_NAMES

COUNTS, WORKED = 0.2, 0.4
"""A pattern of less weight than the first is left unsaid; a muscle of more weight than the second is worked hard."""
LESS = 0.6
FULL, MOST = 0.95, 0.7
ANOTHER_WAY = 0.9
"""Below this a movement of the same pattern is done differently: on one side, lying, without a load."""
DOSE_NAMES = {DoseKind.REPS: "repetitions", DoseKind.TIME: "time", DoseKind.DISTANCE: "distance"}


def closeness_lines(answer: Answer, asked: Exercise, cause: Cause) -> tuple[tuple[str, str], ...]:
    """Each part with what its number means here, and how the parts make the total."""
    close = answer.closeness
    return (
        (f"Pattern {100 * close.pattern:.0f}", _pattern(answer, asked)),
        (f"Muscles {100 * close.muscles:.0f}", _muscles(answer.exercise, asked)),
        (f"Effort {100 * close.effort:.0f}", _effort(answer, asked)),
        (f"Set-up {100 * close.set_up:.0f}", _set_up(answer)),
        (f"In all {100 * close.total:.0f}", _total(answer, asked, cause)),
    )


def not_carried(exercise: Exercise, asked: Exercise) -> tuple[str, ...]:
    """What the movement asked for trains and this one doesn't, or only in part."""
    return tuple(_not_carried(exercise, asked))


def minutes(seconds: float) -> str:
    """A time to set up: “10 s”, “2 min”."""
    return f"{round(seconds / 5) * 5:.0f}\u00a0s" if seconds < 90 else f"{seconds / 60:.0f}\u00a0min"


def _not_carried(exercise: Exercise, asked: Exercise) -> Iterator[str]:
    less = _less_worked(exercise, asked)
    if less:
        yield f"Works {listed(less)} less."
    here = dict(exercise.patterns)
    lost = [PATTERN_NAMES[pattern] for pattern, weight in asked.patterns if weight >= COUNTS and pattern not in here]
    if lost:
        yield f"The {listed(lost)} part of it is not trained."
    if exercise.dose is not asked.dose:
        counted = f"Counted by {DOSE_NAMES[exercise.dose]} instead of {DOSE_NAMES[asked.dose]}"
        yield f"{counted}: what you gain moves over in part."


def _less_worked(exercise: Exercise, asked: Exercise) -> list[str]:
    here = dict(exercise.muscles)
    return [
        MUSCLE_NAMES[muscle]
        for muscle, weight in asked.muscles
        if weight >= WORKED and here.get(muscle, 0.0) < LESS * weight
    ]


def _pattern(answer: Answer, asked: Exercise) -> str:
    exercise = answer.exercise
    way = ", done in another way" if answer.closeness.pattern < ANOTHER_WAY else ""
    mine, wanted = PATTERN_NAMES[exercise.main_pattern], PATTERN_NAMES[asked.main_pattern]
    if exercise.main_pattern is not asked.main_pattern:
        return f"{mine} instead of {wanted}, a near pattern."
    more = [
        name for pattern, weight in exercise.patterns if weight >= COUNTS and (name := PATTERN_NAMES[pattern]) != mine
    ]
    if exercise.patterns == asked.patterns or not more:
        return f"the same pattern, {mine}{way}."
    return f"mainly the same, {mine}, with some {listed(more)}{way}."


def _muscles(exercise: Exercise, asked: Exercise) -> str:
    less = _less_worked(exercise, asked)
    shared = [name for muscle in _strongest(asked) if (name := MUSCLE_NAMES[muscle]) not in less]
    both = f"both work {listed(shared)}" if shared else "none of the main muscles alike"
    return f"{both}; this one works {listed(less)} less." if less else f"{both}."


def _strongest(exercise: Exercise) -> list[Muscle]:
    return [muscle for muscle, weight in sorted(exercise.muscles, key=lambda pair: -pair[1]) if weight >= WORKED][:4]


def _effort(answer: Answer, asked: Exercise) -> str:
    reached = answer.dose.reachable
    how = "all of it" if reached >= FULL else "most of it" if reached >= MOST else "only part of it"
    steps = answer.exercise.level - asked.level
    words = f"{how} can be reached in this dose"
    if not steps:
        return f"{words}."
    many = "one level" if abs(steps) == 1 else f"{abs(steps)} levels"
    return f"{words}; {many} {'harder' if steps > 0 else 'easier'} to do."


def _set_up(answer: Answer) -> str:
    if answer.binding.set_up_s <= 0:
        return "nothing to fetch or fill."
    return f"about {minutes(answer.binding.set_up_s)} to fetch and fill."


def _total(answer: Answer, asked: Exercise, cause: Cause) -> str:
    weights = weights_for(SwapRequest(asked=asked, cause=cause))
    parts = (("pattern", weights.pattern), ("muscles", weights.muscles), ("effort", weights.effort))
    words = ", ".join(f"{name} {weight:.0%}" for name, weight in (*parts, ("set-up", weights.set_up)))
    ahead = " Being the same movement it stands before others as close." if answer.closeness.ahead else ""
    return f"the parts count {words}; 100 would be the same movement at the same effort.{ahead}"


def listed(words: list[str]) -> str:
    """“quads”, “quads and glutes”, “quads, glutes and grip”."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}" if words else ""

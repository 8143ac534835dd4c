"""Warm-up and cool-down: a minute each of easy moves that suit the kind of day and what is done in it.

First what raises the pulse (or lets it sink), then moves for the patterns and muscles of the session. A rehearsal with
a light load comes last, and on strength days only; running and bouncing only where the session runs or jumps. The
order (raise, then activate and mobilise, then rehearse) follows Jeffreys 2007.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.exercise.model import Exercise, Family, Muscle, Pattern, Posture
from core.fit.bind import bind
from core.fit.model import Binding, Missing
from core.plan.day_menus import short_dose
from core.plan.menu import MenuRequest, allowed
from core.plan.model import Block, DayKind

MOVE_S = 60
"""Warm-up and cool-down are planned a minute a movement."""
PULSE = frozenset({Pattern.WALK, Pattern.MARCH, Pattern.QUICK_FEET})
LANDING = frozenset({Pattern.RUN, Pattern.JUMP})
PULSE_SHARE = 3
"""One move in so many raises the pulse."""
WORKED = 0.5
"""The weight from which a muscle or pattern of a movement counts as worked by it."""


@dataclass(frozen=True, slots=True)
class _Able:
    """A move that can be done here, with its binding and how well it suits the session."""

    exercise: Exercise
    bound: Binding
    suits: float

    @property
    def patterns(self) -> frozenset[Pattern]:
        """What it is besides a warm-up or cool-down."""
        return frozenset(pattern for pattern, _ in self.exercise.patterns)

    @property
    def is_rehearsal(self) -> bool:
        """Whether it practises the session's own work: with a load, or at a run."""
        return self.exercise.load_need is not None or Pattern.RUN in self.patterns


@dataclass(frozen=True, slots=True)
class _Session:
    """What easy moves are chosen for: the kind of day, its patterns and muscles, whether it lands hard."""

    kind: DayKind
    patterns: frozenset[Pattern]
    muscles: frozenset[Muscle]

    def fits(self, exercise: Exercise) -> bool:
        """Whether a move belongs to such a day at all."""
        patterns = {pattern for pattern, _ in exercise.patterns}
        if exercise.load_need is not None and self.kind is not DayKind.STRENGTH:
            return False
        if Pattern.RUN in patterns and Pattern.RUN not in self.patterns:
            return False
        return not (LANDING & patterns) or bool(LANDING & self.patterns) or self.kind is DayKind.INTERVALS

    def suits(self, exercise: Exercise, *, outdoors: bool) -> float:
        """How well it prepares for (or winds down from) the session; sitting, and the ground outdoors, count less."""
        own = sum(weight for pattern, weight in exercise.patterns if pattern in self.patterns)
        muscles = sum(weight for muscle, weight in exercise.muscles if muscle in self.muscles)
        less = {Posture.SEATED: 0.5, Posture.FLOOR: 1.0 if outdoors else 0.0}.get(exercise.posture, 0.0)
        return 2 * own + muscles / sum(weight for _, weight in exercise.muscles) - less


def easy_moves(
    order: MenuRequest, pattern: Pattern, seconds: int, kind: DayKind, blocks: tuple[Block, ...]
) -> tuple[Block, ...]:
    """Warm-up (or cool-down, by `pattern`) of so many seconds for a day of this kind with these blocks.

    Where too few moves can be done here, the last one simply goes on longer, so the minutes always add up.
    """
    able = _able(order, pattern, _session(kind, blocks))
    if not able:
        return ()
    count = min(seconds // MOVE_S, len(able))
    picked = _in_order(_picked(able, count), pattern)
    each = [MOVE_S] * count
    each[-1] += seconds - MOVE_S * count
    return tuple(_block(one, length) for one, length in zip(picked, each, strict=True))


def _session(kind: DayKind, blocks: tuple[Block, ...]) -> _Session:
    patterns = {pattern for block in blocks for pattern, weight in block.exercise.patterns if weight >= WORKED}
    muscles = {muscle for block in blocks for muscle, weight in block.exercise.muscles if weight >= WORKED}
    return _Session(kind, frozenset(patterns), frozenset(muscles))


def _able(order: MenuRequest, pattern: Pattern, session: _Session) -> list[_Able]:
    found = []
    outdoors = order.setting.place.outdoors
    for exercise in order.catalog.exercises_by_family[Family.MOBILITY]:
        if exercise.main_pattern is pattern and session.fits(exercise) and allowed(exercise, order):
            bound = bind(exercise, order.setting, wanted_kg=0.0)
            if not isinstance(bound, Missing):
                found.append(_Able(exercise, bound, session.suits(exercise, outdoors=outdoors)))
    return sorted(found, key=lambda one: (-one.suits, one.exercise.id))


def _picked(able: list[_Able], count: int) -> list[_Able]:
    """The best pulse raisers for a third of the time, a rehearsal if there is one, then whatever suits best."""
    pulse = [one for one in able if one.patterns & PULSE and not one.is_rehearsal]
    rehearsals = [one for one in able if one.is_rehearsal]
    rest = [one for one in able if one not in pulse and one not in rehearsals]
    raisers = max(1, count // PULSE_SHARE)
    wanted = [*pulse[:raisers], *rehearsals[: int(count > 2)], *rest, *pulse[raisers:], *rehearsals]
    return list(dict.fromkeys(wanted))[:count]


def _in_order(picked: list[_Able], pattern: Pattern) -> list[_Able]:
    """Pulse first; in a warm-up the rehearsal last, in a cool-down the run first."""
    last = 3 if pattern is Pattern.WARM_UP else -1

    def place(one: _Able) -> tuple[int, int, str]:
        group = last if one.is_rehearsal else 0 if one.patterns & PULSE else 1
        return group, one.exercise.level, one.exercise.id

    return sorted(picked, key=place)


def _block(one: _Able, seconds: int) -> Block:
    dose = replace(short_dose(one.exercise), reps=None, distance_m=None, seconds=(seconds, seconds))
    return Block(exercise=one.exercise, binding=one.bound, dose=dose, rest_s=0, seconds=seconds, hard=False)

"""A clock that runs through the steps of a session: frozen states, one for every moment, from a monotonic time given.

Timed steps end by themselves, counted ones when the person goes on. The clock can pause, skip and go back. A look that
comes much later than the one before means the machine slept (or was stopped): that time does not count, and the clock
stands paused, so that nobody wakes the machine to a session that ran away.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.plan.session_steps import Step

LONGEST_GAP_S = 5.0
"""Looks come several times a second; one this late means sleep."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunningClock:
    """Where a session stands: the step, the seconds spent in it, when it was looked at last, and what steps took.

    `looked_s` None is paused (or not begun). `taken_s` holds the seconds each step took so far, by its place.
    """

    steps: tuple[Step, ...]
    at: int = 0
    spent_s: float = 0.0
    looked_s: float | None = None
    slept: bool = False
    taken_s: tuple[tuple[int, float], ...] = ()

    @property
    def done(self) -> bool:
        """Whether every step is over."""
        return self.at >= len(self.steps)

    @property
    def running(self) -> bool:
        """Whether time runs."""
        return self.looked_s is not None and not self.done

    @property
    def step(self) -> Step | None:
        """The present step; None at the end."""
        return None if self.done else self.steps[self.at]

    @property
    def left_s(self) -> float:
        """Seconds left of a timed step (below 0 never), seconds planned less spent of a counted one."""
        step = self.step
        return 0.0 if step is None else max(0.0, step.seconds - self.spent_s)

    @property
    def session_left_s(self) -> float:
        """Planned seconds from here to the end."""
        return self.left_s + sum(step.seconds for step in self.steps[self.at + 1 :])

    def run(self, now_s: float) -> RunningClock:
        """Begin, or go on after a pause; nothing changes while it runs."""
        return self if self.running else replace(self, looked_s=now_s, slept=False)

    def pause(self, now_s: float) -> RunningClock:
        """Let time stand still."""
        return replace(self.look(now_s), looked_s=None)

    def look(self, now_s: float) -> RunningClock:
        """The clock as it stands now: time goes on, timed steps that are over end."""
        if self.looked_s is None or self.done:
            return self
        passed_s = max(0.0, now_s - self.looked_s)
        if passed_s > LONGEST_GAP_S:
            return replace(self, looked_s=None, slept=True)
        clock = replace(self, looked_s=now_s, spent_s=self.spent_s + passed_s)
        while (step := clock.step) is not None and step.timed and clock.spent_s >= step.seconds:
            clock = replace(_gone_on(clock, step.seconds), spent_s=clock.spent_s - step.seconds)
        return clock

    def skip(self, now_s: float) -> RunningClock:
        """On to the next step: a counted one is done, a timed one is cut short."""
        clock = self.look(now_s)
        return clock if clock.done else _gone_on(clock, clock.spent_s)

    def back(self, now_s: float) -> RunningClock:
        """The present step from its beginning, or the one before when it has only begun."""
        clock = self.look(now_s)
        at = clock.at - 1 if clock.spent_s < 2.0 or clock.done else clock.at
        kept = tuple(pair for pair in clock.taken_s if pair[0] < max(at, 0))
        return replace(clock, at=max(at, 0), spent_s=0.0, taken_s=kept)


def _gone_on(clock: RunningClock, took_s: float) -> RunningClock:
    """At the beginning of the next step, with what this one took."""
    return replace(clock, at=clock.at + 1, spent_s=0.0, taken_s=(*clock.taken_s, (clock.at, took_s)))

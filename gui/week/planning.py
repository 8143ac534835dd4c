"""Planning a week off the GUI thread: one answer, the newest request wins, and Stop stops the solver at once."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Protocol, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal

from core.house.model import House, Person
from core.house.wishes import WEEKDAYS, Pin
from core.knowledge import Catalog
from core.plan.model import Week, WeekRequest
from gui.worker import Errand, Report

T = TypeVar("T")

AGAIN_MS = 20
"""A stop can meet a solver that has not quite begun; it is asked again until the work is over."""


class Solver(Protocol):
    """What a brake needs of a running solver."""

    def stop_search(self) -> None:
        """End the search as soon as may be."""


class Stopped(Exception):
    """Nobody waits for this plan any more."""


class Brake:
    """Stops a solve from another thread; `hold` is handed to the work, which gives it every solver it starts."""

    def __init__(self) -> None:
        self._pulled = threading.Event()
        self._begun = threading.Event()
        self._over = threading.Event()
        self._guard = threading.Lock()
        self._solver: Solver | None = None

    def hold(self, solver: Solver) -> None:
        """Remember the running solver; raises `Stopped` once the brake was pulled."""
        with self._guard:
            if self._pulled.is_set():
                raise Stopped
            self._solver = solver

    def pull(self) -> None:
        """Stop what runs and let nothing more begin."""
        with self._guard:
            self._pulled.set()
            if self._solver is not None:
                self._solver.stop_search()

    @contextmanager
    def held(self) -> Iterator[None]:
        """Round the work itself, so that others know whether it runs."""
        self._begun.set()
        try:
            yield
        finally:
            self._over.set()

    def runs(self, wait_s: float = 0.0) -> bool:
        """Whether the work has begun and, `wait_s` later, not ended."""
        return self._begun.is_set() and not self._over.wait(wait_s)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOrder:
    """What a plan is made from."""

    request: WeekRequest
    house: House
    person: Person
    catalog: Catalog


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What the worker brings back: a checked week, what is wrong with it, the pins in its clash with their words."""

    week: Week
    errors: tuple[str, ...] = ()
    pins: tuple[tuple[Pin, str], ...] = ()


def plan(order: PlanOrder, brake: Brake, report: Report) -> Planned:
    """Plan and check a week. Runs in the worker; the solver is loaded there at its first use."""
    from core.plan.validate import find_week_errors
    from core.plan.week import plan_week

    report(0, 1)
    week = plan_week(order.request, order.house, order.person, order.catalog, on_start=brake.hold)
    errors = tuple(find_week_errors(week, order.request, order.house, order.person))
    return Planned(week=week, errors=errors, pins=_pins_in(week, order))


def _pins_in(week: Week, order: PlanOrder) -> tuple[tuple[Pin, str], ...]:
    """The pins that a way out of the clash names."""
    from core.plan.clash import pin_words

    if week.clash is None:
        return ()
    named = [(pin, pin_words(pin, order.catalog)) for pin in order.request.wishes.pins]
    ways = week.clash.ways_out
    return tuple(pair for pair in named if any(pair[1] in way and WEEKDAYS[pair[0].weekday] in way for way in ways))


class Solving(QObject):
    """Runs work that solves, and can be stopped at once. `busy_changed` tells whether an answer is awaited."""

    busy_changed = Signal(bool)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._errand = Errand(self)
        self._errand.busy_changed.connect(self.busy_changed)
        self._brake: Brake | None = None
        self._stopping: list[Brake] = []
        self._again = QTimer(self)
        self._again.setInterval(AGAIN_MS)
        self._again.timeout.connect(self._pull)

    def start(
        self,
        work: Callable[[Brake, Report], T],
        *,
        done: Callable[[T], None],
        failed: Callable[[Exception], None],
    ) -> None:
        """Begin `work`; whatever ran before is stopped and its answer dropped."""
        self._halt()
        brake = self._brake = Brake()

        def carried_out(report: Report) -> T:
            with brake.held():
                return work(brake, report)

        self._errand.start(carried_out, done=done, failed=failed)

    def stop(self) -> None:
        """Nobody waits any more: no answer will come."""
        self._halt()
        self._errand.stop()

    def is_busy(self) -> bool:
        """Whether an answer is awaited."""
        return self._errand.is_busy()

    def close(self) -> None:
        """Stop, and wait for the thread to end."""
        self.stop()
        self._again.stop()
        for brake in self._stopping:
            while brake.runs(AGAIN_MS / 1000):
                brake.pull()
        self._errand.close()

    def _halt(self) -> None:
        if self._brake is not None:
            self._brake.pull()
            self._stopping.append(self._brake)
            self._brake = None
            self._again.start()

    def _pull(self) -> None:
        self._stopping = [brake for brake in self._stopping if brake.runs()]
        for brake in self._stopping:
            brake.pull()
        if not self._stopping:
            self._again.stop()

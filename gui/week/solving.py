"""Work that solves, off the GUI thread: one answer, the newest request wins, and Stop stops the solver at once."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Protocol, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal

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

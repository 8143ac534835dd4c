"""Long work off the GUI thread: a plain callable in, exactly one answer out, the newest request wins.

The work gets a `Report`, a callable `report(done, all) -> bool`; False means "stop, nobody waits any more". The work is
a function of a frozen request and knows neither Qt nor threads. Answers arrive on the GUI thread.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import partial
from typing import Any, TypeVar

from PySide6.QtCore import QCoreApplication, QObject, Qt, Signal

T = TypeVar("T")

Report = Callable[[int, int], bool]
Work = Callable[[Report], T]


class _Post(QObject):
    """Carries answers from the worker to the GUI thread. The running work holds it too, so it outlives both ends."""

    answer = Signal(object)
    step = Signal(object, int, int)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Ticket:
    """One request, and whom to tell."""

    work: Work[Any]
    done: Callable[[Any], None]
    failed: Callable[[Exception], None]
    stop: threading.Event


@dataclass(frozen=True, slots=True, kw_only=True)
class _Answer:
    ticket: _Ticket
    value: object = None
    error: Exception | None = None


class _Crew:
    """The one thread of an errand, made at its first work; it outlives the errand's Qt part just long enough to end."""

    def __init__(self) -> None:
        self._pool: ThreadPoolExecutor | None = None
        self._last: _Ticket | None = None

    def take(self, ticket: _Ticket, post: _Post) -> None:
        """Work on this next."""
        self._last = ticket
        if self._pool is None:
            self._pool = ThreadPoolExecutor(max_workers=1, thread_name_prefix="errand")
        self._pool.submit(_carry_out, ticket, post)

    def end(self, *_ignored: object) -> None:
        """Stop what is being done, and wait for the thread to end."""
        if self._last is not None:
            self._last.stop.set()
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)
            self._pool = None


class Errand(QObject):
    """One kind of long work of its owner, such as "plan the week"; at most one request counts at a time.

    `busy_changed` tells whether an answer is awaited, `moved` (done, all) how far it is. Closed when the application
    quits, when its parent goes, and by `close`, which waits until no thread is left.
    """

    busy_changed = Signal(bool)
    moved = Signal(int, int)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._post = _Post()
        self._post.answer.connect(self._deliver, Qt.ConnectionType.QueuedConnection)
        self._post.step.connect(self._step, Qt.ConnectionType.QueuedConnection)
        self._current: _Ticket | None = None
        self._crew = _Crew()
        self.destroyed.connect(partial(_Crew.end, self._crew))  # the owner may go while work is being done
        app = QCoreApplication.instance()
        if app is not None:
            app.aboutToQuit.connect(self.close)

    def start(self, work: Work[T], *, done: Callable[[T], None], failed: Callable[[Exception], None]) -> None:
        """Ask for `work`, then one of `done`, `failed` is called; an older request is stopped, its answer dropped."""
        self._abandon()
        ticket = _Ticket(work=work, done=done, failed=failed, stop=threading.Event())
        self._current = ticket
        self.busy_changed.emit(True)
        self._crew.take(ticket, self._post)

    def stop(self) -> None:
        """Nobody waits any more: no answer will come."""
        if self._abandon():
            self.busy_changed.emit(False)

    def is_busy(self) -> bool:
        """Whether an answer is awaited."""
        return self._current is not None

    def close(self) -> None:
        """Stop, and wait for the thread to end."""
        self.stop()
        self._crew.end()

    def _abandon(self) -> bool:
        waiting, self._current = self._current, None
        if waiting is not None:
            waiting.stop.set()
        return waiting is not None

    def _deliver(self, answer: _Answer) -> None:
        if answer.ticket is not self._current:
            return
        self._current = None
        self.busy_changed.emit(False)
        if answer.error is not None:
            answer.ticket.failed(answer.error)
        else:
            answer.ticket.done(answer.value)

    def _step(self, ticket: _Ticket, done: int, total: int) -> None:
        if ticket is self._current:
            self.moved.emit(done, total)


def _carry_out(ticket: _Ticket, post: _Post) -> None:
    """Runs in the worker thread."""

    def report(done: int, total: int) -> bool:
        if ticket.stop.is_set():
            return False
        post.step.emit(ticket, done, total)
        return True

    if ticket.stop.is_set():
        return
    try:
        answer = _Answer(ticket=ticket, value=ticket.work(report))
    except Exception as error:  # whatever went wrong belongs to the one who asked
        answer = _Answer(ticket=ticket, error=error)
    post.answer.emit(answer)

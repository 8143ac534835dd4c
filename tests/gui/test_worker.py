"""Long work: off the GUI thread, one answer, the newest wins, nothing left behind."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QThread
from pytestqt.qtbot import QtBot

from gui.worker import Errand, Report
from tests.gui.looking import settle


class Desk(QObject):
    """An owner that keeps what it is told."""

    def __init__(self) -> None:
        super().__init__()
        self.answers: list[object] = []
        self.errors: list[Exception] = []
        self.threads: list[QThread] = []

    def done(self, value: object) -> None:
        self.answers.append(value)
        self.threads.append(QThread.currentThread())

    def failed(self, error: Exception) -> None:
        self.errors.append(error)


@pytest.fixture
def desk() -> Desk:
    return Desk()


@pytest.fixture
def errand(desk: Desk) -> Iterator[Errand]:
    made = Errand(desk)
    yield made
    made.close()


def held(gate: threading.Event, value: str) -> Callable[[Report], str]:
    """Work that waits for `gate`."""

    def work(_report: Report) -> str:
        gate.wait(5)
        return value

    return work


def test_work_runs_off_the_gui_thread_and_answers_on_it(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    here = threading.get_ident()
    errand.start(lambda _report: threading.get_ident(), done=desk.done, failed=desk.failed)
    qtbot.waitUntil(lambda: len(desk.answers) == 1)
    assert desk.answers[0] != here
    assert desk.threads == [QThread.currentThread()]


def test_only_the_newest_request_is_answered(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    gate = threading.Event()
    for value in ("first", "second", "third"):
        errand.start(held(gate, value), done=desk.done, failed=desk.failed)
    gate.set()
    qtbot.waitUntil(lambda: bool(desk.answers))
    settle(60)
    assert desk.answers == ["third"]


def test_an_older_request_is_told_to_stop(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    begun = threading.Event()
    told: list[bool] = []

    def patient(report: Report) -> str:
        begun.set()
        while report(0, 1):
            threading.Event().wait(0.005)
        told.append(True)
        return "old"

    errand.start(patient, done=desk.done, failed=desk.failed)
    assert begun.wait(5)
    errand.start(lambda _report: "new", done=desk.done, failed=desk.failed)
    qtbot.waitUntil(lambda: bool(desk.answers))
    assert (told, desk.answers) == ([True], ["new"])


def test_an_error_is_the_answer_when_work_fails(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    def broken(_report: Report) -> str:
        raise ValueError("no such thing")

    errand.start(broken, done=desk.done, failed=desk.failed)
    qtbot.waitUntil(lambda: bool(desk.errors))
    settle(40)
    assert [str(error) for error in desk.errors] == ["no such thing"]
    assert desk.answers == []


def test_progress_is_told_on_the_way(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    seen: list[tuple[int, int]] = []
    errand.moved.connect(lambda done, total: seen.append((done, total)))
    errand.start(lambda report: [report(at, 3) for at in (1, 2, 3)], done=desk.done, failed=desk.failed)
    qtbot.waitUntil(lambda: bool(desk.answers))
    assert seen == [(1, 3), (2, 3), (3, 3)]


def test_after_stop_no_answer_comes(errand: Errand, desk: Desk) -> None:
    gate = threading.Event()
    errand.start(held(gate, "late"), done=desk.done, failed=desk.failed)
    assert errand.is_busy()
    errand.stop()
    gate.set()
    settle(60)
    assert (errand.is_busy(), desk.answers, desk.errors) == (False, [], [])


def test_busy_is_told_when_it_begins_and_ends(errand: Errand, desk: Desk, qtbot: QtBot) -> None:
    busy: list[bool] = []
    errand.busy_changed.connect(busy.append)
    errand.start(lambda _report: "x", done=desk.done, failed=desk.failed)
    qtbot.waitUntil(lambda: bool(desk.answers))
    assert busy == [True, False]


def test_close_waits_for_the_thread(errand: Errand, desk: Desk) -> None:
    ended = threading.Event()

    def slow(report: Report) -> str:
        while report(0, 1):
            threading.Event().wait(0.005)
        ended.set()
        return "x"

    errand.start(slow, done=desk.done, failed=desk.failed)
    threading.Event().wait(0.03)
    errand.close()
    assert ended.is_set()
    assert not any(thread.name.startswith("errand") for thread in threading.enumerate())


def test_when_its_owner_goes_the_work_stops_and_no_thread_is_left() -> None:
    begun, ended = threading.Event(), threading.Event()

    def work(report: Report) -> None:
        begun.set()
        while report(0, 1):
            threading.Event().wait(0.005)
        ended.set()

    owner = QObject()
    Errand(owner).start(work, done=lambda _none: None, failed=lambda _error: None)
    assert begun.wait(5)
    owner.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert ended.is_set()
    assert not any(thread.name.startswith("errand") for thread in threading.enumerate())

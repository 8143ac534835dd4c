"""A long log is looked into by person, exercise and day; what is damaged in it is named. All entries invented."""

from __future__ import annotations

import datetime
import sqlite3
import threading
from contextlib import closing
from dataclasses import replace

import pytest

from core.house.log import DatedSet, LoggedExercise, LoggedSession, LoggedSet, SessionDay
from core.store.commands import AddSession, LoadRecord, RemoveThing
from core.store.faults import Damaged
from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import MONDAY, SESSION, open_record

TUESDAY = MONDAY + datetime.timedelta(days=1)
SQUAT = LoggedSet(exercise_id="goblet_squat", reps=10, load_kg=12, u95_kg=0.4)
EARLIER = LoggedSession(
    id="s9", person_id="ines", date=datetime.date(2026, 4, 30), minutes=30, sets=(SQUAT, replace(SQUAT, reps=9))
)
OTHERS = LoggedSession(id="s2", person_id="tomas", date=TUESDAY, minutes=20, effort=5, sets=(SQUAT,))


@pytest.fixture
def logged(dipper: Record) -> Record:
    for session in (EARLIER, OTHERS):
        dipper.do(AddSession(session))
    return dipper


def test_sessions_in_brief_are_one_persons_oldest_first(logged: Record) -> None:
    assert logged.session_days("ines") == (
        SessionDay(session_id="s9", date=EARLIER.date, minutes=30, effort=None, sets=2),
        SessionDay(session_id="s1", date=MONDAY, minutes=48.5, effort=6, sets=3),
    )
    assert [day.session_id for day in logged.session_days("tomas")] == ["s2"]
    assert logged.session_days("nobody") == ()


def test_the_sets_of_an_exercise_are_one_persons_oldest_first(logged: Record) -> None:
    first, second, third = logged.sets_of("ines", "goblet_squat")
    assert first == DatedSet(session_id="s9", date=EARLIER.date, done=SQUAT)
    assert second.done == replace(SQUAT, reps=9)
    assert (third.session_id, third.date, third.done) == ("s1", MONDAY, SESSION.sets[0])
    assert [each.done for each in logged.sets_of("ines", "plank")] == [SESSION.sets[1]]
    assert logged.sets_of("tomas", "plank") == ()


def test_logged_exercises_are_counted_with_their_last_day(logged: Record) -> None:
    assert logged.logged_exercises("ines") == (
        LoggedExercise(exercise_id="goblet_squat", sets=3, last=MONDAY),
        LoggedExercise(exercise_id="loaded_walk", sets=1, last=MONDAY),
        LoggedExercise(exercise_id="plank", sets=1, last=MONDAY),
    )


def test_the_brief_looks_tell_the_same_as_the_whole_sessions(logged: Record) -> None:
    whole = logged.sessions("ines")
    assert [(day.session_id, day.minutes, day.sets) for day in logged.session_days("ines")] == [
        (session.id, session.minutes, len(session.sets)) for session in whole
    ]
    squats = [done for session in whole for done in session.sets if done.exercise_id == "goblet_squat"]
    assert [each.done for each in logged.sets_of("ines", "goblet_squat")] == squats


@pytest.mark.parametrize(
    ("damage", "words"),
    [
        ("UPDATE session SET minutes = 9e9", "session “s1” holds “9000000000.0” where an amount belongs"),
        ("UPDATE session SET date = '2026-13-40'", "“s1” has the date “2026-13-40”"),
        ("UPDATE training_set SET load_kg = 9e999, u95_kg = 9e999", "session “s1” holds “inf”"),
    ],
)
def test_what_is_damaged_is_named(dipper_folder: DataFolder, damage: str, words: str) -> None:
    with closing(sqlite3.connect(dipper_folder.database)) as connection, connection:
        connection.execute(damage)
    with open_record(dipper_folder.folder) as record, pytest.raises(Damaged, match=words):
        _ = record.session_days("ines"), record.sets_of("ines", "goblet_squat")


def test_a_worker_may_bring_in_a_record_while_the_window_reads_from_memory(dipper: Record) -> None:
    before = dipper.contents()
    sessions = tuple(replace(SESSION, id=f"s{n}") for n in range(200))
    coming = replace(before, sessions=sessions, things=())
    finished: list[str] = []

    def bring_in() -> None:
        finished.append(dipper.do(LoadRecord(before, coming)).sentence)

    worker = threading.Thread(target=bring_in)
    worker.start()
    seen = set()
    while worker.is_alive():
        seen.add(len(dipper.house().things))
    worker.join()
    assert finished == ["Loaded the record of Dipper"]
    assert seen <= {4, 0}
    assert dipper.house().things == ()


def test_commands_from_several_threads_wait_for_each_other(dipper: Record) -> None:
    def log(name: str) -> None:
        for n in range(5):
            dipper.do(AddSession(replace(SESSION, id=f"{name}{n}")))

    workers = [threading.Thread(target=log, args=(name,)) for name in ("a", "b")]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert len(dipper.sessions()) == 11
    dipper.do(RemoveThing("stool"))
    for _ in range(11):
        dipper.undo()
    assert dipper.sessions() == (SESSION,)

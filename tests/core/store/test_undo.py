"""Whatever is done, taking all back gives the start and repeating all gives the end, also after closing."""

from __future__ import annotations

import shutil
import tempfile
from dataclasses import replace
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from core.errors import InputError
from core.house.log import LoggedSession
from core.house.model import House
from core.store.changes import HouseFacts
from core.store.commands import (
    AddOwn,
    AddPerson,
    AddPlace,
    AddReading,
    AddSession,
    AddTest,
    AddThing,
    ChangeHouse,
    ChangeOwn,
    ChangePerson,
    ChangePlace,
    ChangeSession,
    ChangeSettings,
    ChangeThing,
    Command,
    ForgetWeek,
    LoadHouse,
    LoadRecord,
    RemoveOwn,
    RemovePerson,
    RemovePlace,
    RemoveReading,
    RemoveSession,
    RemoveTest,
    RemoveThing,
    SaveBlock,
    SaveWeek,
    SetFill,
    SetFills,
    SetOwnCheck,
    SetPins,
    SetWishes,
)
from core.store.contents import Contents
from tests.core.store import strategies
from tests.core.store.examples import DIPPER, INES, STOOL, TEST, TOWPATH, WISHES, open_record

PLACES = st.sampled_from(["cabin", "towpath", "quay"])
PEOPLE = st.sampled_from(["ines", "tomas"])
THINGS = st.sampled_from(["carrier", "coal_bag", "stool"])
OWN = st.sampled_from(["fender", "lock_walk"])
SESSIONS = st.sampled_from(["s1", "s2"])

COMMANDS: st.SearchStrategy[Command] = st.one_of(
    st.builds(AddThing, strategies.things(THINGS, PLACES)),
    st.builds(ChangeThing, strategies.things(THINGS, PLACES)),
    st.builds(RemoveThing, THINGS),
    st.builds(SetFill, THINGS, st.none() | strategies.fills),
    st.builds(SetFills, st.tuples(st.tuples(THINGS, st.none() | strategies.fills))),
    st.builds(AddReading, THINGS, strategies.readings),
    st.builds(RemoveReading, THINGS, st.integers(0, 1)),
    st.builds(SetOwnCheck, THINGS, st.none() | strategies.own_checks),
    st.builds(AddOwn, strategies.own_entries(OWN)),
    st.builds(ChangeOwn, strategies.own_entries(OWN)),
    st.builds(RemoveOwn, OWN.map("own_{}".format)),
    st.builds(AddPlace, strategies.places(PLACES)),
    st.builds(ChangePlace, strategies.places(PLACES)),
    st.builds(RemovePlace, PLACES),
    st.builds(AddPerson, strategies.people(PEOPLE)),
    st.builds(ChangePerson, strategies.people(PEOPLE)),
    st.builds(RemovePerson, PEOPLE),
    st.builds(SetWishes, PEOPLE, strategies.wishes(PLACES)),
    st.builds(SetPins, PEOPLE, st.lists(strategies.pins, max_size=2).map(tuple)),
    st.builds(SaveWeek, PEOPLE, strategies.weeks),
    st.builds(SaveBlock, PEOPLE, strategies.blocks),
    st.builds(ForgetWeek, PEOPLE),
    st.builds(ChangeHouse, strategies.house_facts),
    st.builds(ChangeSettings, strategies.settings(PEOPLE)),
    st.builds(LoadHouse, st.just(DIPPER), st.just((("ines", WISHES),)), st.booleans()),
    st.builds(LoadHouse, st.just(House(name="Heron", places=(TOWPATH,), people=(INES,))), st.just(()), st.booleans()),
)


class Editing(RuleBasedStateMachine):
    """Commands, undo, redo and reopening against a plain list of what the record held after each step."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="fillmark-undo-"))
        self.record = open_record(self.folder)
        self.steps = [self.record.contents()]
        self.at = 0

    @initialize(start=st.sampled_from([(), (LoadHouse(DIPPER),)]))
    def begin(self, start: tuple[Command, ...]) -> None:
        for command in start:
            self.do(command)

    @rule(command=COMMANDS)
    def do(self, command: Command) -> None:
        try:
            self.record.do(command)
        except InputError:
            return
        self.took_effect()

    @rule(session=strategies.sessions(PEOPLE), session_id=SESSIONS)
    def log(self, session: LoggedSession, session_id: str) -> None:
        """Add the session, or change the one with its id."""
        new = replace(session, id=session_id)
        present = next((old for old in self.record.sessions() if old.id == session_id), None)
        self.do(AddSession(new) if present is None else ChangeSession(present, new))

    @rule()
    def forget(self) -> None:
        for session in self.record.sessions()[:1]:
            self.do(RemoveSession(session))
        for result in self.record.tests()[:1]:
            self.do(RemoveTest(result))

    @rule()
    def test(self) -> None:
        if not self.record.tests():
            self.do(AddTest(TEST))

    @rule()
    def bring_in(self) -> None:
        coming = Contents(house=HouseFacts(name="Heron"), places=(TOWPATH,), things=(replace(STOOL, place_ids=()),))
        self.do(LoadRecord(self.record.contents(), coming))

    def took_effect(self) -> None:
        self.steps[self.at + 1 :] = [self.record.contents()]
        self.at += 1

    @precondition(lambda self: self.at > 0)
    @rule()
    def undo(self) -> None:
        self.record.undo()
        self.at -= 1

    @precondition(lambda self: self.at < len(self.steps) - 1)
    @rule()
    def redo(self) -> None:
        self.record.redo()
        self.at += 1

    @rule()
    def reopen(self) -> None:
        self.record.close()
        self.record = open_record(self.folder)

    @invariant()
    def holds_what_it_should_and_memory_is_disk(self) -> None:
        known = self.record.state()
        self.record._held = None
        read = self.record.state()
        assert read == known
        assert all(list(read.entries[part]) == list(known.entries[part]) for part in read.entries)
        self.is_at(self.steps[self.at])

    def is_at(self, step: Contents) -> None:
        """The record holds this; what is kept in memory, which is as on disk, is read from there."""
        state = self.record.state()
        assert state.house == House(
            name=step.house.name,
            places=step.places,
            things=step.things,
            people=step.people,
            fills=step.house.fills,
            cup_l=step.house.cup_l,
            own=step.own,
        )
        assert state.settings == step.settings
        assert dict(state.wishes) == {one.person_id: one.wishes for one in step.wishes}
        assert dict(state.weeks) == {one.person_id: one.week for one in step.weeks}
        assert dict(state.blocks) == {one.person_id: one.block for one in step.blocks}
        assert sorted(self.record.sessions(), key=lambda session: session.id) == list(step.sessions)
        assert sorted(self.record.tests(), key=lambda test: test.id) == list(step.tests)

    def teardown(self) -> None:
        for step in reversed(self.steps[: self.at]):
            self.record.undo()
            self.is_at(step)
        assert self.record.contents() == self.steps[0]
        assert self.record.undo_text is None
        for step in self.steps[1:]:
            self.record.redo()
            self.is_at(step)
        assert self.record.contents() == self.steps[-1]
        assert self.record.redo_text is None
        self.record.close()
        shutil.rmtree(self.folder)


Editing.TestCase.settings = settings(max_examples=8, stateful_step_count=20)
TestEditing = Editing.TestCase

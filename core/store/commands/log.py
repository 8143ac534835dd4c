"""Edits of the log. Sessions can be many thousand, so a command brings the entry it changes along."""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.errors import InputError
from core.house.log import LoggedSession, LoggedTest
from core.house.model import Capacity
from core.store.changes import Change, Part
from core.store.commands.base import Plan, put
from core.store.state import State


@dataclass(frozen=True, slots=True)
class AddSession:
    """Log a session."""

    session: LoggedSession

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return _session(state, self.session, "Logged", after=self.session)


@dataclass(frozen=True, slots=True)
class ChangeSession:
    """Replace a logged session, as read, by another with the same id."""

    before: LoggedSession
    after: LoggedSession

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        if self.before.id != self.after.id:
            raise InputError(self.after.id, f"is not the session {self.before.id}", "keep the id of the one you change")
        return _session(state, self.after, "Changed", before=self.before, after=self.after)


@dataclass(frozen=True, slots=True)
class RemoveSession:
    """Remove a logged session, as read."""

    session: LoggedSession

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return _session(state, self.session, "Removed", before=self.session)


@dataclass(frozen=True, slots=True)
class AddTest:
    """Log a test result; `capacities` are what the person can do from now on, where the test tells that."""

    test: LoggedTest
    capacities: tuple[Capacity, ...] | None = None

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        logged = _test(state, self.test, "Logged", after=self.test)
        if self.capacities is None:
            return logged
        person = replace(state.person(self.test.person_id), capacities=self.capacities)
        return Plan((*logged.changes, put(state, Part.PERSON, person.id, person)), logged.sentence)


@dataclass(frozen=True, slots=True)
class RemoveTest:
    """Remove a test result, as read."""

    test: LoggedTest

    def plan(self, state: State) -> Plan:
        """See `Command`."""
        return _test(state, self.test, "Removed", before=self.test)


def _session(state: State, about: LoggedSession, verb: str, **sides: LoggedSession | None) -> Plan:
    name = state.person(about.person_id).name
    change = Change(part=Part.SESSION, id=about.id, before=sides.get("before"), after=sides.get("after"))
    return Plan((change,), f"{verb} the session of {name} on {about.date.isoformat()}")


def _test(state: State, about: LoggedTest, verb: str, **sides: LoggedTest | None) -> Plan:
    name = state.person(about.person_id).name
    change = Change(part=Part.TEST, id=about.id, before=sides.get("before"), after=sides.get("after"))
    return Plan((change,), f"{verb} a test of {name} on {about.date.isoformat()}")

"""What a command is: a frozen value that plans its changes for a state, without touching the disk."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container, Iterable
from dataclasses import dataclass
from typing import Protocol

from core.errors import InputError
from core.store.changes import Change, Part, Value
from core.store.state import State, some_names

ENTRY_WORDS = {Part.OWN: "an own entry"}
"""What an entry is called where the word for its part alone would not do."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The changes a command makes and the sentence for the undo line ("Removed Coal bag")."""

    changes: tuple[Change, ...]
    sentence: str


class Command(Protocol):
    """An edit."""

    def plan(self, state: State) -> Plan:
        """What it changes; `InputError` when it cannot be done in this state."""
        ...


def added(state: State, part: Part, entry_id: str, value: Value) -> Change:
    """A new entry; `InputError` if its id is taken."""
    if state.find(part, entry_id) is not None:
        what = ENTRY_WORDS.get(part, f"a {part}")
        raise InputError(entry_id, f"is already the id of {what} here", "give the new one another id")
    return Change(part=part, id=entry_id, before=None, after=value)


def put(state: State, part: Part, entry_id: str, value: Value | None) -> Change:
    """An entry set to `value`, whether or not it was there."""
    return Change(part=part, id=entry_id, before=state.find(part, entry_id), after=value)


def known_places(state: State, place_ids: Iterable[str | None]) -> None:
    """`InputError` unless each place mentioned is there."""
    for place_id in place_ids:
        if place_id is not None and place_id not in state.places:
            rule = "is no place here"
            raise InputError(place_id, rule, f"add the place first, or choose one of: {some_names(state.places)}")


def free_id(name: str, taken: Container[str]) -> str:
    """An id for something new: its name in small plain letters, with a number if that is taken."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    stem = re.sub(r"[^a-z0-9]+", "_", plain).strip("_")[:60] or "item"
    number = 1
    wanted = stem
    while wanted in taken:
        number += 1
        wanted = f"{stem}_{number}"
    return wanted

"""The line beside the title of the week screen."""

from __future__ import annotations

from core.house.model import Person

PLANNING = "planning…"
BUILT_FROM = "built from what you own"
CHANGED = "your changes are not in it yet"


def subtitle(person: Person | None, when: str, *, stale: bool) -> str:
    """Whose week it is and when; above all that it no longer fits the wishes."""
    if person is None:
        return BUILT_FROM
    if stale:
        return CHANGED
    return f"{when} · {person.name}" if when else f"for {person.name} · {BUILT_FROM}"

"""Finding the thing someone means: one of the house by its name, else a thing read from the words themselves."""

from __future__ import annotations

import re

from catalog.household.things import things_in
from core.errors import InputError
from core.things.model import Thing
from gui.command_line.home import Home

SURE = 86.0
"""A likeness of names (0 to 100) from which a slip of the pen is forgiven."""
CLEAR_LEAD = 4.0


def thing_named(text: str, home: Home) -> Thing:
    """The thing meant; `InputError` when several of the house could be, or nothing is known by that name."""
    things = home.house.things
    wanted = _words(text)
    exact = [one for one in things if wanted in (_words(one.name), _words(one.id))]
    begun = [one for one in things if wanted and _begins(wanted, _words(one.name))]
    found = exact or begun or _alike(text, things)
    if len(found) == 1 or exact:
        return found[0]
    if len(found) > 1:
        names = ", ".join(one.name for one in found[:5])
        raise InputError(text, "could be more than one thing here", f"choose one of: {names}")
    return _typed(text, home)


def _words(text: str) -> tuple[str, ...]:
    return tuple(re.findall(r"\d+(?:[.,]\d+)?|[^\W\d_]+", text[:200].casefold()))


def _begins(wanted: tuple[str, ...], own: tuple[str, ...]) -> bool:
    """Whether every typed word begins a word of the name (a plural's s aside)."""
    return all(any(word.startswith((typed, typed.removesuffix("s") or typed)) for word in own) for typed in wanted)


def _alike(text: str, things: tuple[Thing, ...]) -> list[Thing]:
    """The one thing whose name resembles a text without numbers; a number makes it another size, not a slip."""
    if re.search(r"\d", text) or not things:
        return []
    from rapidfuzz import fuzz  # only for a name nothing begins with

    scored = sorted(
        ((fuzz.ratio(text[:80].casefold(), one.name.casefold()), one) for one in things),
        key=lambda pair: (-pair[0], pair[1].id),
    )
    best, second = scored[0], scored[1] if len(scored) > 1 else (0.0, scored[0][1])
    return [best[1]] if best[0] >= SURE and best[0] - second[0] >= CLEAR_LEAD else []


def _typed(text: str, home: Home) -> Thing:
    try:
        found = things_in(text, home.catalog)
    except InputError as error:
        names = ", ".join(one.name for one in home.house.things[:5])
        here = f" (here are: {names})" if names else ""
        raise InputError(error.value, error.rule, f"{error.way_out}{here}") from error
    if len(found) != 1:
        raise InputError(text, "names more than one thing", "name one")
    return found[0]

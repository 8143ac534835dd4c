"""Finding a fill material by what someone types: its id, its name, or enough of it to leave no other."""

from __future__ import annotations

import re
from collections.abc import Sequence

from core.errors import InputError, shorten
from core.mass.model import Material

FEW = 5


def material_named(text: str, materials: Sequence[Material]) -> Material:
    """The one material meant; `InputError` names the nearest, or why it must not be a fill."""
    wanted = _words(text)
    exact = [one for one in materials if wanted in (_words(one.id), _words(one.name))]
    found = exact or [one for one in materials if wanted and _fits(wanted, one)]
    if len(found) > 1:
        # Of several that fit, one may be listed only to say why not.
        found = [one for one in found if one.as_fill] or found
    if len(found) != 1:
        raise _not_one(text, found or _alike(text, materials))
    if not found[0].as_fill:
        raise InputError(shorten(text), f"is not a fill: {found[0].why_not}", "choose another material")
    return found[0]


def _words(text: str) -> tuple[str, ...]:
    return tuple(re.findall(r"[^\W_]+", text[:200].casefold()))


def _fits(wanted: tuple[str, ...], material: Material) -> bool:
    """Whether every typed word begins a word of the material."""
    own = (*_words(material.id), *_words(material.name))
    return all(any(word.startswith(typed) for word in own) for typed in wanted)


def _alike(text: str, materials: Sequence[Material]) -> list[Material]:
    from rapidfuzz import fuzz  # only for a name nobody knows

    usable = [one for one in materials if one.as_fill]
    return sorted(usable, key=lambda one: (-fuzz.WRatio(text[:60].casefold(), one.name.casefold()), one.id))[:FEW]


def _not_one(text: str, near: Sequence[Material]) -> InputError:
    names = ", ".join(f"{one.name.lower()} ({one.id})" for one in near[:FEW])
    return InputError(text, "is not one fill material known here", f"choose one, like {names}")

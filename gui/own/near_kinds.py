"""Kinds of things that answer to half a word."""

from __future__ import annotations

import re

from core.knowledge import Catalog


def near_kinds(text: str, catalog: Catalog, most: int) -> tuple[str, ...]:
    """Names of kinds a word of whose name or alias begins with every typed word, the shortest names first."""
    typed = _plain(text)
    if not typed:
        return ()
    found = [kind for kind in catalog.kinds if any(_begins(typed, words) for words in (kind.name, *kind.aliases))]
    found.sort(key=lambda kind: (not _begins(typed, kind.name), len(kind.name), kind.id))
    return tuple(kind.name for kind in found[:most])


def _begins(typed: list[str], words: str) -> bool:
    return all(any(word.startswith(one) for word in _plain(words)) for one in typed)


def _plain(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.casefold())

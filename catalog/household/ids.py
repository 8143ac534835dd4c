"""Ids made from names: the same names give the same ids, a repeated one is numbered."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence

LONGEST = 60


def slug(name: str, otherwise: str) -> str:
    """Lower-case letters and digits joined by hyphens; `otherwise` where nothing of the name is left."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", plain.lower()))[:LONGEST].strip("-") or otherwise


def ids_for(names: Sequence[str], otherwise: str, taken: Iterable[str] = ()) -> tuple[str, ...]:
    """An id per name, in order; `taken` ones are left alone. The second of a name gets -2, and so on."""
    used = set(taken)
    found = []
    for name in names:
        base, number = slug(name, otherwise), 1
        while (made := base if number == 1 else f"{base}-{number}") in used:
            number += 1
        used.add(made)
        found.append(made)
    return tuple(found)

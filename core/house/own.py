"""What a person adds to the catalog: movements and kinds of things of their own, in the form of catalog entries.

The entry is kept as it would stand in a data file (`table`, JSON text), because its form belongs to the catalog, which
reads and checks it (`catalog.own`). Here only what the record needs is known: what it is, its id and its name. Own ids
begin with `own_`, which no shipped entry does, so the two never clash.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError

OWN_FORM = 1
"""The form of `table`; one higher when catalog entries change so that older ones no longer read."""
OWN_PREFIX = "own_"
_OWN_ID = re.compile(r"own_[a-z0-9][a-z0-9_]{0,55}")


class OwnKind(StrEnum):
    """What an own entry is."""

    EXERCISE = "exercise"
    THING = "thing"


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnEntry:
    """One own entry. `table` is compact JSON of every other field of a catalog entry, fields sorted."""

    kind: OwnKind
    id: str
    name: str
    form: int = OWN_FORM
    table: str = "{}"

    def __post_init__(self) -> None:
        if not _OWN_ID.fullmatch(self.id):
            raise InputError(self.id, "is no id of an own entry", "begin it with own_ and use a to z, 0 to 9 and _")

    @property
    def what(self) -> str:
        """The word people read for what it is."""
        return "movement" if self.kind is OwnKind.EXERCISE else "kind of thing"

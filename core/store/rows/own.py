"""Rows of what a person added to the catalog."""

from __future__ import annotations

from sqlalchemy.orm import Mapped, mapped_column

from core.house.own import OwnEntry
from core.store.changes import Part
from core.store.rows.base import STRICT, Entry, check, json_of, name_check, object_check, position_check


class OwnRow(Entry):
    """A movement or a kind of thing of the person's own."""

    part = Part.OWN
    __tablename__ = "own_entry"
    __table_args__ = (
        name_check(),
        position_check(),
        check("id", "id GLOB 'own_[a-z0-9]*'"),
        check("kind", "kind IN ('exercise', 'thing')"),
        check("form", "form >= 1"),
        object_check("entry"),
        STRICT,
    )

    id: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    kind: Mapped[str]
    name: Mapped[str]
    form: Mapped[int]
    entry: Mapped[str]

    def key(self) -> str:
        """The entry's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        table = json_of(self.entry, f"own entry “{self.id}”")
        return {"kind": self.kind, "id": self.id, "name": self.name, "form": self.form, "table": table}

    @classmethod
    def to_row(cls, own: OwnEntry, position: int) -> OwnRow:
        """The row for this entry."""
        return cls(id=own.id, position=position, kind=own.kind.value, name=own.name, form=own.form, entry=own.table)

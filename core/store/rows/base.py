"""What all rows share: column types that STRICT tables allow, names for constraints, and reading a row as a value.

A row is read through the strict codec of its value, so a damaged row is a `RowUnreadable` that names it.
"""

from __future__ import annotations

from typing import Any, ClassVar

from sqlalchemy import REAL, CheckConstraint, ForeignKey, Integer, MetaData, Text
from sqlalchemy.orm import DeclarativeBase, MappedColumn, mapped_column

from core.errors import InputError
from core.store.changes import CODEC_OF, Part
from core.store.encoding_groups import TAG
from core.store.faults import RowUnreadable
from core.store.json_text import from_text, to_text

STRICT = {"sqlite_strict": True}
CHILDREN = "all, delete-orphan"
"""Relationship cascade of rows that belong to one entry: written, replaced and deleted with it."""


class Base(DeclarativeBase):
    """The tables of the record."""

    type_annotation_map: ClassVar[dict[Any, Any]] = {str: Text(), float: REAL(), int: Integer()}
    metadata = MetaData(
        naming_convention={
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_name)s",
            "pk": "pk_%(table_name)s",
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        }
    )


class Entry(Base):
    """A row (with its children) that holds one entry of the record."""

    __abstract__ = True
    part: ClassVar[Part]

    def key(self) -> str:
        """What the entry is called in a `Change`."""
        raise NotImplementedError

    def fields(self) -> dict[str, object]:
        """The JSON of the value, as its codec reads it."""
        raise NotImplementedError

    def from_row(self) -> Any:
        """The value this row holds; `RowUnreadable` naming the row if it is damaged."""
        where = f"{self.part} “{self.key()}”"
        try:
            return CODEC_OF[self.part].read(self.fields() | {TAG: self.part.value}, where)
        except InputError as error:
            raise RowUnreadable(str(error)) from error


def check(name: str, rule: str) -> CheckConstraint:
    """A named rule on a table."""
    return CheckConstraint(rule, name=name)


def name_check() -> CheckConstraint:
    """A name is there and not endless."""
    return check("name", "length(name) BETWEEN 1 AND 120")


def position_check() -> CheckConstraint:
    """Positions count from 0."""
    return check("position", "position >= 0")


def flag_check(column: str) -> CheckConstraint:
    """SQLite has no truth values: 0 and 1 stand for them."""
    return check(column, f"{column} IN (0, 1)")


def weekday_check() -> CheckConstraint:
    """0 Monday to 6 Sunday."""
    return check("weekday", "weekday BETWEEN 0 AND 6")


def object_check(column: str) -> CheckConstraint:
    """The text looks like a JSON object; json_valid is not allowed in a schema that is not trusted."""
    return check(column, f"{column} GLOB '{{*}}'")


def list_check(column: str) -> CheckConstraint:
    """The text looks like a JSON list."""
    return check(column, f"{column} GLOB '[[]*]'")


def date_check(column: str) -> CheckConstraint:
    """An ISO date (or nothing, where the column allows it)."""
    return check(column, f"{column} GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'")


def owner(column: str) -> MappedColumn[str]:
    """The key of the entry a child row belongs to; it goes with that entry."""
    return mapped_column(ForeignKey(column, ondelete="CASCADE"), primary_key=True)


def other(column: str, *, primary_key: bool = False, nullable: bool = False) -> MappedColumn[Any]:
    """A mention of another entry, checked when the transaction ends. Nothing is deleted in its wake."""
    link = ForeignKey(column, deferrable=True, initially="DEFERRED")
    return mapped_column(link, primary_key=primary_key, nullable=nullable)


def flag(stored: int) -> object:
    """0 and 1 as false and true; anything else as it is, so that the codec refuses it."""
    return {0: False, 1: True}.get(stored, stored)


def tagged(tag: str, **fields: object) -> dict[str, object]:
    """The JSON of a small value inside an entry."""
    return {TAG: tag} | fields


def json_of(written: str | None, where: str) -> Any:
    """JSON of a text column; None where there is none."""
    return None if written is None else from_text(written, where)


def text_of(json_value: object) -> str:
    """JSON for a text column."""
    return to_text(json_value)

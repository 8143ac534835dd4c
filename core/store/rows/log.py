"""Rows of what was done. They name people without a foreign key: removing a person leaves the log for an undo.

Sessions and sets are only described here; `core.store.session_rows` reads and writes them.
"""

from __future__ import annotations

from sqlalchemy import Index
from sqlalchemy.orm import Mapped, mapped_column, relationship

from core.house.log import LoggedTest
from core.store.changes import Part
from core.store.rows.base import CHILDREN, STRICT, Base, Entry, check, date_check, owner, position_check


class SetRow(Base):
    """One set of a session."""

    __tablename__ = "training_set"
    __table_args__ = (
        position_check(),
        check("amount", "reps IS NOT NULL OR time_s IS NOT NULL OR distance_m IS NOT NULL"),
        check("load_kg", "load_kg >= 0 AND u95_kg >= 0"),
        check("effort", "effort BETWEEN 0 AND 10"),
        Index(None, "exercise_id"),
        STRICT,
    )

    session_id: Mapped[str] = owner("session.id")
    position: Mapped[int] = mapped_column(primary_key=True)
    exercise_id: Mapped[str]
    reps: Mapped[int | None]
    time_s: Mapped[float | None]
    distance_m: Mapped[float | None]
    load_kg: Mapped[float]
    u95_kg: Mapped[float]
    effort: Mapped[float | None]
    note: Mapped[str]


class SessionRow(Base):
    """One session."""

    __tablename__ = "session"
    __table_args__ = (
        date_check("date"),
        check("minutes", "minutes >= 0"),
        check("effort", "effort BETWEEN 0 AND 10"),
        Index(None, "person_id", "date"),
        STRICT,
    )

    id: Mapped[str] = mapped_column(primary_key=True)
    person_id: Mapped[str]
    date: Mapped[str]
    minutes: Mapped[float]
    effort: Mapped[float | None]
    note: Mapped[str]


class BesideRow(Base):
    """A number written down beside a test result."""

    __tablename__ = "test_beside"
    __table_args__ = (position_check(), STRICT)

    result_id: Mapped[str] = owner("test_result.id")
    position: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    value: Mapped[float]


class TestRow(Entry):
    """One test result."""

    part = Part.TEST
    __tablename__ = "test_result"
    __table_args__ = (date_check("date"), Index(None, "person_id", "date"), STRICT)

    id: Mapped[str] = mapped_column(primary_key=True)
    person_id: Mapped[str]
    test_id: Mapped[str]
    date: Mapped[str]
    result: Mapped[float]
    note: Mapped[str]
    beside: Mapped[list[BesideRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=BesideRow.position)

    def key(self) -> str:
        """The result's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {
            "id": self.id,
            "person_id": self.person_id,
            "test_id": self.test_id,
            "date": self.date,
            "result": self.result,
            "note": self.note,
            "beside": [[row.name, row.value] for row in self.beside],
        }

    @classmethod
    def to_row(cls, test: LoggedTest) -> TestRow:
        """The row for this result."""
        return cls(
            id=test.id,
            person_id=test.person_id,
            test_id=test.test_id,
            date=test.date.isoformat(),
            result=test.result,
            note=test.note,
            beside=[BesideRow(position=i, name=name, value=value) for i, (name, value) in enumerate(test.beside)],
        )

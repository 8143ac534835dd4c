"""Rows of what was done. They name people without a foreign key: removing a person leaves the log for an undo."""

from __future__ import annotations

from sqlalchemy import Index
from sqlalchemy.orm import Mapped, mapped_column, relationship

from core.house.log import LoggedSession, LoggedSet, LoggedTest
from core.store.changes import Part
from core.store.rows.base import CHILDREN, STRICT, Base, Entry, check, date_check, owner, position_check, tagged


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

    def fields(self) -> dict[str, object]:
        """The JSON of the set."""
        return tagged(
            "set",
            exercise_id=self.exercise_id,
            reps=self.reps,
            time_s=self.time_s,
            distance_m=self.distance_m,
            load_kg=self.load_kg,
            u95_kg=self.u95_kg,
            effort=self.effort,
            note=self.note,
        )

    @classmethod
    def to_row(cls, done: LoggedSet, position: int) -> SetRow:
        """The row for this set."""
        return cls(
            position=position,
            exercise_id=done.exercise_id,
            reps=done.reps,
            time_s=done.time_s,
            distance_m=done.distance_m,
            load_kg=done.load_kg,
            u95_kg=done.u95_kg,
            effort=done.effort,
            note=done.note,
        )


class SessionRow(Entry):
    """One session."""

    part = Part.SESSION
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
    sets: Mapped[list[SetRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=SetRow.position)

    def key(self) -> str:
        """The session's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {
            "id": self.id,
            "person_id": self.person_id,
            "date": self.date,
            "minutes": self.minutes,
            "effort": self.effort,
            "note": self.note,
            "sets": [row.fields() for row in self.sets],
        }

    @classmethod
    def to_row(cls, session: LoggedSession) -> SessionRow:
        """The row for this session, with its sets."""
        return cls(
            id=session.id,
            person_id=session.person_id,
            date=session.date.isoformat(),
            minutes=session.minutes,
            effort=session.effort,
            note=session.note,
            sets=[SetRow.to_row(done, i) for i, done in enumerate(session.sets)],
        )


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

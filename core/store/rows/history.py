"""Rows of the history (so that undo survives a restart) and of the migration the tables stand at."""

from __future__ import annotations

from sqlalchemy import PrimaryKeyConstraint, String
from sqlalchemy.orm import Mapped, mapped_column

from core.store.rows.base import STRICT, Base, flag_check, list_check


class StepRow(Base):
    """A command with its changes; steps that were taken back have `done` 0 and stand after all that are done."""

    __tablename__ = "step"
    __table_args__ = (flag_check("done"), list_check("changes"), STRICT)

    id: Mapped[int] = mapped_column(primary_key=True)
    sentence: Mapped[str]
    changes: Mapped[str]
    done: Mapped[int]


class RevisionRow(Base):
    """Alembic's own table, described as Alembic makes it."""

    __tablename__ = "alembic_version"
    __table_args__ = (PrimaryKeyConstraint("version_num", name="alembic_version_pkc"),)

    version_num: Mapped[str] = mapped_column(String(32))

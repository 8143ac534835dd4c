"""Movements and kinds of things of a person's own."""

from __future__ import annotations

from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table; nothing is in it yet."""
    op.execute(
        """
        CREATE TABLE own_entry (
            id TEXT NOT NULL,
            position INTEGER NOT NULL,
            kind TEXT NOT NULL,
            name TEXT NOT NULL,
            form INTEGER NOT NULL,
            entry TEXT NOT NULL,
            CONSTRAINT pk_own_entry PRIMARY KEY (id),
            CONSTRAINT ck_own_entry_name CHECK (length(name) BETWEEN 1 AND 120),
            CONSTRAINT ck_own_entry_position CHECK (position >= 0),
            CONSTRAINT ck_own_entry_id CHECK (id GLOB 'own_[a-z0-9]*'),
            CONSTRAINT ck_own_entry_kind CHECK (kind IN ('exercise', 'thing')),
            CONSTRAINT ck_own_entry_form CHECK (form >= 1),
            CONSTRAINT ck_own_entry_entry CHECK (entry GLOB '{*}')
        ) STRICT
        """
    )

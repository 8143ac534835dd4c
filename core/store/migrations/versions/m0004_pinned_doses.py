"""The dose that a pin asks to keep exactly, as JSON."""

from __future__ import annotations

from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the column; earlier pins have no dose."""
    op.execute("ALTER TABLE pin ADD COLUMN dose TEXT")

"""Numbers beside a test result, blocks of weeks, and the year of birth and sex that published tables need."""

from __future__ import annotations

from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

STEPS = (
    "ALTER TABLE person ADD COLUMN birth_year INTEGER",
    "ALTER TABLE person ADD COLUMN sex TEXT",
    """
    CREATE TABLE test_beside (
        result_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        value REAL NOT NULL,
        CONSTRAINT pk_test_beside PRIMARY KEY (result_id, position),
        CONSTRAINT ck_test_beside_position CHECK (position >= 0),
        CONSTRAINT fk_test_beside_result_id FOREIGN KEY(result_id) REFERENCES test_result (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE saved_block (
        person_id TEXT NOT NULL,
        starts TEXT NOT NULL,
        version INTEGER NOT NULL,
        "plan" TEXT NOT NULL,
        CONSTRAINT pk_saved_block PRIMARY KEY (person_id),
        CONSTRAINT ck_saved_block_starts CHECK (starts GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT ck_saved_block_version CHECK (version >= 1),
        CONSTRAINT ck_saved_block_plan CHECK (plan GLOB '{*}'),
        CONSTRAINT fk_saved_block_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
)


def upgrade() -> None:
    """Add the columns and tables."""
    for statement in STEPS:
        op.execute(statement)

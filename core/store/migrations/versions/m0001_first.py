"""The first form of the tables."""

from __future__ import annotations

from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

TABLES = (
    """
    CREATE TABLE house (
        id INTEGER NOT NULL,
        name TEXT NOT NULL,
        fills TEXT NOT NULL,
        cup_l REAL NOT NULL,
        CONSTRAINT pk_house PRIMARY KEY (id),
        CONSTRAINT ck_house_only CHECK (id = 1),
        CONSTRAINT ck_house_fills CHECK (fills GLOB '[[]*]'),
        CONSTRAINT ck_house_cup_l CHECK (cup_l > 0)
    ) STRICT
    """,
    """
    CREATE TABLE person (
        id TEXT NOT NULL,
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        body_mass_kg REAL NOT NULL,
        height_cm REAL NOT NULL,
        experience TEXT NOT NULL,
        CONSTRAINT pk_person PRIMARY KEY (id),
        CONSTRAINT ck_person_name CHECK (length(name) BETWEEN 1 AND 120),
        CONSTRAINT ck_person_position CHECK (position >= 0),
        CONSTRAINT ck_person_body_mass_kg CHECK (body_mass_kg BETWEEN 30 AND 250),
        CONSTRAINT ck_person_height_cm CHECK (height_cm BETWEEN 120 AND 230)
    ) STRICT
    """,
    """
    CREATE TABLE place (
        id TEXT NOT NULL,
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        ceiling_cm REAL,
        floor_m2 REAL NOT NULL,
        walk_m REAL NOT NULL,
        outdoors INTEGER NOT NULL,
        neighbours INTEGER NOT NULL,
        wet INTEGER NOT NULL,
        quiet_start TEXT,
        quiet_end TEXT,
        CONSTRAINT pk_place PRIMARY KEY (id),
        CONSTRAINT ck_place_name CHECK (length(name) BETWEEN 1 AND 120),
        CONSTRAINT ck_place_position CHECK (position >= 0),
        CONSTRAINT ck_place_outdoors CHECK (outdoors IN (0, 1)),
        CONSTRAINT ck_place_neighbours CHECK (neighbours IN (0, 1)),
        CONSTRAINT ck_place_wet CHECK (wet IN (0, 1)),
        CONSTRAINT ck_place_quiet CHECK ((quiet_start IS NULL) = (quiet_end IS NULL))
    ) STRICT
    """,
    """
    CREATE TABLE session (
        id TEXT NOT NULL,
        person_id TEXT NOT NULL,
        date TEXT NOT NULL,
        minutes REAL NOT NULL,
        effort REAL,
        note TEXT NOT NULL,
        CONSTRAINT pk_session PRIMARY KEY (id),
        CONSTRAINT ck_session_date CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT ck_session_minutes CHECK (minutes >= 0),
        CONSTRAINT ck_session_effort CHECK (effort BETWEEN 0 AND 10)
    ) STRICT
    """,
    "CREATE INDEX ix_session_person_id_date ON session (person_id, date)",
    """
    CREATE TABLE step (
        id INTEGER NOT NULL,
        sentence TEXT NOT NULL,
        changes TEXT NOT NULL,
        done INTEGER NOT NULL,
        CONSTRAINT pk_step PRIMARY KEY (id),
        CONSTRAINT ck_step_done CHECK (done IN (0, 1)),
        CONSTRAINT ck_step_changes CHECK (changes GLOB '[[]*]')
    ) STRICT
    """,
    """
    CREATE TABLE test_result (
        id TEXT NOT NULL,
        person_id TEXT NOT NULL,
        test_id TEXT NOT NULL,
        date TEXT NOT NULL,
        result REAL NOT NULL,
        note TEXT NOT NULL,
        CONSTRAINT pk_test_result PRIMARY KEY (id),
        CONSTRAINT ck_test_result_date CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
    ) STRICT
    """,
    "CREATE INDEX ix_test_result_person_id_date ON test_result (person_id, date)",
    """
    CREATE TABLE thing (
        id TEXT NOT NULL,
        position INTEGER NOT NULL,
        kind_id TEXT NOT NULL,
        name TEXT NOT NULL,
        count INTEGER NOT NULL,
        icon TEXT NOT NULL,
        facts TEXT NOT NULL,
        fills TEXT NOT NULL,
        cautions TEXT NOT NULL,
        CONSTRAINT pk_thing PRIMARY KEY (id),
        CONSTRAINT ck_thing_name CHECK (length(name) BETWEEN 1 AND 120),
        CONSTRAINT ck_thing_position CHECK (position >= 0),
        CONSTRAINT ck_thing_count CHECK (count BETWEEN 1 AND 999),
        CONSTRAINT ck_thing_facts CHECK (facts GLOB '{*}'),
        CONSTRAINT ck_thing_fills CHECK (fills GLOB '[[]*]'),
        CONSTRAINT ck_thing_cautions CHECK (cautions GLOB '[[]*]')
    ) STRICT
    """,
    """
    CREATE TABLE capacity (
        person_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        pattern TEXT NOT NULL,
        one_rep_kg REAL NOT NULL,
        u_kg REAL NOT NULL,
        origin TEXT NOT NULL,
        exercise_id TEXT NOT NULL,
        told_by TEXT NOT NULL,
        CONSTRAINT pk_capacity PRIMARY KEY (person_id, position),
        CONSTRAINT ck_capacity_position CHECK (position >= 0),
        CONSTRAINT ck_capacity_u_kg CHECK (u_kg >= 0),
        CONSTRAINT fk_capacity_person_id FOREIGN KEY(person_id) REFERENCES person (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE fill (
        thing_id TEXT NOT NULL,
        material_id TEXT NOT NULL,
        volume_l REAL NOT NULL,
        packing TEXT NOT NULL,
        CONSTRAINT pk_fill PRIMARY KEY (thing_id),
        CONSTRAINT ck_fill_volume_l CHECK (volume_l >= 0),
        CONSTRAINT fk_fill_thing_id FOREIGN KEY(thing_id) REFERENCES thing (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE own_check (
        thing_id TEXT NOT NULL,
        date TEXT NOT NULL,
        took_kg REAL NOT NULL,
        CONSTRAINT pk_own_check PRIMARY KEY (thing_id),
        CONSTRAINT ck_own_check_date CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT ck_own_check_took_kg CHECK (took_kg >= 0),
        CONSTRAINT fk_own_check_thing_id FOREIGN KEY(thing_id) REFERENCES thing (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE saved_week (
        person_id TEXT NOT NULL,
        starts TEXT NOT NULL,
        version INTEGER NOT NULL,
        "plan" TEXT NOT NULL,
        CONSTRAINT pk_saved_week PRIMARY KEY (person_id),
        CONSTRAINT ck_saved_week_starts CHECK (starts GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT ck_saved_week_version CHECK (version >= 1),
        CONSTRAINT ck_saved_week_plan CHECK (plan GLOB '{*}'),
        CONSTRAINT fk_saved_week_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
    """
    CREATE TABLE scale_reading (
        thing_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        kind TEXT NOT NULL,
        reading_kg REAL NOT NULL,
        without_kg REAL,
        resolution_kg REAL NOT NULL,
        repeatability_kg REAL NOT NULL,
        offset_doubt_kg REAL NOT NULL,
        at_level TEXT,
        date TEXT,
        material_id TEXT,
        packing TEXT NOT NULL,
        CONSTRAINT pk_scale_reading PRIMARY KEY (thing_id, position),
        CONSTRAINT ck_scale_reading_position CHECK (position >= 0),
        CONSTRAINT ck_scale_reading_at_level CHECK (at_level GLOB '{*}'),
        CONSTRAINT ck_scale_reading_date CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT fk_scale_reading_thing_id FOREIGN KEY(thing_id) REFERENCES thing (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE settings (
        id INTEGER NOT NULL,
        units TEXT NOT NULL,
        theme TEXT NOT NULL,
        person_id TEXT,
        first_run_done INTEGER NOT NULL,
        ready_on TEXT,
        CONSTRAINT pk_settings PRIMARY KEY (id),
        CONSTRAINT ck_settings_only CHECK (id = 1),
        CONSTRAINT ck_settings_first_run_done CHECK (first_run_done IN (0, 1)),
        CONSTRAINT ck_settings_ready_on CHECK (ready_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        CONSTRAINT fk_settings_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
    """
    CREATE TABLE spare (
        person_id TEXT NOT NULL,
        demand TEXT NOT NULL,
        CONSTRAINT pk_spare PRIMARY KEY (person_id, demand),
        CONSTRAINT fk_spare_person_id FOREIGN KEY(person_id) REFERENCES person (id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE thing_place (
        thing_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        place_id TEXT NOT NULL,
        CONSTRAINT pk_thing_place PRIMARY KEY (thing_id, position),
        CONSTRAINT ck_thing_place_position CHECK (position >= 0),
        CONSTRAINT fk_thing_place_thing_id FOREIGN KEY(thing_id) REFERENCES thing (id) ON DELETE CASCADE,
        CONSTRAINT fk_thing_place_place_id FOREIGN KEY(place_id) REFERENCES place (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
    """
    CREATE TABLE training_set (
        session_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        exercise_id TEXT NOT NULL,
        reps INTEGER,
        time_s REAL,
        distance_m REAL,
        load_kg REAL NOT NULL,
        u95_kg REAL NOT NULL,
        effort REAL,
        note TEXT NOT NULL,
        CONSTRAINT pk_training_set PRIMARY KEY (session_id, position),
        CONSTRAINT ck_training_set_position CHECK (position >= 0),
        CONSTRAINT ck_training_set_amount CHECK (reps IS NOT NULL OR time_s IS NOT NULL OR distance_m IS NOT NULL),
        CONSTRAINT ck_training_set_load_kg CHECK (load_kg >= 0 AND u95_kg >= 0),
        CONSTRAINT ck_training_set_effort CHECK (effort BETWEEN 0 AND 10),
        CONSTRAINT fk_training_set_session_id FOREIGN KEY(session_id) REFERENCES session (id) ON DELETE CASCADE
    ) STRICT
    """,
    "CREATE INDEX ix_training_set_exercise_id ON training_set (exercise_id)",
    """
    CREATE TABLE wishes (
        person_id TEXT NOT NULL,
        strength REAL NOT NULL,
        run_walk REAL NOT NULL,
        loaded_walk REAL NOT NULL,
        mobility REAL NOT NULL,
        CONSTRAINT pk_wishes PRIMARY KEY (person_id),
        CONSTRAINT ck_wishes_strength CHECK (strength BETWEEN 0 AND 1),
        CONSTRAINT ck_wishes_run_walk CHECK (run_walk BETWEEN 0 AND 1),
        CONSTRAINT ck_wishes_loaded_walk CHECK (loaded_walk BETWEEN 0 AND 1),
        CONSTRAINT ck_wishes_mobility CHECK (mobility BETWEEN 0 AND 1),
        CONSTRAINT fk_wishes_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
    """
    CREATE TABLE ban (
        person_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        exercise_id TEXT NOT NULL,
        CONSTRAINT pk_ban PRIMARY KEY (person_id, position),
        CONSTRAINT ck_ban_position CHECK (position >= 0),
        CONSTRAINT fk_ban_person_id FOREIGN KEY(person_id) REFERENCES wishes (person_id) ON DELETE CASCADE
    ) STRICT
    """,
    """
    CREATE TABLE day_wish (
        person_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        weekday INTEGER NOT NULL,
        minutes REAL NOT NULL,
        place_id TEXT,
        start TEXT,
        CONSTRAINT pk_day_wish PRIMARY KEY (person_id, position),
        CONSTRAINT ck_day_wish_weekday CHECK (weekday BETWEEN 0 AND 6),
        CONSTRAINT ck_day_wish_position CHECK (position >= 0),
        CONSTRAINT ck_day_wish_minutes CHECK (minutes > 0),
        CONSTRAINT fk_day_wish_person_id FOREIGN KEY(person_id) REFERENCES wishes (person_id) ON DELETE CASCADE,
        CONSTRAINT fk_day_wish_place_id FOREIGN KEY(place_id) REFERENCES place (id) DEFERRABLE INITIALLY DEFERRED
    ) STRICT
    """,
    """
    CREATE TABLE pin (
        person_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        weekday INTEGER NOT NULL,
        exercise_id TEXT,
        kind TEXT,
        CONSTRAINT pk_pin PRIMARY KEY (person_id, position),
        CONSTRAINT ck_pin_weekday CHECK (weekday BETWEEN 0 AND 6),
        CONSTRAINT ck_pin_position CHECK (position >= 0),
        CONSTRAINT ck_pin_something CHECK (exercise_id IS NOT NULL OR kind IS NOT NULL),
        CONSTRAINT fk_pin_person_id FOREIGN KEY(person_id) REFERENCES wishes (person_id) ON DELETE CASCADE
    ) STRICT
    """,
)


def upgrade() -> None:
    """Make the tables."""
    for statement in TABLES:
        op.execute(statement)

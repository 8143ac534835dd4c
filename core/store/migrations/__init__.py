"""Alembic migrations, one per form of the tables; a migration never imports a row class, which will have moved on."""

"""Fillmark without a window: every use case as a command that prints a short table or one JSON document."""

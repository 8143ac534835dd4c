"""The record on disk: rows, unit of work, undo, backups."""

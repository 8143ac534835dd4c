"""The tables of the record as row classes, kept apart from the frozen values they hold."""

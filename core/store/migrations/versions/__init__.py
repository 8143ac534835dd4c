"""The migrations in order, named by the form they lead to."""

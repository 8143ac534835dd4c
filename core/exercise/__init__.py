"""Exercises: patterns, muscles, needs and demands."""

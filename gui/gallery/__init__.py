"""Screens and widgets in every state with invented values, to look at and to test against."""

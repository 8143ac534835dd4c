"""Fillmark's computation and record: masses, loads, fit, swaps, plans and the store. No window, no print."""

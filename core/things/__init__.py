"""Household things and what each is good for."""

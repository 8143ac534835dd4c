"""How hard a load is for a person: effective load, repetitions and their relation, and equivalent doses."""

"""Effective load, repetitions and equivalent dose."""

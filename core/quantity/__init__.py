"""Measured values, and the units people type and read."""

from core.quantity.measured import Measured, Origin, alike, combined

__all__ = ["Measured", "Origin", "alike", "combined"]

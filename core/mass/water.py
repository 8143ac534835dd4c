"""Density of water.

Tanaka, Girard, Davis, Peuto & Bignell, "Recommended table for the density of water between 0 °C and 40 °C based on
recent experimental reports", Metrologia 38:301-309 (2001): air-free water at 101 325 Pa, within 0.001 kg/m³.
"""

from __future__ import annotations

from core.errors import InputError

COLDEST_C = 0.0
WARMEST_C = 40.0


def water_density_kg_m3(temperature_c: float) -> float:
    """Density of pure water from 0 to 40 °C, kg/m³; outside that range `InputError`."""
    if not COLDEST_C <= temperature_c <= WARMEST_C:
        rule = "is outside 0 to 40 °C, where the density of water is known here"
        raise InputError(f"{temperature_c:g} °C", rule, "give the temperature of the water you pour")
    warmer = temperature_c - 3.983035
    return 999.974950 * (1 - warmer**2 * (temperature_c + 301.797) / (522528.9 * (temperature_c + 69.34881)))

"""The mass engine's doors: estimate a filled container, fill it to a mass, combine with the scale, learn from it."""

from __future__ import annotations

from core.mass.combine import combine
from core.mass.estimating import estimate
from core.mass.fill import fill_for
from core.mass.learning import learn
from core.mass.scale import reading_on, weighed
from core.mass.water import water_density_kg_m3

__all__ = ["combine", "estimate", "fill_for", "learn", "reading_on", "water_density_kg_m3", "weighed"]

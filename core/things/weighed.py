"""What is known of the mass of a thing that is not filled, with its own scale readings taken in."""

from __future__ import annotations

from core.errors import InputError
from core.mass.combine import combine
from core.mass.model import Combined
from core.quantity import Measured
from core.quantity.display import UnitSystem
from core.things.model import Thing


def weighed(thing: Thing, system: UnitSystem = UnitSystem.METRIC) -> Combined | None:
    """The stated mass and the readings brought together, or why they are not; None without both of them.

    Readings that can't be ones leave the stated mass as it is, and the sentence says why.
    """
    stated = thing.facts.mass
    if stated is None or thing.facts.container is not None or not thing.readings:
        return None
    try:
        return combine(stated, thing.readings, system=system)
    except InputError as error:
        return Combined(mass=stated, agrees=False, sentence=str(error))


def known_mass(thing: Thing) -> Measured | None:
    """The best value for one piece of a thing that is not filled; None where its mass is not known."""
    found = weighed(thing)
    return thing.facts.mass if found is None else found.mass

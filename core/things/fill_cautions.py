"""What to mind before lifting a filled container. Handling advice is common practice, no source.

That open buckets of water drown small children is a known hazard (memory).
"""

from __future__ import annotations

from core.mass.model import Material, MaterialKind
from core.things.model import Closure, Facts, Hazard, Thing

SPILLS = (
    "An open container spills, and small children drown in very little: never leave it standing full near them, "
    "and empty it afterwards."
)
CLOSE_IT = "Close the cap and tip it once before you lift it: a leak shows at once."
TIE_IT = "Tie it shut, and carry it inside a second bag."
CHEMICALS = "It held chemicals: don't fill it, and don't use it as a load."
GLASS = "Glass breaks: keep it low and over something soft."


def fill_cautions(thing: Thing, material: Material, volume_l: float) -> tuple[str, ...]:
    """The thing's own cautions, then those of `volume_l` of `material` in it; each once."""
    facts = thing.facts
    found = list(thing.cautions)
    if Hazard.HELD_CHEMICALS in facts.hazards:
        found.append(CHEMICALS)
    if Hazard.GLASS in facts.hazards:
        found.append(GLASS)
    if volume_l > 0 and (closing := _closing(facts, material)) and not thing.cautions:
        found.append(closing)
    if volume_l > 0 and facts.closure is Closure.OPEN and material.kind is MaterialKind.LIQUID:
        found.append(SPILLS)
    return tuple(dict.fromkeys(found))


def _closing(facts: Facts, material: Material) -> str:
    """How to close it; a kind that says so itself needs no second sentence."""
    if facts.closure in {Closure.SEALED, Closure.LID} and material.kind is MaterialKind.LIQUID:
        return CLOSE_IT
    return TIE_IT if facts.closure is Closure.TIED else ""

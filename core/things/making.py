"""Facts of a kind with what the owner stated: a vessel enlarged to its capacity, a label's mass, a measured step.

Empty masses grow with the surface, so with the two-thirds power of the capacity; lengths with its cube root.
"""

from __future__ import annotations

import math
from dataclasses import replace

from core.mass.model import Container, shape_for_capacity
from core.mass.tins import estimate_tin
from core.quantity import Measured, Origin
from core.things.amounts import Changes
from core.things.model import Facts, Flight, Form, Hold, RatingOrigin

LABEL_SHARE = 0.02
"""How far a printed mass may be off, as a half-width (assumed)."""
MOST_IN_BAG_KG = 40.0
RATED_BY_OWNER = frozenset({Form.ANCHOR_POINT, Form.RAIL, Form.DOOR_FRAME, Form.TABLE, Form.WALL})
"""What carries no label, so that a typed rating is the owner's word."""


def with_changes(facts: Facts, changes: Changes) -> Facts:
    """The facts with every stated change worked in."""
    if changes.capacity_l is not None:
        facts = _of_capacity(facts, changes.capacity_l)
    if changes.mass_kg is not None:
        facts = _of_mass(facts, changes.mass_kg)
    facts = _of_height(_of_flight(facts, changes), changes)
    facts = _of_lengths(facts, changes)
    if changes.rating_kg is not None:
        facts = _rated(facts, changes.rating_kg)
    return replace(
        facts,
        route_m=facts.route_m if changes.route_m is None else changes.route_m,
        area_m2=facts.area_m2 if changes.area_m2 is None else changes.area_m2,
        hazards=facts.hazards | changes.hazards,
    )


def _enlarged(facts: Facts, by: float) -> Facts:
    """Outer sizes times `by`."""
    pack_l = None if facts.pack_l is None else facts.pack_l * by**3
    return replace(
        facts,
        length_cm=facts.length_cm * by,
        width_cm=facts.width_cm * by,
        height_cm=facts.height_cm * by,
        pack_l=pack_l,
    )


def _times(value: Measured, factor: float) -> Measured:
    return Measured(value.value * factor, value.u * factor, value.origin)


def of_capacity(container: Container, litres: float) -> Container:
    """The same sort of vessel with another nominal capacity."""
    ratio = litres / container.nominal_l.value
    brimful_l = _times(container.brimful_l, ratio)
    return Container(
        shape=shape_for_capacity(container.shape, brimful_l.value),
        nominal_l=_times(container.nominal_l, ratio),
        brimful_l=brimful_l,
        tare_kg=_times(container.tare_kg, ratio ** (2 / 3)),
        shape_doubt=container.shape_doubt,
    )


def _of_capacity(facts: Facts, litres: float) -> Facts:
    if facts.container is not None:
        ratio = litres / facts.container.nominal_l.value
        return replace(_enlarged(facts, math.cbrt(ratio)), container=of_capacity(facts.container, litres))
    if facts.hold is not None and facts.mass is not None:
        ratio = litres / facts.hold.volume_l
        limit_kg = min(facts.hold.limit_kg * ratio, max(MOST_IN_BAG_KG, facts.hold.limit_kg))
        hold = Hold(volume_l=litres, limit_kg=limit_kg)
        return replace(_enlarged(facts, math.cbrt(ratio)), hold=hold, mass=_times(facts.mass, ratio ** (2 / 3)))
    return facts


def _of_mass(facts: Facts, kg: float) -> Facts:
    """A stated mass is the label's: net where the kind's label is net, else of the whole piece."""
    usual_kg = facts.label_kg or (facts.mass.value if facts.mass is not None else kg)
    sized = _enlarged(facts, math.cbrt(kg / usual_kg)) if facts.form is not Form.BARBELL else facts
    if facts.label_kg is None or facts.mass is None:
        return replace(sized, mass=Measured.rectangular(kg, LABEL_SHARE * kg, Origin.LABEL))
    if facts.form is Form.TIN:
        whole = estimate_tin(net_kg=kg).mass
        return replace(sized, label_kg=kg, mass=Measured(whole.value, whole.u, Origin.LABEL))
    whole_kg = kg * facts.mass.value / facts.label_kg
    return replace(sized, label_kg=kg, mass=Measured.rectangular(whole_kg, LABEL_SHARE * whole_kg, Origin.LABEL))


def _of_flight(facts: Facts, changes: Changes) -> Facts:
    if facts.flight is None:
        return facts
    count = facts.flight.count if changes.steps is None else changes.steps
    rise_cm = facts.flight.rise_cm if changes.rise_cm is None else changes.rise_cm
    return replace(facts, flight=Flight(count=count, rise_cm=rise_cm))


def _of_height(facts: Facts, changes: Changes) -> Facts:
    """A stated height is that of the surface where there is one; a stool or step is then that high itself."""
    if changes.height_cm is None:
        return facts
    if facts.surface_cm is None:
        return replace(facts, height_cm=changes.height_cm)
    same = facts.height_cm == facts.surface_cm
    return replace(facts, surface_cm=changes.height_cm, height_cm=changes.height_cm if same else facts.height_cm)


def _of_lengths(facts: Facts, changes: Changes) -> Facts:
    if len(changes.sides_cm) == 3:
        first, second, height = changes.sides_cm
        return replace(facts, length_cm=max(first, second), width_cm=min(first, second), height_cm=height)
    if changes.sides_cm:
        return replace(facts, length_cm=max(changes.sides_cm), width_cm=min(changes.sides_cm))
    if changes.length_cm is None:
        return facts
    return replace(facts, length_cm=changes.length_cm, width_cm=min(facts.width_cm, changes.length_cm))


def _rated(facts: Facts, kg: float) -> Facts:
    if facts.hold is not None:
        return replace(facts, hold=Hold(volume_l=facts.hold.volume_l, limit_kg=kg))
    origin = RatingOrigin.OWN_CHECK if facts.form in RATED_BY_OWNER else RatingOrigin.LABEL
    return replace(facts, rating_kg=kg, rating_origin=origin)

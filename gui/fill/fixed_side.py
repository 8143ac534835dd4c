"""Things that are not filled: their mass and where it comes from, and what a tin's label makes of it."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject

from core.errors import InputError
from core.mass.budget import advice_for
from core.mass.model import Estimate
from core.mass.tins import estimate_tin
from core.quantity import Measured, Origin, alike
from core.quantity.display import UnitSystem, format_mass
from core.quantity.units import parse_mass_kg
from core.store.commands import ChangeThing
from core.things.model import Facts, Form, Thing
from core.things.weighed import weighed
from gui.desk.desk import Desk
from gui.fill.present import MassView, mass_view
from gui.fill.subject import FixedSubject
from gui.fill.tin_card import TinCard, TinTyped
from gui.fill.words import ORIGIN_NAMES, length_text, measured_text, volume_text, whole
from gui.widgets import LineField

TIN_UNITS = {UnitSystem.METRIC: "g", UnitSystem.US: "oz"}


def fixed_view(thing: Thing, mass: Measured, system: UnitSystem) -> MassView:
    """The mass of one piece, where it comes from and what a scale said."""
    found = weighed(thing, system)
    notes = [advice_for(mass, 0.0, system) if found is None else found.sentence]
    if thing.count > 1:
        notes.append(f"All {thing.count}: {measured_text(alike(mass, thing.count), system)}.")
    return mass_view(mass, system, split=ORIGIN_NAMES[mass.origin], note=whole(" ".join(notes)))


def fixed_lines(thing: Thing, system: UnitSystem) -> tuple[str, ...]:
    """Size, and what a bag takes."""
    facts = thing.facts
    sides = [facts.length_cm, facts.width_cm, facts.height_cm]
    lines = [" × ".join(length_text(side, system) for side in sides)] if all(sides) else []
    if facts.hold is not None:
        lines.append(f"Empty so. It takes {volume_text(facts.hold.volume_l, system)} of other things.")
    return tuple(lines)


def subject_of(thing: Thing, system: UnitSystem) -> FixedSubject | None:
    """The thing as it lies on a scale; None while nothing is known of its mass."""
    mass = thing.facts.mass
    return None if mass is None else FixedSubject(thing, mass, system)


def label_estimate(thing: Thing, system: UnitSystem) -> Estimate | None:
    """What the net mass on a tin's label makes, for its budget; None for anything else and once it was weighed."""
    facts = thing.facts
    if facts.form is not Form.TIN or facts.label_kg is None or thing.readings:
        return None
    try:
        return estimate_tin(net_kg=facts.label_kg, system=system)
    except InputError:
        return None


class TinFlow(QObject):
    """From what a tin's label says to a mass kept with the tin."""

    def __init__(self, desk: Desk, card: TinCard, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._thing: Thing | None = None
        self._facts: Facts | None = None
        card.typed.connect(self._work)
        card.taken.connect(self._take)

    def show_thing(self, thing: Thing) -> None:
        """Another thing is shown; the card stays for tins alone."""
        same = self._thing is not None and self._thing.id == thing.id
        self._thing, self._facts = thing, None
        self._card.setVisible(thing.facts.form is Form.TIN)
        if not same or not any(self._card.now().net):
            label_kg = thing.facts.label_kg
            self._card.begin("" if label_kg is None else format_mass(label_kg, self._desk.units()))

    def _work(self, typed: TinTyped) -> None:
        self._facts = None
        if self._thing is None:
            return
        try:
            net_kg = self._read(self._card.net, typed.net)
            drained_kg = self._read(self._card.drained, typed.drained)
        except InputError:
            self._card.show_answer("", usable=False)
            return
        if net_kg is None and drained_kg is None and not typed.size:
            self._card.show_answer("", usable=False)
            return
        try:
            found = estimate_tin(typed.size or None, net_kg=net_kg, drained_kg=drained_kg, system=self._desk.units())
        except InputError as error:
            self._card.show_answer(str(error), usable=False)
            return
        mass = Measured(found.mass.value, found.mass.u, Origin.LABEL if net_kg or drained_kg else Origin.ESTIMATE)
        self._facts = replace(self._thing.facts, mass=mass, label_kg=net_kg or self._thing.facts.label_kg)
        self._card.show_answer(f"Whole it weighs {measured_text(mass, self._desk.units())}.", usable=True)

    def _read(self, field: LineField, text: str) -> float | None:
        field.show_fault("")
        if not text:
            return None
        try:
            return parse_mass_kg(text, TIN_UNITS[self._desk.units()])
        except InputError as error:
            field.show_fault(str(error))
            raise

    def _take(self) -> None:
        if self._thing is not None and self._facts is not None:
            self._desk.do(ChangeThing(replace(self._thing, facts=self._facts)))
            self._card.show_answer("", usable=False)

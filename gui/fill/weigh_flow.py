"""From a typed reading to a saved one: reads what was typed, asks core how it fits, and hands the command over."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from core.errors import InputError
from core.mass.model import EMPTY, ScaleKind, ScaleReading
from core.mass.scale import MANNERS
from core.mass.weigh import reading_on
from core.quantity.display import UnitSystem, format_mass
from core.quantity.units import parse_mass_kg
from core.store.commands import AddReading
from gui.desk.desk import Desk
from gui.fill.subject import FilledSubject, Subject
from gui.fill.weigh_card import WeighCard
from gui.fill.weigh_form import Typed
from gui.fill.words import whole
from gui.widgets import LineField

EXAMPLES = {
    UnitSystem.METRIC: (("82.6 kg", "68.0 kg"), "14.6 kg"),
    UnitSystem.US: (("182.0 lb", "150.0 lb"), "32.2 lb"),
}
UNITS = {UnitSystem.METRIC: "kg", UnitSystem.US: "lb"}


class WeighFlow(QObject):
    """`subject` tells what is on the scale whenever it matters; `saved` after a reading was."""

    saved = Signal()

    def __init__(self, desk: Desk, card: WeighCard, subject: Callable[[], Subject | None], parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._subject = subject
        self._reading: ScaleReading | None = None
        form = card.form
        form.typed.connect(self._judge)
        form.kept.connect(self._keep)
        form.trusted.connect(self._trust)
        form.dropped.connect(self._drop)

    def begin(self, shown: str) -> None:
        """Open the form for what is drawn now (`shown` in words; nothing for a thing that is not filled)."""
        self._reading = None
        self._card.form.begin(self._desk.record.clock().date(), shown)
        self._card.open()
        self._show_units()
        self._card.form.reading.edit.setFocus()

    def follow(self, shown: str) -> None:
        """Something else is drawn; judge the reading anew if one is typed."""
        if self._card.is_open():
            self._card.form.show_shown(shown)
            self._show_units()
            self._judge(self._card.form.now())

    def _show_units(self) -> None:
        system = self._desk.units()
        pair, one = EXAMPLES[system]
        kind = self._card.form.now().kind
        both = kind is ScaleKind.BATHROOM_DIFFERENCE
        step = format_mass(MANNERS[kind].resolution_kg, system)
        self._card.form.show_units(pair[0] if both else one, pair[1], step, f"0 {UNITS[system]}")

    def _judge(self, typed: Typed) -> None:
        form = self._card.form
        self._show_units()
        self._reading = None
        subject = self._on_scale(typed)
        kg, without_kg = self._read(form.reading), self._read(form.without())
        step_kg = self._read(form.step)
        missing = kg is None or (typed.kind is ScaleKind.BATHROOM_DIFFERENCE and without_kg is None)
        if subject is None or kg is None or missing or any(field.fault() for field in (form.without(), form.step)):
            form.show_verdict("", agrees=None)
            return
        try:
            reading = reading_on(typed.kind, kg, without_kg=without_kg, resolution_kg=step_kg, date=typed.date)
            found = subject.weighed(reading)
        except InputError as error:
            form.show_verdict(str(error), agrees=None)
            return
        self._reading = reading
        form.show_verdict(whole(found.sentence), agrees=found.agrees)

    def _read(self, field: LineField) -> float | None:
        """The mass in a field; a fault is said below it, once there is more than a digit to go by."""
        text = field.text().strip()
        if not text:
            field.show_fault("")
            return None
        # Only a scale with nothing on it may show less than nothing.
        below = field is self._card.form.nothing and text[0] in "-−"
        try:
            kg = parse_mass_kg(text[1:] if below else text, UNITS[self._desk.units()])
        except InputError as error:
            field.show_fault(str(error))
            return None
        field.show_fault("")
        return -kg if below else kg

    def _on_scale(self, typed: Typed) -> Subject | None:
        subject = self._subject()
        if typed.empty and isinstance(subject, FilledSubject):
            return replace(subject, level=EMPTY)
        return subject

    def _keep(self) -> None:
        subject = self._on_scale(self._card.form.now())
        if subject is not None and self._reading is not None:
            self._save(subject.keep(self._reading))

    def _trust(self) -> None:
        subject = self._on_scale(self._card.form.now())
        if subject is None or self._reading is None:
            return
        try:
            self._save(subject.trust(self._reading))
        except InputError as error:
            self._card.form.show_verdict(str(error), agrees=None)

    def _drop(self) -> None:
        self._reading = None
        self._card.shut()

    def _save(self, command: AddReading) -> None:
        if self._desk.do(command):
            self._reading = None
            self._card.shut()
            self.saved.emit()

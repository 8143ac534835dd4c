"""The list of a thing's weighings: take one away, or go back to the fill it was taken at."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from core.store.commands import RemoveReading
from core.things.model import Thing
from gui.desk.desk import Desk
from gui.fill.vessel_flow import VesselFlow
from gui.fill.weigh_card import ReadingsCard
from gui.fill.words import reading_text

GONE = "What was in it then is not at hand any more. Choose it under other fills."


class ReadingsFlow(QObject):
    """`said` (a sentence) when a weighing can't be shown."""

    said = Signal(str)

    def __init__(self, desk: Desk, card: ReadingsCard, vessel: VesselFlow, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._card = card
        self._vessel = vessel
        self._thing: Thing | None = None
        card.removed.connect(self._remove)
        card.fill_wanted.connect(self._show)

    def show_thing(self, thing: Thing | None, lessons: tuple[str, ...]) -> None:
        """List the weighings of a thing and what they taught."""
        self._thing = thing
        names = {one.id: one.name for one in self._desk.catalog.materials}
        readings = () if thing is None else thing.readings
        rows = tuple(
            (reading_text(reading, names, self._desk.units()), reading.at_level is not None) for reading in readings
        )
        self._card.show_readings(rows, lessons)

    def _remove(self, place: int) -> None:
        if self._thing is not None:
            self._desk.do(RemoveReading(self._thing.id, place))

    def _show(self, place: int) -> None:
        """Go back to the fill a reading was taken at, with the material it was of."""
        thing, asked = self._thing, self._vessel.asked()
        if thing is None or asked is None or not 0 <= place < len(thing.readings):
            return
        reading = thing.readings[place]
        if reading.at_level is None:
            return
        material_id = reading.material_id or asked.material_id
        if not self._vessel.fill_with(material_id, reading.at_level, reading.packing):
            self.said.emit(GONE)

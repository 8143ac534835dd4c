"""One place on the right side: where somebody trains, how much room there is, and when it must be quiet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from enum import StrEnum

from PySide6.QtWidgets import QWidget

from core.house.model import Place
from core.store.commands import AddPlace, ChangePlace, Command, RemovePlace
from core.store.commands.base import free_id
from gui.desk.desk import Desk
from gui.household.chip_row import ChipRow
from gui.household.entry_side import NEW, EntrySide
from gui.household.line_form import Line
from gui.household.people_typed import PlaceLine, place_lines, read_quiet, with_place_line
from gui.theme import Icon

OUTDOORS, NEIGHBOURS, WET = "outdoors", "neighbours", "wet"
_TRAITS = ((OUTDOORS, "outdoors"), (NEIGHBOURS, "neighbours below"), (WET, "wet ground"))
_QUIET = (PlaceLine.QUIET_FROM, PlaceLine.QUIET_TO)


class PlaceSide(EntrySide[Place]):
    """See the module."""

    def __init__(self, desk: Desk, *, parent: QWidget | None = None) -> None:
        self.traits = ChipRow("What it is like")
        super().__init__(desk, Icon.HOUSE, (self.traits,), parent)
        self.traits.edited.connect(self._keep_traits)

    def _entries(self) -> Iterable[Place]:
        return self._desk.house().places

    def _question(self) -> str:
        return "Where else do you train?" if self._desk.house().places else "Where do you train?"

    def _lines(self, entry: Place | None) -> tuple[Line, ...]:
        return place_lines(entry, self._desk.units())

    def _show_choices(self, entry: Place | None) -> None:
        on = _traits_of(entry) if entry is not None else ()
        self.traits.show_chips(tuple((key, words, key in on) for key, words in _TRAITS))

    def _with_line(self, entry: Place, key: StrEnum, text: str) -> Place:
        if key in _QUIET:
            return replace(entry, quiet=read_quiet(*(self.form.text(line) for line in _QUIET)))
        return with_place_line(entry, PlaceLine(key), text, self._desk.units())

    def _blank(self) -> Place:
        return _with_traits(Place(id=NEW, name=""), self.traits.chosen())

    def _adding(self, entry: Place) -> Command:
        return AddPlace(replace(entry, id=free_id(entry.name, {place.id for place in self._entries()})))

    def _changing(self, entry: Place) -> Command:
        return ChangePlace(entry)

    def _removing(self, entry_id: str) -> Command:
        return RemovePlace(entry_id)

    def _keep_traits(self, chosen: tuple[str, ...]) -> None:
        place = self.entry()
        if place is not None and not self._change(_with_traits(place, chosen)):
            self.refresh()


def _traits_of(place: Place) -> tuple[str, ...]:
    flags = ((OUTDOORS, place.outdoors), (NEIGHBOURS, place.neighbours), (WET, place.wet))
    return tuple(key for key, on in flags if on)


def _with_traits(place: Place, chosen: tuple[str, ...]) -> Place:
    return replace(place, outdoors=OUTDOORS in chosen, neighbours=NEIGHBOURS in chosen, wet=WET in chosen)

"""Captioned rows of chips: several to switch on and off, or one of a few."""

from __future__ import annotations

from typing import Generic, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QVBoxLayout, QWidget

from core.house.model import Experience, Sex
from gui.household.people_typed import EXPERIENCE_NAMES, SEX_NAMES
from gui.theme import Space, TextRole
from gui.widgets import ChoiceChip, FlowLayout, Ink, Text

C = TypeVar("C")


class ChipRow(QWidget):
    """A caption and chips to switch on and off. `edited` carries the keys that are on, in order."""

    edited = Signal(object)

    def __init__(self, caption: str, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._caption = caption
        self._chips: dict[str, ChoiceChip] = {}
        self._holder = QWidget()
        self._flow = FlowLayout(gap=Space.XS, parent=self._holder)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Space.XS, 0, 0)
        column.setSpacing(Space.XS)
        column.addWidget(Text(caption, TextRole.SMALL, Ink.SOFT))
        column.addWidget(self._holder)

    def show_chips(self, chips: tuple[tuple[str, str, bool], ...]) -> None:
        """Paint chips of (key, words, on); the same chips stay, so that the keyboard stays where it is."""
        if [(key, words) for key, words, _ in chips] != [(key, chip.label()) for key, chip in self._chips.items()]:
            self._rebuild(chips)
        for key, _, on in chips:
            self._chips[key].setChecked(on)

    def chip(self, key: str) -> ChoiceChip:
        """The chip of a key."""
        return self._chips[key]

    def chosen(self) -> tuple[str, ...]:
        """The keys that are on."""
        return tuple(key for key, chip in self._chips.items() if chip.isChecked())

    def _rebuild(self, chips: tuple[tuple[str, str, bool], ...]) -> None:
        self._flow.clear()
        self._chips = {}
        for key, words, _ in chips:
            chip = ChoiceChip(words)
            chip.setAccessibleName(f"{self._caption}: {words}")
            chip.clicked.connect(self._tell)
            self._chips[key] = chip
            self._flow.addWidget(chip)

    def _tell(self) -> None:
        self.edited.emit(self.chosen())


class ChoiceRow(QWidget, Generic[C]):
    """A caption and chips of which one is on. `chosen` (its value) when the person picks another."""

    chosen = Signal(object)

    def __init__(self, caption: str, choices: tuple[tuple[C, str], ...], *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._values = tuple(value for value, _ in choices)
        self._group = QButtonGroup(self)
        holder = QWidget()
        flow = FlowLayout(gap=Space.XS, parent=holder)
        for at, (_, words) in enumerate(choices):
            chip = ChoiceChip(words)
            chip.setAccessibleName(f"{caption}: {words}")
            self._group.addButton(chip, at)
            flow.addWidget(chip)
        self._group.button(0).setChecked(True)
        self._group.idClicked.connect(self._tell)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Space.XS, 0, 0)
        column.setSpacing(Space.XS)
        column.addWidget(Text(caption, TextRole.SMALL, Ink.SOFT))
        column.addWidget(holder)

    def show_choice(self, value: C) -> None:
        """Paint another choice."""
        self._group.button(self._values.index(value)).setChecked(True)

    def choice(self) -> C:
        """The choice shown."""
        return self._values[self._group.checkedId()]

    def chip(self, value: C) -> QAbstractButton:
        """The chip of a value."""
        return self._group.button(self._values.index(value))

    def _tell(self, at: int) -> None:
        self.chosen.emit(self._values[at])


def experience_row() -> ChoiceRow[Experience]:
    """How used to strength work somebody is."""
    return ChoiceRow("Strength training so far", tuple(EXPERIENCE_NAMES.items()))


def sex_row() -> ChoiceRow[Sex | None]:
    """Which published tables apply; nothing else depends on it."""
    return ChoiceRow("Sex, only to read published tables", tuple(SEX_NAMES.items()))

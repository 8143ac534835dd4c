"""Captioned rows of chips: several to switch on and off, or one of a few."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QVBoxLayout, QWidget

from core.house.model import Experience
from gui.household.people_typed import EXPERIENCE_NAMES
from gui.theme import Space, TextRole
from gui.widgets import ChoiceChip, FlowLayout, Ink, Text


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


class ExperienceRow(QWidget):
    """How used to strength work somebody is. `chosen` (Experience) when the person picks another."""

    chosen = Signal(object)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._group = QButtonGroup(self)
        holder = QWidget()
        flow = FlowLayout(gap=Space.XS, parent=holder)
        for at, experience in enumerate(Experience):
            chip = ChoiceChip(EXPERIENCE_NAMES[experience])
            chip.setAccessibleName(f"Strength training so far: {EXPERIENCE_NAMES[experience]}")
            self._group.addButton(chip, at)
            flow.addWidget(chip)
        self._group.button(0).setChecked(True)
        self._group.idClicked.connect(self._tell)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, Space.XS, 0, 0)
        column.setSpacing(Space.XS)
        column.addWidget(Text("Strength training so far", TextRole.SMALL, Ink.SOFT))
        column.addWidget(holder)

    def show_experience(self, experience: Experience) -> None:
        """Paint another choice."""
        self._group.button(tuple(Experience).index(experience)).setChecked(True)

    def experience(self) -> Experience:
        """The choice shown."""
        return tuple(Experience)[self._group.checkedId()]

    def _tell(self, at: int) -> None:
        self.chosen.emit(tuple(Experience)[at])

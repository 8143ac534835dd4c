"""Settings: units, theme, where the data lies, and the copies one can go back to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QWidget

from gui.theme import Space, TextRole, ThemeMode
from gui.widgets.buttons import SecondaryButton
from gui.widgets.card import Card, SectionHeader
from gui.widgets.chip import ChoiceChip
from gui.widgets.fields import ChoiceField
from gui.widgets.page import Page
from gui.widgets.text import Ink, Text


class UnitChoice(StrEnum):
    """The units a person reads and types."""

    METRIC = "metric"
    US = "us"


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsView:
    """What is set now."""

    units: UnitChoice
    theme: ThemeMode
    data_folder: str
    copies: tuple[str, ...] = ()
    """When each copy one can go back to was made, newest first."""


COPY_WIDTH = 240
_UNIT_WORDS = {UnitChoice.METRIC: "kg, litres, cm", UnitChoice.US: "lb, gallons, inches"}
_THEME_WORDS = {ThemeMode.AUTO: "as the system", ThemeMode.LIGHT: "light", ThemeMode.DARK: "dark"}


class SettingsPage(Page):
    """Changes hold at once: `units_chosen` (UnitChoice), `theme_chosen` (ThemeMode); `folder_wanted` to open it.

    `copy_wanted` carries the place in the list of the copy to go back to.
    """

    units_chosen = Signal(UnitChoice)
    theme_chosen = Signal(ThemeMode)
    folder_wanted = Signal()
    copy_wanted = Signal(int)

    def __init__(self, view: SettingsView, *, parent: QWidget | None = None) -> None:
        super().__init__("Settings", "what you change here holds at once", parent=parent)
        self._units = _Choice("Units", tuple(_UNIT_WORDS.values()))
        self._theme = _Choice("Theme", tuple(_THEME_WORDS.values()))
        self._folder = Text("", TextRole.BODY, wrap=True)
        self._folder.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.copies = ChoiceField("", name="Earlier copy")
        self.copies.setMinimumWidth(COPY_WIDTH)
        self.back = SecondaryButton("Go back to it")
        self._no_copy = Text("There is no copy yet.", TextRole.BODY, Ink.SOFT)
        self._units.group.idClicked.connect(self._pick_units)
        self._theme.group.idClicked.connect(self._pick_theme)
        self.back.clicked.connect(self._pick_copy)
        self._arrange()
        self.show_settings(view)

    def show_settings(self, view: SettingsView) -> None:
        """Paint what is set now."""
        self._units.show_index(tuple(_UNIT_WORDS).index(view.units))
        self._theme.show_index(tuple(_THEME_WORDS).index(view.theme))
        self._folder.setText(view.data_folder)
        self._folder.setAccessibleName(f"Data folder: {view.data_folder}")
        self.copies.show_options(view.copies)
        for widget in (self.copies, self.back):
            widget.setVisible(bool(view.copies))
        self._no_copy.setVisible(not view.copies)

    def _arrange(self) -> None:
        open_folder = SecondaryButton("Show the folder")
        open_folder.clicked.connect(self.folder_wanted)
        data = Card()
        data.body.addWidget(SectionHeader("Your data"))
        data.body.addWidget(self._folder)
        note = "Everything Fillmark knows lies in this folder on your own machine. Nothing is sent anywhere."
        data.body.addWidget(Text(note, TextRole.SMALL, Ink.SOFT, wrap=True))
        data.body.addWidget(open_folder)
        looks = Card(gap=Space.M)
        looks.body.addWidget(self._units)
        looks.body.addWidget(self._theme)
        for card in (looks, data, self._copies_card()):
            self.body.addWidget(card)
        self.body.addStretch(1)

    def _copies_card(self) -> Card:
        card = Card()
        card.body.addWidget(SectionHeader("Earlier copies"))
        note = "A checked copy of everything is made soon after each start, and every hour in which something changed."
        card.body.addWidget(Text(note, TextRole.SMALL, Ink.SOFT, wrap=True))
        row = QHBoxLayout()
        row.setSpacing(Space.S)
        for widget in (self.copies, self.back):
            row.addWidget(widget)
        row.addStretch(1)
        card.body.addWidget(self._no_copy)
        card.body.addLayout(row)
        card.body.addWidget(Text("What is there now is copied first.", TextRole.SMALL, Ink.SOFT))
        return card

    def _pick_copy(self) -> None:
        self.copy_wanted.emit(self.copies.index())

    def _pick_units(self, at: int) -> None:
        self.units_chosen.emit(tuple(_UNIT_WORDS)[at])

    def _pick_theme(self, at: int) -> None:
        self.theme_chosen.emit(tuple(_THEME_WORDS)[at])


class _Choice(QWidget):
    """A heading and its chips, one of them on."""

    def __init__(self, heading: str, words: tuple[str, ...]) -> None:
        super().__init__()
        self.group = QButtonGroup(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.S - 2)
        title = Text(heading, TextRole.STRONG)
        title.setMinimumWidth(96)
        row.addWidget(title)
        for at, word in enumerate(words):
            chip = ChoiceChip(word)
            chip.setAccessibleName(f"{heading}: {word}")
            self.group.addButton(chip, at)
            row.addWidget(chip)
        row.addStretch(1)

    def show_index(self, at: int) -> None:
        button: QAbstractButton = self.group.button(at)
        button.setChecked(True)

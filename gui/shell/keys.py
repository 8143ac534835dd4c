"""The keys of the window: one list that makes the shortcuts and explains them, so the two can't disagree."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QGridLayout, QVBoxLayout, QWidget

from gui.shell.entry import ENTRIES, SETTINGS
from gui.theme import Space, TextRole
from gui.widgets.buttons import PrimaryButton
from gui.widgets.card import Card
from gui.widgets.chip import Chip
from gui.widgets.text import Ink, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """What a key does; several keys may do the same."""

    keys: tuple[str, ...]
    does: str


UNDO = KeyLine(keys=("Ctrl+Z",), does="Take back the last change")
REDO = KeyLine(keys=("Ctrl+Shift+Z",), does="Do it again")
QUIT = KeyLine(keys=("Ctrl+Q",), does="Close Fillmark")
HELP = KeyLine(keys=("F1",), does="Show these keys")
SETTINGS_KEY = KeyLine(keys=("Ctrl+,",), does=SETTINGS.label)

_EVERYWHERE = (
    KeyLine(keys=("Tab", "Shift+Tab"), does="Go to the next thing, or back"),
    KeyLine(keys=("Space", "Enter"), does="Press what has the ring around it"),
    KeyLine(keys=("↑", "↓"), does="Move the fill line, walk the ladder"),
    KeyLine(keys=("Page up", "Page down"), does="The same in bigger steps"),
    KeyLine(keys=("Home", "End"), does="Empty or full, lightest or heaviest"),
)


def screen_keys() -> tuple[KeyLine, ...]:
    """The key of each screen, in the order of the sidebar."""
    return tuple(KeyLine(keys=(f"Alt+{at}",), does=entry.label) for at, entry in enumerate(ENTRIES, start=1))


def all_keys() -> tuple[KeyLine, ...]:
    """Every key there is."""
    return (*screen_keys(), SETTINGS_KEY, UNDO, REDO, HELP, QUIT, *_EVERYWHERE)


class KeyHelp(QDialog):
    """All keys on one card."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        card = Card()
        grid = QGridLayout()
        grid.setHorizontalSpacing(Space.L)
        grid.setVerticalSpacing(Space.S - 2)
        for at, line in enumerate(all_keys()):
            grid.addWidget(Chip("  or  ".join(line.keys)), at, 0)
            grid.addWidget(Text(line.does), at, 1)
        grid.setColumnStretch(1, 1)
        card.body.addWidget(Text("Keys", TextRole.HEADING))
        card.body.addWidget(Text("Fillmark can be used without a mouse.", TextRole.SMALL, Ink.SOFT))
        card.body.addLayout(grid)
        close = PrimaryButton("Close")
        close.setDefault(True)
        close.clicked.connect(self.accept)
        column = QVBoxLayout(self)
        column.setContentsMargins(Space.L, Space.L, Space.L, Space.L)
        column.setSizeConstraint(QVBoxLayout.SizeConstraint.SetFixedSize)
        column.addWidget(card)
        column.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)

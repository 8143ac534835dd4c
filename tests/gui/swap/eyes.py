"""Eyes and hands for the swap screen: ask as a person would, read what stands there."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from core.swap.model import Cause
from gui.desk.wording import NO_BREAK
from gui.swap import SwapScreen
from gui.swap.answer_card import AnswerCard
from gui.widgets import Text
from tests.gui import hand
from tests.gui.looking import settle

ANSWER_MS = 20_000


def plain(text: str) -> str:
    """`text` with ordinary spaces."""
    return text.replace(NO_BREAK, " ")


def answered(screen: SwapScreen, qtbot: QtBot) -> None:
    """Wait for the answers and the ways out."""
    qtbot.waitUntil(lambda: not screen.asking.is_busy(), timeout=ANSWER_MS)
    settle()


def ask(screen: SwapScreen, text: str, qtbot: QtBot) -> None:
    """Ask for a movement as another screen would, and wait."""
    screen.panel.show_movement(text)
    answered(screen, qtbot)


def type_movement(screen: SwapScreen, text: str, qtbot: QtBot) -> None:
    """Type a movement over what stands there, and wait."""
    edit = screen.panel.movement.edit
    edit.selectAll()
    hand.type_in(edit, text)
    answered(screen, qtbot)


def because(screen: SwapScreen, cause: Cause, qtbot: QtBot) -> None:
    """Choose what is in the way, and wait."""
    hand.click(screen.panel.causes.button(tuple(Cause).index(cause)))
    answered(screen, qtbot)


def names(screen: SwapScreen) -> list[str]:
    """The answers, best first."""
    return [card.view().name for card in screen.cards()]


def words(widget: QWidget) -> str:
    """Everything that can be read in a widget, with ordinary spaces."""
    return plain("\n".join(text.text() for text in widget.findChildren(Text) if text.isVisible()))


def opened(card: AnswerCard) -> str:
    """Open a card; what it then says."""
    hand.click(card.more)
    settle()
    details = card.details()
    assert details is not None
    return plain("\n".join(details.texts()))

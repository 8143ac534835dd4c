"""Teaching a container by pouring: its shape follows the owner's table, and one undo brings the old one back."""

from __future__ import annotations

from PySide6.QtCore import Qt

from core.mass.model import PourTable, StraightBox
from gui.desk.desk import Desk
from gui.fill import FillScreen
from tests.gui import hand
from tests.gui.fill.eyes import plain

POURS = "10 L 12 cm; 20 L 30 cm; 26 L 40 cm"


def shape(desk: Desk) -> object:
    container = desk.house().thing("carrier").facts.container
    assert container is not None
    return container.shape


def test_pours_become_the_shape_and_undo_takes_them_back(screen: FillScreen, desk: Desk) -> None:
    hand.click(screen.left.controls.pours)
    card = screen.side.pours
    assert card.field.edit.hasFocus()
    hand.type_in(card.field.edit, POURS)
    assert plain(card.answer()).startswith("Half full, 12.5 L, it then stands at 16.")
    hand.key(card.field.edit, Qt.Key.Key_Return)
    assert isinstance(shape(desk), PourTable)
    assert not card.isVisible()
    assert "by your own pour table" in screen.bar.subtitle()
    desk.undo()
    assert isinstance(shape(desk), StraightBox)


def test_what_is_wrong_with_pours_is_said(screen: FillScreen, desk: Desk) -> None:
    hand.click(screen.left.controls.pours)
    card = screen.side.pours
    hand.type_in(card.field.edit, "10 L 12 cm; 8 L 30 cm")
    assert "does not rise above 10 L" in card.answer()
    assert not card.take.isVisible()
    card.field.edit.selectAll()
    hand.type_in(card.field.edit, "10 L 12 cm")
    assert "pour on until it is full" in card.answer()
    hand.key(card.field.edit, Qt.Key.Key_Return)
    assert isinstance(shape(desk), StraightBox)

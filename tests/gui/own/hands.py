"""Hands for the screen of own entries: begin from an original, write into a field, save."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from core.house.own import OwnKind
from gui.own import OwnScreen
from gui.own.field import Field, LineOf
from tests.gui import hand
from tests.gui.looking import settle

CHECKED_MS = 20_000


def checked(screen: OwnScreen, qtbot: QtBot) -> None:
    """Wait until what is typed was checked."""
    qtbot.waitUntil(lambda: not screen.editor.is_busy(), timeout=CHECKED_MS)
    settle()


def begin(screen: OwnScreen, kind: OwnKind, name: str, like: str, qtbot: QtBot) -> None:
    """Begin a new entry as a person does: its name, what it is like, the first of those offered."""
    hand.click(screen.list.new[kind])
    hand.type_in(screen.copy.name.edit, name)
    hand.type_in(screen.copy.like.edit, like)
    hand.click(next(chip for chip in screen.copy.chips if chip.label() == like))
    checked(screen, qtbot)


def write(screen: OwnScreen, key: str, text: str, qtbot: QtBot) -> None:
    """Type over what stands in a line."""
    edit = line(screen, key).line.edit
    edit.selectAll()
    hand.type_in(edit, text) if text else edit.clear()
    if not text:
        screen.editor.field(key).edited.emit()
    checked(screen, qtbot)


def line(screen: OwnScreen, key: str) -> LineOf:
    """A field that is one line."""
    found: Field = screen.editor.field(key)
    assert isinstance(found, LineOf)
    return found


def save(screen: OwnScreen, qtbot: QtBot) -> None:
    """Save what is typed."""
    checked(screen, qtbot)
    assert screen.editor.save.isEnabled(), faults(screen)
    hand.click(screen.editor.save)
    checked(screen, qtbot)


def faults(screen: OwnScreen) -> dict[str, str]:
    """The faults shown beside the fields; those of the whole under an empty key."""
    found = {field.keys[0]: field.fault() for field in screen.editor.fields() if field.fault()}
    return found | ({"": screen.editor.fault()} if screen.editor.fault() else {})

"""A hand: it clicks, drags, types and presses keys, always with the left button."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

_LEFT = Qt.MouseButton.LeftButton
_PLAIN = Qt.KeyboardModifier.NoModifier
_MIDDLE = QPoint()


def click(widget: QWidget, at: QPoint = _MIDDLE) -> None:
    """Press and release, in the middle when no place is given."""
    QTest.mouseClick(widget, _LEFT, _PLAIN, at)


def double_click(widget: QWidget, at: QPoint = _MIDDLE) -> None:
    """Two quick clicks."""
    QTest.mouseDClick(widget, _LEFT, _PLAIN, at)


def press(widget: QWidget, at: QPoint) -> None:
    """Press and hold."""
    QTest.mousePress(widget, _LEFT, _PLAIN, at)


def move(widget: QWidget, to: QPoint) -> None:
    """Move the pointer."""
    QTest.mouseMove(widget, to)


def release(widget: QWidget, at: QPoint = _MIDDLE) -> None:
    """Let go."""
    QTest.mouseRelease(widget, _LEFT, _PLAIN, at)


def key(widget: QWidget, pressed: Qt.Key, modifiers: Qt.KeyboardModifier = _PLAIN) -> None:
    """Press and release a key."""
    QTest.keyClick(widget, pressed, modifiers)


def type_in(widget: QWidget, text: str) -> None:
    """Type `text`."""
    QTest.keyClicks(widget, text)

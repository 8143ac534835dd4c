"""Looking at a widget as a person does: is every word whole, does every place one can reach have a name."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, Qt, QTimer
from PySide6.QtGui import QAccessible, QAction, QColor, QImage, QShortcut
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QScrollBar, QWidget

from gui.widgets import Chip, ElidedText, SteadyText
from tests.gui import hand


def settle(milliseconds: int = 20) -> None:
    """Let layouts and queued events come to rest; on a busy machine the time may be up before the layouts are."""
    turn = QEventLoop()
    QTimer.singleShot(milliseconds, turn.quit)
    turn.exec()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest.value)


def show_at(widget: QWidget, width: int, height: int) -> None:
    """Show `widget` that large, laid out."""
    widget.resize(width, height)
    widget.show()
    settle()


def clipped_labels(widget: QWidget) -> list[str]:
    """Texts of labels that do not get the room they need; those that shorten themselves on purpose are left out."""
    labels = [label.text() for label in _shown_labels(widget) if _is_clipped(label)]
    steady = (one for one in widget.findChildren(SteadyText) if one.isVisible() and one.text())
    return labels + [one.text() for one in steady if one.is_cut()]


def nameless(widget: QWidget) -> list[str]:
    """Classes of places the keyboard reaches that a screen reader could not name."""
    found = []
    for child in widget.findChildren(QWidget):
        reachable = child.focusPolicy() & Qt.FocusPolicy.TabFocus and child.isVisible()
        inner = isinstance(child, QScrollBar) or child.objectName().startswith("qt_") or child.focusProxy() is not None
        named = child.accessibleName() or (isinstance(child, QAbstractButton) and child.text())
        if reachable and not inner and not named and not isinstance(child, QLabel):
            found.append(type(child).__name__)
    return found


def unspoken(widget: QWidget) -> list[str]:
    """Classes of what is painted or pressed and has no name or no role for a screen reader."""
    found = []
    for child in widget.findChildren(QWidget):
        if not child.isVisible() or not _says_something(child):
            continue
        interface = QAccessible.queryAccessibleInterface(child)
        if not interface.text(QAccessible.Text.Name) or interface.role() is QAccessible.Role.NoRole:
            found.append(type(child).__name__)
    return found


def keys_twice(widget: QWidget) -> list[str]:
    """Keys that two actions, buttons or shortcuts of one window answer to."""
    actions = [action.shortcut() for action in widget.findChildren(QAction)]
    buttons = [button.shortcut() for button in widget.findChildren(QAbstractButton) if button.isVisible()]
    keys = Counter(key.toString() for key in (*actions, *buttons) if not key.isEmpty())
    keys.update(shortcut.key().toString() for shortcut in widget.findChildren(QShortcut))
    return [key for key, many in keys.items() if many > 1]


def stops(widget: QWidget, pressed: Qt.Key) -> set[QWidget]:
    """Where Tab or Shift+Tab stops, for as long as a walk once around takes; links are stops inside a stop."""
    at = QApplication.focusWidget() or widget
    seen = {at}
    for _ in range(2 * len(reachable(widget)) + 8):
        hand.key(at, pressed)
        at = QApplication.focusWidget() or widget
        seen.add(at)
    return seen


def reachable(widget: QWidget) -> set[QWidget]:
    """What Tab should stop at: of several chips of which one is on, the one that is."""
    return {
        child
        for child in widget.findChildren(QWidget)
        if child.focusPolicy() & Qt.FocusPolicy.TabFocus and child.isVisible() and child.isEnabled()
        if child.focusProxy() is None and not child.objectName().startswith("qt_") and not _is_off_in_group(child)
    }


def _is_off_in_group(widget: QWidget) -> bool:
    group = widget.group() if isinstance(widget, QAbstractButton) else None
    return group is not None and group.exclusive() and group.checkedButton() not in {None, widget}


def _says_something(widget: QWidget) -> bool:
    """Pressed, or painted by us and holding no widgets that say it."""
    ours = (cls for cls in type(widget).__mro__ if cls.__module__.startswith("gui."))
    painted = any("paintEvent" in vars(cls) for cls in ours)
    return isinstance(widget, QAbstractButton) or (painted and not widget.findChildren(QWidget))


def colours_in(widget: QWidget) -> set[str]:
    """Every colour painted in `widget`."""
    return colours_of(widget.grab().toImage())


def colours_of(image: QImage) -> set[str]:
    """Every colour in `image`."""
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


def shows(widget: QWidget, colour: str) -> bool:
    """Whether `colour` is painted somewhere in `widget`."""
    return QColor(colour).name() in colours_in(widget)


def _shown_labels(widget: QWidget) -> Iterator[QLabel]:
    for label in widget.findChildren(QLabel):
        if label.isVisible() and label.text() and not isinstance(label, (ElidedText, Chip)):
            yield label


def _is_clipped(label: QLabel) -> bool:
    if label.wordWrap():
        return label.height() < label.heightForWidth(label.width())
    return label.width() < label.sizeHint().width() - 1 or label.height() < label.fontMetrics().height() - 2

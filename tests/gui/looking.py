"""Looking at a widget as a person does: is every word whole, does every place one can reach have a name."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, Qt, QTimer
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QAbstractButton, QLabel, QScrollBar, QWidget

from gui.widgets import Chip, ElidedText, SteadyText


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

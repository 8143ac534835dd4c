"""Wishes that can't hold together, what would help, and the buttons that do it."""

from __future__ import annotations

from PySide6.QtCore import Signal, SignalInstance
from PySide6.QtWidgets import QWidget

from core.house.wishes import WEEKDAYS, Pin
from core.plan.model import Clash
from gui.theme import Space, TextRole
from gui.widgets import Card, FlowLayout, Ink, PrimaryButton, SecondaryButton, SectionHeader, Text

KEPT = "Nothing was changed: your last week is still there."
NOTHING_YET = "There is no week until one of them gives way."


class ClashCard(Card):
    """`pin_removed` (a `Pin`), `days_wanted` and `week_wanted` from its buttons."""

    pin_removed = Signal(object)
    days_wanted = Signal()
    week_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(padding=Space.XL, gap=Space.M, parent=parent)
        self._pins: tuple[Pin, ...] = ()
        self._wishes = Text("", TextRole.BODY, wrap=True)
        self._note = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.buttons = QWidget()
        self._flow = FlowLayout(parent=self.buttons)
        self.body.addWidget(SectionHeader("These wishes can’t hold together"))
        self.body.addWidget(self._wishes)
        self.body.addWidget(SectionHeader("Any one of these helps"))
        self.body.addWidget(self.buttons)
        self.body.addWidget(self._note)
        self.body.addStretch(1)

    def show_clash(self, clash: Clash, pins: tuple[tuple[Pin, str], ...], *, has_week: bool) -> None:
        """Paint a clash, with a button for each way out; `pins` are the pins in it with what each holds in words."""
        self._wishes.setText("\n".join(f"• {_sentence(wish)}" for wish in clash.wishes))
        self._note.setText(KEPT if has_week else NOTHING_YET)
        self._pins = tuple(pin for pin, _ in pins)
        self._flow.clear()
        for way in clash.ways_out:
            self._add_way(way, next((at for at, (pin, words) in enumerate(pins) if _is_about(way, pin, words)), None))
        if has_week:
            self._add("Back to my week", self.week_wanted)

    def _add_way(self, way: str, pin_at: int | None) -> None:
        if pin_at is None:
            self._add(_sentence(way), self.days_wanted)
            return
        button = PrimaryButton(_sentence(way))
        button.setProperty("place", pin_at)
        button.clicked.connect(self._unpin)
        self._flow.addWidget(button)

    def text(self) -> str:
        """Everything it says."""
        return f"{self._wishes.text()}\n{self._note.text()}"

    def _add(self, label: str, signal: SignalInstance) -> None:
        button = SecondaryButton(label)
        button.clicked.connect(signal)
        self._flow.addWidget(button)

    def _unpin(self) -> None:
        self.pin_removed.emit(self._pins[int(self.sender().property("place"))])


def _is_about(way: str, pin: Pin, words: str) -> bool:
    return words in way and WEEKDAYS[pin.weekday] in way and "pin" in way


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"

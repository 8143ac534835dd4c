"""Choosing two answers and setting them side by side."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt, Signal

from gui.swap.answers import Answers
from gui.swap.compare_page import ComparePage


class CompareFlow(QObject):
    """`opened` when two are chosen and shown; `closed` when the answers are wanted back."""

    opened = Signal()
    closed = Signal()

    def __init__(self, answers: Answers, page: ComparePage, parent: QObject) -> None:
        super().__init__(parent)
        self._answers = answers
        self._page = page
        self._chosen: tuple[str, ...] = ()
        answers.compare_wanted.connect(self._toggle)
        page.left.connect(self.leave)

    def forget(self) -> None:
        """Nothing is chosen any more: other answers came."""
        self._chosen = ()
        self.mark()

    def mark(self) -> None:
        """Show on the cards which are chosen."""
        for card in self._answers.cards():
            card.show_comparing(card.view().exercise_id in self._chosen)

    def leave(self) -> None:
        """Back to the answers, with the keyboard on the one chosen last."""
        last = self._chosen[-1:]
        self.forget()
        self.closed.emit()
        for card in self._answers.cards():
            if card.view().exercise_id in last:
                card.setFocus(Qt.FocusReason.TabFocusReason)

    def _toggle(self, exercise_id: str) -> None:
        """Choose an answer, or give it up; the second one opens both."""
        if exercise_id in self._chosen:
            self._chosen = tuple(one for one in self._chosen if one != exercise_id)
        else:
            self._chosen = (*self._chosen[-1:], exercise_id)
        self.mark()
        views = {card.view().exercise_id: card.view() for card in self._answers.cards()}
        if len(self._chosen) == 2:
            self._page.show_two(views[self._chosen[0]], views[self._chosen[1]])
            self.opened.emit()
            self._page.back.setFocus(Qt.FocusReason.OtherFocusReason)

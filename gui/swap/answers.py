"""The right side while a movement is asked for: its head, the way up to it, the answers, and what was left out."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.swap.answer_card import AnswerCard
from gui.swap.chain_row import ChainRow
from gui.swap.left_out_card import LeftOutCard
from gui.swap.left_out_words import LeftOutView
from gui.swap.present import SwapView
from gui.swap.used_card import UsedCard
from gui.swap.ways_card import WaysCard
from gui.theme import MovePicture, Space, TextRole
from gui.widgets import Ink, LinkButton, PictureLabel, Sentence, Span, Text

HEAD_PICTURE = 40
TO_HOUSEHOLD = "household"


class Answers(QWidget):
    """`used`, `picked`, `compare_wanted` (exercise id) from the cards; `left` when the keyboard leaves them upwards."""

    used = Signal(str)
    picked = Signal(str)
    compare_wanted = Signal(str)
    left = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._head_picture = PictureLabel(MovePicture.SQUAT, HEAD_PICTURE)
        self._asked = Text("", TextRole.HEADING, wrap=True)
        self._heading = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._itself = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.bare = Sentence(role=TextRole.SMALL, ink=Ink.SOFT)
        self.own = LinkButton("Make your own version", TextRole.SMALL)
        self.used_card = UsedCard()
        self.chain = ChainRow()
        self._cards: list[AnswerCard] = []
        self._shown = 0
        self._column = QVBoxLayout()
        self._column.setSpacing(Space.M)
        self.more = LinkButton("Show more")
        self.ways = WaysCard()
        self.left_out = LeftOutCard()
        self._arrange()

    def show_swap(self, view: SwapView, left_out: LeftOutView) -> None:
        """Paint a swap; the cards there are used again."""
        self._asked.setText(f"Instead of {view.asked}")
        self._head_picture.show_picture(view.picture)
        self._heading.setText(view.heading)
        self._itself.setText(view.itself)
        self._itself.setVisible(bool(view.itself))
        self.chain.show_steps(view.steps, view.asked)
        while len(self._cards) < len(view.answers):
            self._add_card(view)
        self._shown = len(view.answers)
        for card, answer in zip(self._cards, view.answers, strict=False):
            card.show_answer(answer)
        for at, card in enumerate(self._cards):
            card.setVisible(at < self._shown)
            card.set_chosen(at == 0)
        self.more.setVisible(view.fitting > self._shown)
        self.left_out.show_left_out(left_out, opened=not view.fitting)

    def show_bare(self, bare: bool) -> None:
        """Say that nothing is listed yet, with the way to change that."""
        words = (
            Span(text="You list no things yet, so these need your body alone. "),
            Span(text="Add what you own", link=TO_HOUSEHOLD),
        )
        self.bare.show_spans(words if bare else ())
        self.bare.setVisible(bare)

    def cards(self) -> tuple[AnswerCard, ...]:
        """The answers shown, best first."""
        return tuple(self._cards[: self._shown])

    def choose(self, exercise_id: str) -> None:
        """Draw one card as the one in hand."""
        for card in self.cards():
            card.set_chosen(card.view().exercise_id == exercise_id)

    def head(self) -> tuple[str, str, str]:
        """Whose place is taken, how many fit, and why the movement itself does not."""
        return self._asked.text(), self._heading.text(), self._itself.text()

    def _add_card(self, view: SwapView) -> None:
        card = AnswerCard(view.answers[len(self._cards)])
        card.used.connect(self.used)
        card.picked.connect(self.picked)
        card.compare_wanted.connect(self.compare_wanted)
        card.walked.connect(self._walk)
        card.left.connect(self.left)
        self._cards.append(card)
        self._column.addWidget(card)

    def _walk(self, step: int) -> None:
        cards = self.cards()
        at = next((number for number, card in enumerate(cards) if card.hasFocus()), -1) + step
        if at < 0:
            self.left.emit()
        elif at < len(cards):
            cards[at].setFocus(Qt.FocusReason.TabFocusReason)

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(Space.M)
        words = QVBoxLayout()
        words.setSpacing(Space.XXS)
        for text in (self._asked, self._heading, self._itself, self.bare):
            words.addWidget(text)
        head.addWidget(self._head_picture, 0, Qt.AlignmentFlag.AlignTop)
        head.addLayout(words, 1)
        head.addWidget(self.own, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addLayout(head)
        column.addWidget(self.used_card)
        column.addWidget(self.chain)
        column.addLayout(self._column)
        column.addWidget(self.more, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.ways)
        column.addWidget(self.left_out)
        column.addStretch(1)
        self.bare.hide()

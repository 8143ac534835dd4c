"""One answer on a card: picture, dose, chips and closeness; reasons, numbers, demands and cautions open in place.

The card is reused: `show_answer` paints another answer. From `WIDE` on the closeness stands beside the words, below it
under them; from `VERY_WIDE` on the first reasons stand between.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.swap.answer_details import AnswerDetails
from gui.swap.badges import Badges
from gui.swap.present import AnswerView
from gui.swap.use_button import UseButton
from gui.theme import Radius, Space, TextRole, tokens_of
from gui.widgets import (
    Card,
    Chip,
    ChoiceChip,
    ClosenessBars,
    FlowLayout,
    Ink,
    LinkButton,
    PictureLabel,
    Text,
)
from gui.widgets.drawing import draw_focus, open_painter

PICTURE = 72
SIDE_WIDTH = 156
WIDE, VERY_WIDE = 560, 960
MORE, LESS = "Why, and how", "Less"
COMPARE = "compare"
REASONS_AT_A_GLANCE = 3


class AnswerCard(Card):
    """`used`, `picked` and `compare_wanted` (exercise id); `walked` (-1, 1) by the arrow keys, `left` by Escape."""

    used = Signal(str)
    picked = Signal(str)
    compare_wanted = Signal(str)
    walked = Signal(int)
    left = Signal()

    def __init__(self, view: AnswerView, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._view = view
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._picture = PictureLabel(view.picture, PICTURE)
        self._badges = Badges()
        self._name = Text("", TextRole.HEADING, wrap=True)
        self._relation = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._things = Text("", TextRole.BODY, wrap=True)
        self._dose = Text("", TextRole.HEADING, wrap=True)
        self._chips: list[Chip] = []
        self._flow = FlowLayout()
        self.more = LinkButton(MORE)
        self.compare = ChoiceChip(COMPARE)
        self.use = UseButton()
        self._bars = ClosenessBars()
        self._glance = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._details: AnswerDetails | None = None
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._side = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        self._wide = True
        self._arrange()
        self.more.clicked.connect(self.toggle)
        self.use.clicked.connect(self._use)
        self.compare.clicked.connect(self._compare)
        self.show_answer(view)

    def show_answer(self, view: AnswerView) -> None:
        """Paint another answer, closed."""
        same = view.exercise_id == self._view.exercise_id
        self._view = view
        self._picture.show_picture(view.picture)
        self._badges.show_badges(view.badges)
        for label, text in (
            (self._name, view.name),
            (self._relation, view.relation),
            (self._things, view.things),
            (self._dose, view.dose),
            (self._glance, "\n".join((*view.reasons[:REASONS_AT_A_GLANCE], *view.cautions[:1]))),
        ):
            label.setText(text)
        self._show_chips(view)
        self._bars.show_closeness(view.total, view.parts)
        self.setAccessibleName(f"{view.name}: {view.dose}. {view.things}. How close: {view.total} of 100.")
        self.use.setAccessibleName(f"Use {view.name}")
        self.more.setAccessibleName(f"Why and how: {view.name}")
        self.compare.setAccessibleName(f"Compare {view.name}")
        if self._details is not None:
            self._details.show_answer(view)
            if not same:
                self._show_open(False)

    def view(self) -> AnswerView:
        """What the card shows."""
        return self._view

    def set_chosen(self, chosen: bool) -> None:
        """Draw this card as the one in hand; its button then leads."""
        super().set_chosen(chosen)
        self.use.set_leading(chosen)

    def show_comparing(self, comparing: bool) -> None:
        """Mark it as one of the two to compare."""
        self.compare.setChecked(comparing)

    def is_open(self) -> bool:
        """Whether its details are shown."""
        return self._details is not None and not self._details.isHidden()

    def toggle(self) -> None:
        """Open or close the details."""
        self._show_open(not self.is_open())

    def shows_glance(self) -> bool:
        """Whether the first reasons stand beside the words."""
        return not self._glance.isHidden()

    def details(self) -> AnswerDetails | None:
        """The part that opens, once it was opened."""
        return self._details

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        self.picked.emit(self._view.exercise_id)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.picked.emit(self._view.exercise_id)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        deeds: dict[Qt.Key, Callable[[], None]] = {
            Qt.Key.Key_Return: self._use,
            Qt.Key.Key_Enter: self._use,
            Qt.Key.Key_Space: self.toggle,
            Qt.Key.Key_C: self._compare,
            Qt.Key.Key_Down: lambda: self.walked.emit(1),
            Qt.Key.Key_Up: lambda: self.walked.emit(-1),
            Qt.Key.Key_Escape: self.left.emit,
        }
        deed = deeds.get(Qt.Key(event.key()))
        if deed is None:
            super().keyPressEvent(event)
        else:
            deed()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.hasFocus():
            painter = open_painter(self)
            draw_focus(painter, self.rect(), tokens_of(self).focus, radius=Radius.CARD)
            painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._show_glance()
        wide = self.width() >= WIDE
        if wide is not self._wide:
            self._wide = wide
            self._turn()

    def _arrange(self) -> None:
        self._row.setSpacing(Space.M)
        words = QHBoxLayout()
        words.setSpacing(Space.L)
        words.addLayout(self._left())
        words.addLayout(self._middle(), 1)
        words.addWidget(self._glance, 1, Qt.AlignmentFlag.AlignTop)
        self._side.setSpacing(Space.M)
        self._side.addWidget(self._bars)
        self._side.addStretch(1)
        self._side.addWidget(self.use, 0, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom)
        self._row.addLayout(words, 1)
        self._row.addLayout(self._side)
        self.body.addLayout(self._row)
        self._turn()

    def _turn(self) -> None:
        """Closeness beside the words, or below them."""
        beside, below = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
        self._row.setDirection(beside if self._wide else below)
        self._side.setDirection(below if self._wide else beside)
        self._bars.setMinimumWidth(SIDE_WIDTH if self._wide else 0)
        self._bars.setMaximumWidth(SIDE_WIDTH if self._wide else 2 * SIDE_WIDTH)

    def _left(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(Space.S)
        column.addWidget(self._picture)
        column.addWidget(self._badges, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(1)
        return column

    def _middle(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(Space.XS)
        for text in (self._name, self._relation, self._things, self._dose):
            column.addWidget(text)
        column.addLayout(self._flow)
        links = QHBoxLayout()
        links.setSpacing(Space.M)
        links.addSpacing(-Space.XS)  # so that its words stand below the others, not its edge
        links.addWidget(self.more)
        links.addWidget(self.compare)
        links.addStretch(1)
        column.addStretch(1)
        column.addLayout(links)
        return column

    def _show_chips(self, view: AnswerView) -> None:
        while len(self._chips) < len(view.chips):
            chip = Chip()
            self._chips.append(chip)
            self._flow.addWidget(chip)
        for at, chip in enumerate(self._chips):
            chip.setVisible(at < len(view.chips))
            if at < len(view.chips):
                chip.show_chip(*view.chips[at])
                chip.updateGeometry()

    def _show_open(self, opened: bool) -> None:
        if opened and self._details is None:
            self._details = AnswerDetails(self)
            self._details.show_answer(self._view)
            self.body.addWidget(self._details)
        if self._details is not None:
            self._details.setVisible(opened)
        self.more.show_label(LESS if opened else MORE)
        self._show_glance()

    def _show_glance(self) -> None:
        """The first reasons beside the words where there is room, until all of them are open."""
        self._glance.setVisible(self.width() >= VERY_WIDE and not self.is_open())

    def _use(self) -> None:
        self.used.emit(self._view.exercise_id)

    def _compare(self) -> None:
        self.compare_wanted.emit(self._view.exercise_id)

"""The card of everything left out: the nearest few in a sentence, then chips by reason that open lists in place."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from gui.swap.left_out_words import GroundView, LeftOutView
from gui.theme import Space, TextRole
from gui.widgets import Card, ChoiceChip, FlowLayout, Ink, Sentence, Span, Text

REASON_SHARE, NAMES_SHARE = 2, 3


class LeftOutCard(Card):
    """Any number of groups can be open at once; other answers close them again."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._view = LeftOutView(many=0, nearest=(), grounds=())
        self._sentence = Sentence()
        self.chips: list[ChoiceChip] = []
        self._flow = FlowLayout()
        self._lists = QVBoxLayout()
        self._lists.setSpacing(Space.M)
        self._open: dict[int, QWidget] = {}
        self.body.addWidget(self._sentence)
        self.body.addLayout(self._flow)
        self.body.addLayout(self._lists)

    def show_left_out(self, view: LeftOutView, *, opened: bool = False) -> None:
        """Paint another list, its largest group `opened` or all closed; the same one is left as it is."""
        self.setVisible(bool(view.many))
        if view == self._view:
            return
        self._view = view
        self._close_all()
        nearest = "; ".join(f"{name} ({why})" for name, why in view.nearest)
        tail = "." if view.many <= len(view.nearest) else f", and {view.many - len(view.nearest)} more."
        self._sentence.show_spans((Span(text="Left out: ", bold=True), Span(text=f"{nearest}{tail}")))
        self._flow.clear()
        self.chips = []
        for number, ground in enumerate(view.grounds):
            chip = ChoiceChip(ground.label)
            chip.setAccessibleName(f"Show what is left out: {ground.label}")
            chip.setProperty("number", number)
            chip.toggled.connect(self._toggle)
            self.chips.append(chip)
            self._flow.addWidget(chip)
        if opened and self.chips:
            sizes = [sum(reason.many for reason in ground.reasons) for ground in view.grounds]
            self.chips[sizes.index(max(sizes))].setChecked(True)

    def text(self) -> str:
        """Everything shown in the open lists."""
        labels = (label for holder in self._open.values() for label in holder.findChildren(Text))
        return "\n".join(label.text() for label in labels)

    def summary(self) -> str:
        """The sentence on top."""
        return self._sentence.plain_text()

    def _toggle(self, opened: bool) -> None:
        number = int(self.sender().property("number"))
        if opened:
            self._open[number] = _GroundList(self._view.grounds[number])
            before = sum(1 for other in self._open if other < number)
            self._lists.insertWidget(before, self._open[number])
        else:
            self._close(number)

    def _close(self, number: int) -> None:
        gone = self._open.pop(number)
        self._lists.removeWidget(gone)
        gone.hide()
        gone.deleteLater()

    def _close_all(self) -> None:
        for number in tuple(self._open):
            self._close(number)


class _GroundList(QWidget):
    """Reasons on the left, the movements each leaves out on the right."""

    def __init__(self, ground: GroundView) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, Space.XS, 0, 0)
        grid.setHorizontalSpacing(Space.L)
        grid.setVerticalSpacing(Space.S)
        grid.setColumnStretch(0, REASON_SHARE)
        grid.setColumnStretch(1, NAMES_SHARE)
        head = Text(_capital(ground.label.rpartition(" · ")[0]), TextRole.SMALL_STRONG)
        grid.addWidget(head, 0, 0, 1, 2)
        for row, reason in enumerate(ground.reasons, start=1):
            grid.addWidget(_top(Text(reason.why, TextRole.SMALL, wrap=True)), row, 0)
            grid.addWidget(_top(Text(reason.names, TextRole.SMALL, Ink.SOFT, wrap=True)), row, 1)


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"


def _top(text: Text) -> Text:
    text.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    return text

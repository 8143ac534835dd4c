"""One block of the week, opened: dose, things, why it was chosen, how it is done, and what can be changed."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.theme import Icon, Space, TextRole
from gui.week.present import BlockDetail
from gui.widgets import Card, Ink, Notice, PictureButton, PrimaryButton, SecondaryButton, Text


class DetailCard(Card):
    """`pin_wanted`, `ban_wanted`, `swap_wanted` and `closed`, each without arguments: the screen knows the block."""

    pin_wanted = Signal()
    ban_wanted = Signal()
    swap_wanted = Signal()
    closed = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self._title = Text("", TextRole.HEADING, wrap=True)
        self._dose = Text("", TextRole.BODY, wrap=True)
        self._things = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self._why = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._cues = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._caution = Notice()
        self.pin = SecondaryButton("Keep it on this day")
        self.ban = SecondaryButton("Not this one")
        self.swap = PrimaryButton("Swap it")
        self.close_button = PictureButton(Icon.CLOSE, "Close")
        self._arrange()
        self.pin.clicked.connect(self.pin_wanted)
        self.ban.clicked.connect(self.ban_wanted)
        self.swap.clicked.connect(self.swap_wanted)
        self.close_button.clicked.connect(self.closed)

    def show_detail(self, detail: BlockDetail) -> None:
        """Paint another block."""
        self._title.setText(detail.title)
        self._dose.setText(detail.dose)
        self._things.setText(detail.things)
        self._why.setText("\n".join(detail.why))
        self._cues.setText("\n".join(detail.cues))
        self._caution.show_sentence(" ".join(detail.cautions))
        self.pin.show_label("Let it move again" if detail.pinned else "Keep it on this day")
        self.setAccessibleName(f"{detail.title}. {detail.dose}")

    def why(self) -> str:
        """The reasons shown."""
        return self._why.text()

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self._title, 1)
        head.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignTop)
        columns = QHBoxLayout()
        columns.setSpacing(Space.L)
        for title, texts in (("", (self._dose, self._things)), ("Why this", (self._why,)), ("How", (self._cues,))):
            column = QVBoxLayout()
            column.setSpacing(Space.XS)
            if title:
                column.addWidget(Text(title, TextRole.SMALL_STRONG))
            for text in texts:
                column.addWidget(text)
            column.addStretch(1)
            columns.addLayout(column, 1)
        buttons = QHBoxLayout()
        buttons.addWidget(self.swap)
        buttons.addWidget(self.pin)
        buttons.addWidget(self.ban)
        buttons.addStretch(1)
        self.body.addLayout(head)
        self.body.addLayout(columns, 1)
        self.body.addWidget(self._caution)
        self.body.addLayout(buttons)

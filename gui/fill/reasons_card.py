"""What else could go in: fills to have at hand with one press, and why the rest must stay out."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.theme import Icon, TextRole
from gui.widgets import ActionChip, Card, FlowLayout, Ink, PictureButton, SectionHeader, Text


class ReasonsCard(Card):
    """`had` (material id) when the person says it is at hand; hidden until asked for."""

    had = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self._lead = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self._chips = QWidget()
        self._flow = FlowLayout(parent=self._chips)
        self._rest = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        close = PictureButton(Icon.CLOSE, "Close the list of other fills", size=24)
        close.clicked.connect(self.hide)
        head = QHBoxLayout()
        head.addWidget(SectionHeader("Other fills"), 1)
        head.addWidget(close, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(head)
        for widget in (self._lead, self._chips, self._rest):
            self.body.addWidget(widget)
        self.hide()

    def show_reasons(self, to_have: tuple[tuple[str, str], ...], rest: tuple[tuple[str, str], ...]) -> None:
        """Paint (id, name) of fills that only need to be at hand, and (name, why not) of the rest."""
        self._lead.setText("This container can also take these. Press what you have." if to_have else "")
        self._lead.setVisible(bool(to_have))
        self._flow.clear()
        for material_id, name in to_have:
            chip = ActionChip(f"+ {name.lower()}")
            chip.setAccessibleName(f"I have {name.lower()}")
            chip.setProperty("material", material_id)
            chip.clicked.connect(self._have)
            self._flow.addWidget(chip)
        self._chips.setVisible(bool(to_have))
        self._rest.setText("\n".join(f"{name}: {why}." for name, why in rest))

    def text(self) -> str:
        """The reasons shown."""
        return self._rest.text()

    def chips(self) -> tuple[ActionChip, ...]:
        """The fills one can say to have."""
        return tuple(chip for chip in self._chips.findChildren(ActionChip) if not chip.isHidden())

    def _have(self) -> None:
        chip = self.sender()
        if chip is not None:
            self.had.emit(str(chip.property("material")))

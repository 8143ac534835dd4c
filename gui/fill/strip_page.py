"""The fill strips before they are printed: which containers, on which paper, with which marks, and how it will look."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from core.paper.drawn import DrawnPage
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    ChoiceChip,
    FlowLayout,
    Ink,
    LinkButton,
    PaperView,
    PrimaryButton,
    SectionHeader,
    Text,
)
from gui.widgets.page import PageScroll

SIDE_WIDTH = (336, 480)
NO_PAGE = "No page yet"
HOW = (
    "Print at 100 % and measure the bar: it must be 50 mm long. Then cut out a strip and tape it upright to the "
    "outside, its 0 level with the inner base."
)


class StripPage(QWidget):
    """`wanted_changed` (places of the containers chosen), `paper_chosen`, `marks_chosen` (places), `saved` pressed."""

    wanted_changed = Signal(object)
    paper_chosen = Signal(int)
    marks_chosen = Signal(int)
    save_wanted = Signal()

    def __init__(self, papers: tuple[str, ...], marks: tuple[str, ...], *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.paper = PaperView()
        self.save = PrimaryButton("Save the PDF…")
        self.larger = LinkButton("Larger", TextRole.SMALL)
        self.before = LinkButton("Page before", TextRole.SMALL)
        self.after = LinkButton("Next page", TextRole.SMALL)
        self._pages: tuple[DrawnPage, ...] = ()
        self._at = 0
        self._is_larger = False
        self._number = Text("", TextRole.SMALL, Ink.SOFT)
        self._fault = Text("", TextRole.BODY, Ink.BAD, wrap=True)
        self._things, self._papers, self._marks = QButtonGroup(self), QButtonGroup(self), QButtonGroup(self)
        self._things.setExclusive(False)
        self._thing_chips = QWidget()
        self._thing_flow = FlowLayout(gap=Space.XS + 2, parent=self._thing_chips)
        self._arrange(_chips(self._papers, papers), _chips(self._marks, marks))
        self._connect()
        self.show_pages(())

    def show_choices(self, things: tuple[str, ...], chosen: frozenset[int], paper: int, marks: int) -> None:
        """Offer these containers; `chosen` are the places of those to print."""
        for button in self._things.buttons():
            self._things.removeButton(button)
        self._thing_flow.clear()
        for place, name in enumerate(things):
            chip = ChoiceChip(name)
            chip.setChecked(place in chosen)
            self._things.addButton(chip, place)
            self._thing_flow.addWidget(chip)
        self._papers.button(paper).setChecked(True)
        self._marks.button(marks).setChecked(True)

    def show_pages(self, pages: tuple[DrawnPage, ...], fault: str = "") -> None:
        """Other pages, or why there are none."""
        self._pages = pages
        self._at = min(self._at, max(0, len(pages) - 1))
        self._fault.setText(fault)
        self._fault.setVisible(bool(fault))
        self.save.setEnabled(bool(pages))
        self._show_page()

    def pages(self) -> tuple[DrawnPage, ...]:
        """The pages shown."""
        return self._pages

    def fault(self) -> str:
        """Why there is no page."""
        return self._fault.text()

    def chips(self) -> tuple[ChoiceChip, ...]:
        """The containers offered."""
        return tuple(one for one in self._things.buttons() if isinstance(one, ChoiceChip))

    def paper_chip(self, place: int) -> ChoiceChip:
        """The chip of a paper size."""
        return _chip(self._papers, place)

    def marks_chip(self, place: int) -> ChoiceChip:
        """The chip of a unit for the marks."""
        return _chip(self._marks, place)

    def _show_page(self) -> None:
        count = len(self._pages)
        name = f"Page {self._at + 1} of {count}" if count else NO_PAGE
        self.paper.show_page(self._pages[self._at] if count else None, name)
        self._number.setText(name)
        for button in (self.before, self.after):
            button.setVisible(count > 1)
        self.before.setEnabled(self._at > 0)
        self.after.setEnabled(self._at < count - 1)
        self.larger.setVisible(count > 0)

    def _turn_back(self) -> None:
        self._at = max(0, self._at - 1)
        self._show_page()

    def _turn_on(self) -> None:
        self._at = min(len(self._pages) - 1, self._at + 1)
        self._show_page()

    def _enlarge(self) -> None:
        self._is_larger = not self._is_larger
        self.paper.show_larger(self._is_larger)
        self.larger.show_label("Whole page" if self._is_larger else "Larger")

    def _arrange(self, papers: QWidget, marks: QWidget) -> None:
        turn = QHBoxLayout()
        turn.addWidget(self.before)
        turn.addWidget(self._number)
        turn.addWidget(self.after)
        turn.addStretch(1)
        turn.addWidget(self.larger)
        scroll = QScrollArea()
        scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(self.paper)
        for ground in (scroll.viewport(), self.paper):
            ground.setAutoFillBackground(False)
        left = Card()
        left.body.addWidget(scroll, 1)
        left.body.addLayout(turn)
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M + 2)
        for heading, chips in (("For these containers", self._thing_chips), ("Paper", papers), ("Marks", marks)):
            card = Card()
            card.body.addWidget(SectionHeader(heading))
            card.body.addWidget(chips)
            column.addWidget(card)
        last = Card()
        for widget in (self._fault, Text(HOW, TextRole.SMALL, Ink.SOFT, wrap=True)):
            last.body.addWidget(widget)
        last.body.addWidget(self.save, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(last)
        column.addStretch(1)
        side = PageScroll(inner)
        side.setMinimumWidth(SIDE_WIDTH[0])
        side.setMaximumWidth(SIDE_WIDTH[1])
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.M + 2)
        row.addWidget(left, 8)
        row.addWidget(side, 5)

    def _connect(self) -> None:
        self._things.idToggled.connect(self._tell_things)
        self._papers.idClicked.connect(self.paper_chosen)
        self._marks.idClicked.connect(self.marks_chosen)
        self.save.clicked.connect(self.save_wanted)
        self.before.clicked.connect(self._turn_back)
        self.after.clicked.connect(self._turn_on)
        self.larger.clicked.connect(self._enlarge)

    def _tell_things(self, *_ignored: object) -> None:
        chosen = frozenset(self._things.id(chip) for chip in self._things.buttons() if chip.isChecked())
        self.wanted_changed.emit(chosen)


def _chips(group: QButtonGroup, names: tuple[str, ...]) -> QWidget:
    holder = QWidget()
    flow = FlowLayout(gap=Space.XS + 2, parent=holder)
    for place, name in enumerate(names):
        chip = ChoiceChip(name)
        group.addButton(chip, place)
        flow.addWidget(chip)
    return holder


def _chip(group: QButtonGroup, place: int) -> ChoiceChip:
    found = group.button(place)
    if not isinstance(found, ChoiceChip):
        raise TypeError(f"{place} is no chip")
    return found

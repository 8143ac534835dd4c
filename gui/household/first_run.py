"""The first run on one page: who trains, what stands about, which days; then a first week."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from core.house.wishes import WEEKDAYS
from core.knowledge import Catalog
from core.things.quick_add import ReadThing
from gui.desk.names import thing_picture
from gui.household.add_bar import AddBar, AskList
from gui.household.beginning import FIRST_DAYS, BeginLine, Beginning, first_kinds
from gui.household.chip_row import experience_row
from gui.household.kind_tile import LARGE_WIDTH, WIDTH, KindTile
from gui.household.line_form import Line, LineForm
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    ChoiceChip,
    FlowLayout,
    Ink,
    LineField,
    PrimaryButton,
    RemovableChip,
    SectionHeader,
    Sentence,
    Span,
    Text,
    Tone,
)
from gui.widgets.page import PageScroll

SIDE = 356
USUAL_MINUTES = "40 min"
HINT = (
    "Press what you own, and again for one more. Sizes and masses can wait. "
    "A wall, some floor and a way outdoors are counted already."
)
WIDEST = 560
LARGE_FROM = 1100
"""From this width on there is room for larger pictures."""
DEMO = "Look around with an invented household"


class FirstRun(QWidget):
    """`began` on the button, `demo_wanted` on the link below it."""

    began = Signal()
    demo_wanted = Signal()

    def __init__(self, catalog: Catalog, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.who = LineForm()
        self.experience = experience_row()
        self.days = _Days()
        self.things = _Things(catalog)
        self.button = PrimaryButton("Plan my first week")
        self.demo = Sentence((Span(text=DEMO, link="demo"),))
        self._arrange()
        self.button.clicked.connect(self._begin)
        self.days.minutes.submitted.connect(self._begin)
        self.demo.link_followed.connect(self._ask_demo)

    def show_lines(self, lines: tuple[Line, ...]) -> None:
        """Paint the lines of the person; what is typed already stays."""
        own = tuple(replace(line, key=BeginLine(line.key.value)) for line in lines)
        if not any(self.who.text(line.key) for line in own if self.who.has(line.key)):
            self.who.show_lines(own)

    def show_faults(self, faults: tuple[tuple[BeginLine, str], ...]) -> None:
        """Say below each line what is in the way, and go to the first one."""
        told = dict(faults)
        fields = {line: self._field(line) for line in BeginLine if line is not BeginLine.DAYS}
        for line, field in fields.items():
            field.show_fault(told.get(line, ""))
        self.days.show_fault(told.get(BeginLine.DAYS, ""))
        wrong = next((field for line, field in fields.items() if line in told), None)
        if wrong is not None:
            wrong.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def page(self) -> Beginning:
        """What stands on the page."""
        return Beginning(
            name=self.who.text(BeginLine.NAME),
            body_mass=self.who.text(BeginLine.BODY_MASS),
            height=self.who.text(BeginLine.HEIGHT),
            experience=self.experience.choice(),
            ticked=self.things.ticked(),
            typed=self.things.typed(),
            days=self.days.days(),
            minutes=self.days.minutes.text(),
        )

    def _field(self, line: BeginLine) -> LineField:
        return self.days.minutes if line is BeginLine.MINUTES else self.who.field(line)

    def _arrange(self) -> None:
        who = Card(gap=Space.S)
        who.body.addWidget(SectionHeader("Who trains?"))
        who.body.addWidget(self.who)
        who.body.addWidget(self.experience)
        go = QVBoxLayout()
        go.setSpacing(Space.S)
        go.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        note = "Everything can be changed later, and nothing leaves this machine."
        go.addWidget(Text(note, TextRole.SMALL, Ink.SOFT, wrap=True))
        go.addWidget(self.demo)
        side = QWidget()
        side.setFixedWidth(SIDE)
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addWidget(who)
        column.addWidget(self.days)
        column.addLayout(go)
        column.addStretch(1)
        inner = QWidget()
        row = QHBoxLayout(inner)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.L)
        row.addWidget(side)
        row.addWidget(self.things, 1, Qt.AlignmentFlag.AlignTop)
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(PageScroll(inner))

    def _ask_demo(self, _link: str) -> None:
        self.demo_wanted.emit()

    def _begin(self, *_ignored: object) -> None:
        self.began.emit()


class _Days(Card):
    """The days as chips, and the minutes they all have."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self.chips = tuple(ChoiceChip(name[:3]) for name in WEEKDAYS)
        self.minutes = LineField("Minutes on each of them", USUAL_MINUTES)
        self.minutes.show_text(USUAL_MINUTES)
        self._fault = Text("", TextRole.SMALL, Ink.BAD, wrap=True)
        self._fault.hide()
        holder = QWidget()
        flow = FlowLayout(gap=Space.XXS, parent=holder)
        for at, (chip, name) in enumerate(zip(self.chips, WEEKDAYS, strict=True)):
            chip.setAccessibleName(f"Train on {name}")
            chip.setChecked(at in FIRST_DAYS)
            chip.clicked.connect(self._clear_fault)
            flow.addWidget(chip)
        self.body.addWidget(SectionHeader("Which days?"))
        for widget in (holder, self._fault, self.minutes):
            self.body.addWidget(widget)

    def days(self) -> tuple[int, ...]:
        """The weekdays that are on."""
        return tuple(at for at, chip in enumerate(self.chips) if chip.isChecked())

    def show_fault(self, sentence: str) -> None:
        """Say that a day is missing."""
        self._fault.setText(sentence)
        self._fault.setVisible(bool(sentence))

    def fault(self) -> str:
        """What is missing."""
        return self._fault.text()

    def _clear_fault(self) -> None:
        self.show_fault("")


class _Things(Card):
    """Pictures to tick, and a field for whatever is not among them."""

    typed_in = Signal(str)
    typing = Signal(str)

    def __init__(self, catalog: Catalog, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.M, parent=parent)
        self._typed: list[ReadThing] = []
        self._large = False
        self.tiles = tuple(KindTile(kind.id, kind.name, thing_picture(kind.icon)) for kind in first_kinds(catalog))
        self._grid = QWidget()
        self._tiling = FlowLayout(gap=Space.S, column_width=WIDTH, parent=self._grid)
        for tile in self.tiles:
            tile.installEventFilter(self)
            self._tiling.addWidget(tile)
        self.add = AddBar("Anything else? “6 books, coal bag 10 kg”")
        self.add.setMaximumWidth(WIDEST)
        self.asks = AskList()
        self._chips = QWidget()
        self._flow = FlowLayout(gap=Space.XS, parent=self._chips)
        self._chips.hide()
        self.body.addWidget(SectionHeader("What is in your house?"))
        self.body.addWidget(Text(HINT, TextRole.SMALL, Ink.SOFT, wrap=True))
        for widget in (self._grid, self.add, self.asks, self._chips):
            self.body.addWidget(widget)
        self.add.wanted.connect(self.typed_in)
        self.add.typed.connect(self.typing)

    def ticked(self) -> tuple[tuple[str, int], ...]:
        """Kinds ticked, with how many."""
        return tuple((tile.kind_id, tile.count()) for tile in self.tiles if tile.count())

    def typed(self) -> tuple[ReadThing, ...]:
        """What was typed and understood."""
        return tuple(self._typed)

    def keep(self, readings: tuple[ReadThing, ...]) -> bool:
        """Note what was understood, as chips that can be taken away; that never fails."""
        for reading in readings:
            self._typed.append(reading)
            chip = RemovableChip(reading.name if reading.count == 1 else f"{reading.count} × {reading.name}", Tone.GOOD)
            chip.clicked.connect(self._forget)
            self._flow.addWidget(chip)
        self._chips.setVisible(bool(self._typed))
        return True

    def clear(self) -> None:
        """Forget everything ticked and typed: it is in the house now."""
        for tile in self.tiles:
            tile.show_count(0)
        self._typed.clear()
        self._flow.clear()
        self._chips.hide()
        self.asks.clear()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        large = self.width() >= LARGE_FROM
        if large is not self._large:
            self._large = large
            self._tiling.set_column_width(LARGE_WIDTH if large else WIDTH)
            for tile in self.tiles:
                tile.show_large(large)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and isinstance(watched, KindTile):
            return self._walk(watched, event.key())
        return super().eventFilter(watched, event)

    def _walk(self, tile: KindTile, key: int) -> bool:
        at = self.tiles.index(tile)
        in_a_line = sum(1 for one in self.tiles if one.y() == self.tiles[0].y())
        steps = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Up: -in_a_line,
            Qt.Key.Key_Down: in_a_line,
        }
        step = steps.get(Qt.Key(key))
        if step is None:
            return False
        if 0 <= at + step < len(self.tiles):
            self.tiles[at + step].setFocus(Qt.FocusReason.OtherFocusReason)
        return True

    def _forget(self) -> None:
        sender = self.sender()
        at = next(at for at in range(self._flow.count()) if self._chip(at) is sender)
        del self._typed[at]
        item = self._flow.takeAt(at)
        widget = item.widget() if item is not None else None
        if widget is not None:
            widget.hide()
            widget.deleteLater()
        self._chips.setVisible(bool(self._typed))

    def _chip(self, at: int) -> QWidget | None:
        item = self._flow.itemAt(at)
        return item.widget() if item is not None else None

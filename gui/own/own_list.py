"""The list of what a household added to the catalog, and the ways to add, take in and give out."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from core.house.own import OwnEntry, OwnKind
from gui.theme import Icon, Space, TextRole
from gui.widgets import Card, ChoiceChip, FlowLayout, Ink, LinkButton, SecondaryButton, Text

WIDTH = 240
TITLES = {OwnKind.EXERCISE: "Movements", OwnKind.THING: "Kinds of things"}
EMPTY = {
    OwnKind.EXERCISE: "None yet. A movement you add is swapped, planned and counted like any other.",
    OwnKind.THING: "None yet. A kind you add can be typed in your household like any other.",
}


class _EntryChip(ChoiceChip):
    """Shortens a long name with … and then tells it whole as a tool tip."""

    def sizeHint(self) -> QSize:
        whole = super().sizeHint()
        room = WIDTH - 2 * Space.L
        self.setToolTip(escape(self.label()) if whole.width() > room else "")
        return QSize(min(whole.width(), room), whole.height())


class OwnList(Card):
    """`wanted` (entry id), `new_wanted` (`OwnKind`), `import_wanted`, `export_wanted`."""

    wanted = Signal(str)
    new_wanted = Signal(object)
    import_wanted = Signal()
    export_wanted = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(gap=Space.S, parent=parent)
        self.setFixedWidth(WIDTH)
        self.chips: dict[str, ChoiceChip] = {}
        self.new: dict[OwnKind, SecondaryButton] = {}
        self._flows: dict[OwnKind, FlowLayout] = {}
        self._empty: dict[OwnKind, Text] = {}
        for kind in OwnKind:
            self.body.addLayout(self._group(kind))
        self.body.addStretch(1)
        self._unusable = Text("", TextRole.SMALL, Ink.BAD, wrap=True)
        self._unusable.hide()
        self.take_in = LinkButton("Take in a file", TextRole.SMALL)
        self.give_out = LinkButton("Save all to a file", TextRole.SMALL)
        for widget in (self._unusable, self.take_in, self.give_out):
            self.body.addWidget(widget)
        self.take_in.clicked.connect(self.import_wanted)
        self.give_out.clicked.connect(self.export_wanted)

    def show_own(self, entries: tuple[OwnEntry, ...], chosen: str, unusable: tuple[str, ...] = ()) -> None:
        """Paint the entries, one of them chosen."""
        self.chips = {}
        for kind in OwnKind:
            self._flows[kind].clear()
            mine = [entry for entry in entries if entry.kind is kind]
            self._empty[kind].setVisible(not mine)
            for entry in sorted(mine, key=lambda one: (one.name.casefold(), one.id)):
                self._flows[kind].addWidget(self._chip(entry, chosen))
        self.give_out.setVisible(bool(entries))
        self._unusable.setText("\n".join(unusable))
        self._unusable.setVisible(bool(unusable))

    def _chip(self, entry: OwnEntry, chosen: str) -> ChoiceChip:
        chip = _EntryChip(entry.name)
        chip.setChecked(entry.id == chosen)
        chip.setProperty("entry", entry.id)
        chip.clicked.connect(self._want)
        self.chips[entry.id] = chip
        return chip

    def _want(self) -> None:
        self.wanted.emit(self.sender().property("entry"))

    def _group(self, kind: OwnKind) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(Space.S)
        self._flows[kind] = FlowLayout(gap=Space.S - 2)
        self._empty[kind] = Text(EMPTY[kind], TextRole.SMALL, Ink.SOFT, wrap=True)
        self.new[kind] = SecondaryButton("New movement" if kind is OwnKind.EXERCISE else "New kind", sign=Icon.PLUS)
        self.new[kind].setProperty("kind", kind.value)
        self.new[kind].clicked.connect(self._new)
        column.addWidget(Text(TITLES[kind], TextRole.SMALL_STRONG))
        column.addWidget(self._empty[kind])
        column.addLayout(self._flows[kind])
        column.addWidget(self.new[kind])
        column.addSpacing(Space.M)
        return column

    def _new(self) -> None:
        self.new_wanted.emit(OwnKind(self.sender().property("kind")))

"""The builder: how a load is held and what it should weigh; the whole ladder, the best ways, and the one in hand."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from gui.fill.build_words import LoadView
from gui.fill.controls import narrowable
from gui.fill.mass_card import MassCard
from gui.theme import Space, TextRole
from gui.widgets import (
    Card,
    ChoiceField,
    Ink,
    LadderView,
    LineField,
    Notice,
    PrimaryButton,
    RungMark,
    SectionHeader,
    TableTwin,
    Text,
    ThingCard,
    ThingView,
    Twin,
)
from gui.widgets.page import PageScroll

SIDE_WIDTH = (336, 480)
NO_TWIN = Twin(caption="", columns=("load", "step", "how"), rows=())


class BuildPage(QWidget):
    """`use_chosen` and `limit_chosen` carry places in their lists, `mass_typed` a text, `way_chosen` and
    `rung_chosen` places among the ways and on the ladder, `step_chosen` one among the lighter and heavier;
    `fill_taken` when the load in hand shall be set up.
    """

    use_chosen = Signal(int)
    mass_typed = Signal(str)
    limit_chosen = Signal(int)
    way_chosen = Signal(int)
    rung_chosen = Signal(int)
    step_chosen = Signal(int)
    fill_taken = Signal()

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.use = ChoiceField("How you hold it")
        self.mass = LineField("It should weigh", "12 kg")
        self.limit = ChoiceField("At most off by")
        for field in (self.use, self.limit):
            narrowable(field.box)
        self.ladder = LadderView(Qt.Orientation.Horizontal, empty_text="Nothing you list can be held this way.")
        self.twin = TableTwin(self.ladder, NO_TWIN)
        self._answer = Text("", TextRole.HEADING, wrap=True)
        self._ways = QVBoxLayout()
        self._group = QButtonGroup(self)
        self.near = LadderView()
        self._near_card = Card()
        self._side = _LoadSide()
        self._arrange()
        self._connect()

    def show_uses(self, names: tuple[str, ...], use: int, limits: tuple[str, ...], limit: int) -> None:
        """Offer these ways to hold a load, and these limits."""
        self.use.show_options(names, use)
        self.limit.show_options(limits, limit)

    def show_ladder(self, marks: tuple[RungMark, ...], twin: Twin) -> None:
        """Another ladder."""
        self.ladder.show_rungs(marks)
        self.twin.show_twin(twin)

    def show_wanted(self, low_kg: float, high_kg: float) -> None:
        """The loads that are near enough; (0, 0) while none is asked for."""
        self.ladder.show_wanted(low_kg, high_kg)

    def show_ways(self, sentence: str, views: tuple[ThingView, ...], chosen: int = 0) -> None:
        """Other ways; the chosen one is marked, -1 for none."""
        self._answer.setText(sentence)
        self._answer.setVisible(bool(sentence))
        held = self._cards_hold_focus()
        for card in self.cards():
            self._group.removeButton(card)
            self._ways.removeWidget(card)
            card.hide()
            card.deleteLater()
        for place, view in enumerate(views):
            card = ThingCard(view)
            self._group.addButton(card, place)
            self._ways.addWidget(card)
            card.setChecked(place == chosen)
        if held and views:
            self._group.buttons()[max(0, chosen)].setFocus()

    def show_chosen(self, place: int) -> None:
        """Mark another way, -1 for none."""
        self._group.setExclusive(False)
        for at, card in enumerate(self.cards()):
            card.setChecked(at == place)
        self._group.setExclusive(True)

    def show_load(self, view: LoadView | None, hint: str = "") -> None:
        """The load in hand; without one, what to do."""
        self._side.show_load(view, hint)

    def show_near(self, marks: tuple[RungMark, ...], current: int) -> None:
        """The steps round the load in hand; none hides them."""
        self.near.show_rungs(marks, current)
        self._near_card.setVisible(bool(marks))

    def cards(self) -> tuple[ThingCard, ...]:
        """The ways shown."""
        return tuple(one for one in self._group.buttons() if isinstance(one, ThingCard))

    def answer(self) -> str:
        """The sentence above the ways."""
        return self._answer.text()

    def side(self) -> _LoadSide:
        """What is shown of the load in hand."""
        return self._side

    def _cards_hold_focus(self) -> bool:
        return any(card.hasFocus() for card in self.cards())

    def _arrange(self) -> None:
        fields = QGridLayout()
        fields.setHorizontalSpacing(Space.M)
        for at, field in enumerate((self.use, self.mass, self.limit)):
            fields.addWidget(field, 0, at)
            fields.setColumnStretch(at, (4, 3, 3)[at])
        ask = Card(gap=Space.M)
        ask.body.addLayout(fields)
        ask.body.addWidget(self.twin)
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addWidget(ask)
        column.addWidget(self._answer)
        self._ways.setSpacing(Space.S)
        column.addLayout(self._ways)
        self._near_card.body.addWidget(SectionHeader("Lighter and heavier"))
        self._near_card.body.addWidget(self.near)
        column.addWidget(self._near_card)
        column.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.XXS)
        left, right = PageScroll(inner), PageScroll(self._side)
        right.setMinimumWidth(SIDE_WIDTH[0])
        right.setMaximumWidth(SIDE_WIDTH[1])
        row.addWidget(left, 8)
        row.addWidget(right, 5)

    def _connect(self) -> None:
        self.use.chosen.connect(self.use_chosen)
        self.limit.chosen.connect(self.limit_chosen)
        self.mass.edited.connect(self.mass_typed)
        self._group.idClicked.connect(self.way_chosen)
        self.ladder.rung_chosen.connect(self.rung_chosen)
        self._side.take.clicked.connect(self.fill_taken)
        self.near.rung_chosen.connect(self.step_chosen)
        for ladder in (self.ladder, self.near):
            ladder.rung_taken.connect(self._take)

    def _take(self, _place: int) -> None:
        self.fill_taken.emit()


class _LoadSide(QWidget):
    """The load in hand: mass, parts, steps, cautions."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.mass = MassCard()
        self._off = Text("", TextRole.SMALL, wrap=True)
        self.mass.body.addWidget(self._off)
        self._deeds = Card()
        self._steps = Text("", TextRole.BODY, wrap=True)
        self._time = Text("", TextRole.SMALL, Ink.SOFT, wrap=True)
        self.take = PrimaryButton("Use this fill")
        for widget in (SectionHeader("What to do"), self._steps, self._time):
            self._deeds.body.addWidget(widget)
        self._deeds.body.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        self._made = Card()
        self._parts = Text("", TextRole.BODY, wrap=True)
        self._made.body.addWidget(SectionHeader("What it is made of"))
        self._made.body.addWidget(self._parts)
        self.cautions = Notice()
        self._hint = Card()
        self._hint_text = Text("", TextRole.BODY, Ink.SOFT, wrap=True)
        self._hint.body.addWidget(self._hint_text)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M + 2)
        for card in (self.mass, self._deeds, self._made, self.cautions, self._hint):
            column.addWidget(card)
        column.addStretch(1)

    def show_load(self, view: LoadView | None, hint: str) -> None:
        """Paint a load, or the hint where there is none."""
        for card in (self.mass, self._deeds, self._made):
            card.setVisible(view is not None)
        self._hint.setVisible(view is None)
        self._hint_text.setText(hint)
        if view is None:
            self.cautions.show_sentence("")
            return
        self.mass.show_mass(view.mass, view.caption)
        self._off.setText(view.off)
        self._off.setVisible(bool(view.off))
        self._steps.setText("\n".join(view.steps))
        self._time.setText(view.time)
        self.take.setVisible(view.pours)
        self._parts.setText("\n".join(view.parts))
        self.cautions.show_sentence("\n".join(view.cautions))

    def steps(self) -> str:
        """What to do, as shown."""
        return self._steps.text()

    def parts(self) -> str:
        """What it is made of, as shown."""
        return self._parts.text()

    def off(self) -> str:
        """How far off it is, as shown."""
        return self._off.text()

    def hint(self) -> str:
        """What is said while no load is in hand."""
        return self._hint_text.text() if not self._hint.isHidden() else ""

"""The cards of everything owned, in groups; arrow keys walk over all of them, Delete takes one out.

Hundreds of cards are made a few at a time, so that the window stays quick; cards are kept and only repainted.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.household.thing_words import Group
from gui.theme import Space
from gui.widgets import FlowLayout, SearchField, SectionHeader, ThingCard, ThingView

COLUMN = 216
GAP = Space.S + 2
AT_ONCE, A_TURN = 30, 12
MANY = 24
"""From more things than this on there is a field to find one."""

Grouped = tuple[tuple[Group, tuple[ThingView, ...]], ...]


class ThingCards(QWidget):
    """`chosen` (id) when a card is pressed or walked to, `opened` on Enter or a double click, `removal_wanted` (id)."""

    chosen = Signal(str)
    opened = Signal(str)
    removal_wanted = Signal(str)

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._cards: dict[str, ThingCard] = {}
        self._order: tuple[str, ...] = ()
        self._chosen_id = ""
        self._waiting: list[tuple[Group, ThingView]] = []
        self._groups = {group: _Part(group.value) for group in Group}
        self.search = SearchField("Find one of your things")
        self.search.setMaximumWidth(320)
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._make_some)
        self.search.edited.connect(self._filter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M)
        column.addWidget(self.search)
        for part in self._groups.values():
            column.addWidget(part)
        column.addStretch(1)

    def show_things(self, grouped: Grouped) -> None:
        """Paint these things; cards of things that stay are kept, with the keyboard on them."""
        entries = [(group, view) for group, views in grouped for view in views]
        order = tuple(view.thing_id for _, view in entries)
        self._drop(set(self._cards) - set(order))
        if order != self._order:
            self._lay_anew(entries)
        for _, view in entries:
            if view.thing_id in self._cards:
                self._cards[view.thing_id].show_thing(view)
        self._waiting = [entry for entry in entries if entry[1].thing_id not in self._cards]
        self._make(AT_ONCE)
        self._order = order
        self.search.setVisible(len(order) > MANY)
        self._filter(self.search.text())
        self.choose(self._chosen_id)

    def choose(self, thing_id: str) -> None:
        """Draw this thing as the one in hand; Tab stops at it, the arrow keys go on from there."""
        self._chosen_id = thing_id
        if thing_id and thing_id not in self._cards:
            self._make(len(self._waiting))
        stop = thing_id if thing_id in self._cards else next(iter(self._cards), "")
        for card_id, card in self._cards.items():
            card.setChecked(card_id == thing_id)
            policy = Qt.FocusPolicy.StrongFocus if card_id == stop else Qt.FocusPolicy.ClickFocus
            card.setFocusPolicy(policy)

    def card(self, thing_id: str) -> ThingCard:
        """The card of a thing."""
        return self._cards[thing_id]

    def order(self) -> tuple[str, ...]:
        """The things in the order of the cards."""
        return self._order

    def shown(self) -> tuple[str, ...]:
        """The things whose cards are not filtered out."""
        return tuple(one for one in self._order if one in self._cards and not self._cards[one].isHidden())

    def neighbour(self, thing_id: str) -> str:
        """The thing that is in hand once this one is gone."""
        at = self._order.index(thing_id) if thing_id in self._order else 0
        rest = self._order[at + 1 :] + self._order[:at][::-1]
        return next(iter(rest), "")

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and isinstance(watched, ThingCard):
            return self._walk(watched, event.key())
        return super().eventFilter(watched, event)

    def _walk(self, card: ThingCard, key: int) -> bool:
        if key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace}:
            self.removal_wanted.emit(card.view().thing_id)
            return True
        target = self._target(card, key)
        if target is not None and target is not card:
            target.setFocus(Qt.FocusReason.OtherFocusReason)
            target.click()
        return target is not None

    def _target(self, card: ThingCard, key: int) -> ThingCard | None:
        """The card a key leads to; None for keys that lead nowhere here."""
        cards = [self._cards[one] for one in self.shown()]
        at = cards.index(card)
        if key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            return cards[0 if key == Qt.Key.Key_Home else -1]
        if key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            return cards[min(max(at + (1 if key == Qt.Key.Key_Right else -1), 0), len(cards) - 1)]
        if key in {Qt.Key.Key_Up, Qt.Key.Key_Down}:
            return self._in_line(cards, card, down=key == Qt.Key.Key_Down)
        return None

    def _in_line(self, cards: list[ThingCard], card: ThingCard, *, down: bool) -> ThingCard:
        """The card in the next line above or below that stands nearest."""
        here = card.mapTo(self, card.rect().center())
        places = [(one.mapTo(self, one.rect().center()), one) for one in cards]
        lines = [place.y() for place, _ in places if (place.y() > here.y() if down else place.y() < here.y())]
        if not lines:
            return card
        line = min(lines) if down else max(lines)
        return min((pair for pair in places if pair[0].y() == line), key=lambda pair: abs(pair[0].x() - here.x()))[1]

    def _lay_anew(self, entries: list[tuple[Group, ThingView]]) -> None:
        for group, part in self._groups.items():
            members = [view.thing_id for mine, view in entries if mine is group]
            part.lay([self._cards[one] for one in members if one in self._cards], shown=bool(members))

    def _drop(self, gone: set[str]) -> None:
        for thing_id in sorted(gone):
            card = self._cards.pop(thing_id)
            card.hide()
            card.deleteLater()

    def _make_some(self) -> None:
        self._make(A_TURN)
        self._filter(self.search.text())

    def _make(self, most: int) -> None:
        for group, view in self._waiting[:most]:
            card = ThingCard(view)
            card.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
            card.installEventFilter(self)
            card.chosen.connect(self._press)
            card.opened.connect(self.opened)
            self._cards[view.thing_id] = card
            self._groups[group].add(card)
        del self._waiting[:most]
        if self._waiting:
            self._timer.start()
        else:
            self._timer.stop()

    def _press(self, thing_id: str) -> None:
        self.choose(thing_id)
        self.chosen.emit(thing_id)

    def _filter(self, text: str) -> None:
        wanted = text.strip().casefold()
        for card in self._cards.values():
            card.setVisible(wanted in card.view().title.casefold())
        for part in self._groups.values():
            part.show_if_any()


class _Part(QWidget):
    """A heading and its cards."""

    def __init__(self, heading: str, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._holder = QWidget()
        self._flow = FlowLayout(gap=GAP, column_width=COLUMN, parent=self._holder)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(GAP)
        column.addWidget(SectionHeader(heading))
        column.addWidget(self._holder)
        self.hide()

    def lay(self, cards: list[ThingCard], *, shown: bool) -> None:
        """Put other cards in, in this order."""
        while self._flow.takeAt(0) is not None:
            continue
        for card in cards:
            self._flow.addWidget(card)
        self.setVisible(shown)

    def add(self, card: ThingCard) -> None:
        """One more at the end."""
        self._flow.addWidget(card)

    def show_if_any(self) -> None:
        """A heading without a card to be seen goes."""
        items = (self._flow.itemAt(at) for at in range(self._flow.count()))
        widgets = (item.widget() for item in items if item is not None)
        self.setVisible(any(widget is not None and not widget.isHidden() for widget in widgets))

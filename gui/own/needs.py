"""What a movement needs: a card per need with the ways it may be met, its range, and whether it may be missing."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from core.errors import InputError
from core.exercise.model import GYM_USES, LOAD_USES, Use
from core.quantity.display import UnitSystem
from gui.desk.names import USE_NAMES, USE_PICTURES
from gui.own.field import Faulted, Table, percent, percent_words
from gui.own.quantities import LENGTH, Quantity, percent_range, write_percent_range
from gui.theme import Icon, Space, TextRole, UsePicture
from gui.widgets import (
    ActionChip,
    ChoiceChip,
    FlowLayout,
    LineField,
    LinkButton,
    PictureButton,
    PictureLabel,
    RemovableChip,
    Tone,
)

MOST_NEEDS, MOST_USES = 5, 6
OF_BODY = "of your body mass"
USUAL: dict[Use, dict[str, Any]] = {
    Use.STEP: {"height_cm": [15, 45], "bears": 1.0},
    Use.SIT: {"height_cm": [40, 60], "bears": 1.0},
    Use.HANDS: {"height_cm": [30, 90], "bears": 0.5},
    Use.FEET: {"height_cm": [20, 60], "bears": 0.4},
    Use.BALANCE: {"bears": 0.2},
    Use.ROW_EDGE: {"height_cm": [60, 120], "bears": 1.0},
    Use.HANG_BAR: {"bears": 1.0},
    Use.ANCHOR: {"bears": 1.0},
}
"""What a new need of a use begins with."""
USUAL_LOAD = [0.05, 0.3]


def usual_need(use: Use) -> dict[str, Any]:
    """A need that only this use meets, with a usual range."""
    if use in LOAD_USES:
        return {"uses": [use.value], "mass_share": list(USUAL_LOAD)}
    return {"uses": [use.value], **USUAL.get(use, {})}


class NeedsOf(Faulted):
    """The list of needs."""

    def __init__(self, system: UnitSystem, *, parent: QWidget | None = None) -> None:
        super().__init__(
            ("needs",), "Needs", "Each need may be met in several ways; the best way first.", parent=parent
        )
        self._system = system
        self.cards: list[NeedCard] = []
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Space.S)
        self.add = ActionChip("+ a need")
        self.add.clicked.connect(self._offer)
        self.inner.addLayout(self._lines)
        self.inner.addWidget(self.add)

    def show_table(self, table: Table) -> None:
        for card in tuple(self.cards):
            self._drop(card)
        for need in table.get("needs") or ():
            self._append(dict(need))
        self.show_fault("")
        self.add.setVisible(len(self.cards) < MOST_NEEDS)

    def read(self) -> Table:
        return {"needs": [card.read() for card in self.cards] or None}

    def _offer(self) -> None:
        offer_uses(self.add, (use for use in Use if use not in GYM_USES), self._add)

    def _add(self, use: Use) -> None:
        self._append(usual_need(use))
        self.add.setVisible(len(self.cards) < MOST_NEEDS)
        self.edited.emit()

    def _append(self, need: dict[str, Any]) -> None:
        card = NeedCard(need, self._system)
        card.edited.connect(self.edited)
        card.drop.clicked.connect(partial(self._remove, card))
        self.cards.append(card)
        self._lines.addWidget(card)

    def _remove(self, card: NeedCard) -> None:
        self._drop(card)
        self.add.setVisible(True)
        self.edited.emit()

    def _drop(self, card: NeedCard) -> None:
        self.cards.remove(card)
        self._lines.removeWidget(card)
        card.hide()
        card.deleteLater()


class NeedCard(Faulted):
    """One need; `read` gives its table."""

    def __init__(self, need: dict[str, Any], system: UnitSystem, *, parent: QWidget | None = None) -> None:
        super().__init__(("needs",), "", parent=parent)
        self._need = need
        self._shown = ""
        self._length = Quantity(LENGTH, system)
        self._uses = [Use(use) for use in need["uses"]]
        self.is_load = self._uses[0] in LOAD_USES
        self._picture = PictureLabel(UsePicture.BODY, 28)
        self._flow = FlowLayout()
        self.drop = PictureButton(Icon.CLOSE, "Leave this need out", size=24)
        self.add_use = LinkButton("or another way", TextRole.SMALL)
        self.range = LineField("", name="Lightest and heaviest" if self.is_load else "Lowest and highest")
        self.bears = LineField("", name="Part of you it must bear")
        self.two = ChoiceChip("two alike")
        self.optional = ChoiceChip("may be missing")
        self._arrange()
        self._show()
        self.add_use.clicked.connect(self._offer)
        for chip in (self.two, self.optional):
            chip.clicked.connect(self.edited)
        for line in (self.range, self.bears):
            line.edited.connect(self.edited)

    def read(self) -> dict[str, Any]:
        """The table of the need; `InputError` for a text that can't be used."""
        need = {key: value for key, value in self._need.items() if key == "space_m"}
        need["uses"] = [use.value for use in self._uses]
        need |= self._range()
        if not self.is_load and self.bears.text().strip():
            need["bears"] = _bears(self.bears.text())
        if self.two.isChecked():
            need["count"] = 2
        if self.optional.isChecked():
            need["optional"] = True
        return need

    def _range(self) -> dict[str, Any]:
        """The range; one nobody changed stays the very same, whatever the units."""
        text, key = self.range.text().strip(), "mass_share" if self.is_load else "height_cm"
        if text == self._shown:
            return {key: self._need[key]} if key in self._need else {}
        if not text:
            return {}
        return {key: percent_range(text.replace(OF_BODY, "")) if self.is_load else self._length.parse_range(text)}

    def uses(self) -> tuple[Use, ...]:
        """The ways it may be met, the best first."""
        return tuple(self._uses)

    def show_table(self, table: Table) -> None:
        """A need is made anew rather than painted again."""
        raise NotImplementedError

    def _show(self) -> None:
        need = self._need
        share, height = need.get("mass_share"), need.get("height_cm")
        self.range.edit.setPlaceholderText(f"5 to 30 % {OF_BODY}" if self.is_load else "any height")
        if share is not None:
            self._shown = f"{write_percent_range(share)} {OF_BODY}"
        elif height is not None:
            self._shown = self._length.write_range(height)
        self.range.show_text(self._shown)
        self.bears.show_text(percent_words(need["bears"]) + " of you" if need.get("bears") else "")
        self.bears.edit.setPlaceholderText("bears nothing")
        self.bears.setVisible(not self.is_load and self._uses[0] in USUAL)
        self.range.setVisible(self.is_load or self._uses[0] in USUAL)
        self.two.setChecked(need.get("count") == 2)
        self.optional.setChecked(bool(need.get("optional")))
        self._show_uses()

    def _show_uses(self) -> None:
        self._picture.show_picture(USE_PICTURES[self._uses[0]])
        self._flow.clear()
        for use in self._uses:
            chip = RemovableChip(USE_NAMES[use], Tone.PLAIN)
            chip.clicked.connect(partial(self._remove_use, use))
            chip.setEnabled(len(self._uses) > 1)
            self._flow.addWidget(chip)
        self.add_use.setVisible(len(self._uses) < MOST_USES)

    def _remove_use(self, use: Use) -> None:
        self._uses.remove(use)
        self._show_uses()
        self.edited.emit()

    def _offer(self) -> None:
        alike = (use for use in Use if (use in LOAD_USES) is self.is_load and use not in (*self._uses, *GYM_USES))
        offer_uses(self.add_use, alike, self._add_use)

    def _add_use(self, use: Use) -> None:
        self._uses.append(use)
        self._show_uses()
        self.edited.emit()

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(Space.S)
        head.addWidget(self._picture)
        head.addLayout(self._flow, 1)
        head.addWidget(self.add_use)
        head.addWidget(self.drop)
        facts = QHBoxLayout()
        facts.setSpacing(Space.S)
        facts.addWidget(self.range, 3)
        facts.addWidget(self.bears, 2)
        facts.addWidget(self.two)
        facts.addWidget(self.optional)
        self.inner.addLayout(head)
        self.inner.addLayout(facts)


def offer_uses(below: QWidget, uses: Any, chosen: Callable[[Use], None]) -> None:
    """A menu of uses below a widget."""
    menu = QMenu(below)
    for use in uses:
        action = QAction(USE_NAMES[use], menu)
        action.triggered.connect(partial(chosen, use))
        menu.addAction(action)
    menu.popup(below.mapToGlobal(below.rect().bottomLeft()))


def _bears(text: str) -> float:
    plain = text.replace("of you", "").strip()
    try:
        return percent(plain)
    except InputError as error:
        raise InputError(text, "is no part of you", "write a percentage, like 100 %") from error

"""The right side: cards from the mass down to the cautions, scrolling when they are many."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.fill.goal_card import GoalCard
from gui.fill.mass_card import BudgetCard, MassCard
from gui.fill.pours_card import PoursCard
from gui.fill.reasons_card import ReasonsCard
from gui.fill.tin_card import TinCard
from gui.fill.uses_card import UsesCard
from gui.fill.weigh_card import ReadingsCard, WeighCard
from gui.theme import Space
from gui.widgets import Notice


class Side(QWidget):
    """Holds the cards; the screen fills them and listens to them."""

    def __init__(self, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.mass = MassCard()
        self.uses = UsesCard()
        self.weigh = WeighCard()
        self.reasons = ReasonsCard()
        self.pours = PoursCard()
        self.goal = GoalCard()
        self.tin = TinCard()
        self.budget = BudgetCard()
        self.cautions = Notice()
        self.readings = ReadingsCard()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.M + 2)
        for card in (
            self.mass,
            self.uses,
            self.weigh,
            self.reasons,
            self.pours,
            self.goal,
            self.tin,
            self.budget,
            self.cautions,
            self.readings,
        ):
            column.addWidget(card)
        column.addStretch(1)

    def show_cautions(self, sentences: tuple[str, ...]) -> None:
        """What to mind, a line each."""
        text = "\n".join(sentences)
        if text != self.cautions.sentence():
            self.cautions.show_sentence(text)

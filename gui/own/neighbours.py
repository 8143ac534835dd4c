"""The next easier and harder movements: chips to take away, and a field to find another one."""

from __future__ import annotations

from functools import partial

from PySide6.QtWidgets import QWidget

from core.exercise.find import find_exercises
from core.knowledge import Catalog
from gui.own.field import Faulted, Table
from gui.swap.movement_field import MovementField
from gui.widgets import FlowLayout, RemovableChip, Tone

NEAR_NAMES = 8


class NeighboursOf(Faulted):
    """Ids of movements of the catalog in use."""

    def __init__(self, key: str, caption: str, catalog: Catalog, *, parent: QWidget | None = None) -> None:
        super().__init__((key,), caption, parent=parent)
        self._catalog = catalog
        self._ids: list[str] = []
        self._flow = FlowLayout()
        self.field = MovementField()
        self.field.edit.setPlaceholderText("add a movement")
        self.field.edit.setAccessibleName(f"{caption}: add a movement")
        self.inner.addLayout(self._flow)
        self.inner.addWidget(self.field)
        self.field.edited.connect(self._typed)
        self.field.picked.connect(self._add)
        self.field.entered.connect(self._enter)

    def show_table(self, table: Table) -> None:
        self._ids = list(table.get(self.keys[0]) or ())
        self._show()
        self.show_fault("")

    def read(self) -> Table:
        return {self.keys[0]: list(self._ids) or None}

    def names(self) -> tuple[str, ...]:
        """The movements chosen."""
        return tuple(self._name(one) for one in self._ids)

    def _typed(self, text: str) -> None:
        found = find_exercises(text, self._catalog, NEAR_NAMES)
        self.field.show_near(tuple((one.exercise.name, "") for one in found))

    def _enter(self) -> None:
        found = find_exercises(self.field.text(), self._catalog, 1)
        if found:
            self._add(found[0].exercise.name)

    def _add(self, name: str) -> None:
        found = next(one for one in self._catalog.exercises if one.name == name)
        self.field.show_text("")
        self.field.hide_near()
        if found.id not in self._ids:
            self._ids.append(found.id)
            self._show()
            self.edited.emit()

    def _remove(self, exercise_id: str) -> None:
        self._ids.remove(exercise_id)
        self._show()
        self.edited.emit()

    def _show(self) -> None:
        self._flow.clear()
        for one in self._ids:
            chip = RemovableChip(self._name(one), Tone.PLAIN)
            chip.clicked.connect(partial(self._remove, one))
            self._flow.addWidget(chip)

    def _name(self, exercise_id: str) -> str:
        exercise = self._catalog.exercise_by_id.get(exercise_id)
        return exercise_id if exercise is None else exercise.name

"""Every drawing with its name."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.states import ShownState
from gui.theme import AnyPicture, Icon, MovePicture, Space, TextRole, ThingPicture, UsePicture
from gui.widgets import Card, FlowLayout, Ink, Page, PictureLabel, SectionHeader, Text


def pictures_page(state: ShownState) -> QWidget:
    """All drawings, whatever the state."""
    page = Page("Pictures", f"drawn in ink and accent · {state.value}")
    groups: tuple[tuple[str, tuple[AnyPicture, ...], int], ...] = (
        ("Movements", tuple(MovePicture), 84),
        ("Uses", tuple(UsePicture), 56),
        ("Things", tuple(ThingPicture), 56),
        ("Signs", tuple(Icon), 24),
    )
    for heading, names, size in groups:
        card = Card()
        card.body.addWidget(SectionHeader(heading))
        flow = FlowLayout(gap=Space.M)
        for name in names:
            flow.addWidget(_cell(name, size))
        card.body.addLayout(flow)
        page.body.addWidget(card)
    page.body.addStretch(1)
    return page


def _cell(name: AnyPicture, size: int) -> QWidget:
    cell = QWidget()
    column = QVBoxLayout(cell)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(PictureLabel(name, size), 0, Qt.AlignmentFlag.AlignHCenter)
    words = Text(name.value.split("-", 1)[-1], TextRole.TINY, Ink.SOFT)
    column.addWidget(words, 0, Qt.AlignmentFlag.AlignHCenter)
    return cell

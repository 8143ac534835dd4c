"""The two signatures: vessels of several shapes, ladders standing and lying."""

from __future__ import annotations

import itertools

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.states import ShownState
from gui.theme import Space
from gui.widgets import (
    Card,
    Contents,
    Handle,
    LadderView,
    Page,
    RungMark,
    ScaleTick,
    SectionHeader,
    Silhouette,
    TableTwin,
    Top,
    VesselFill,
    VesselView,
)

CARRIER = Silhouette(
    outline=((14.5, 0.0), (14.5, 31.0), (11.0, 34.0), (5.0, 36.5), (5.0, 41.0)), handle=Handle.SIDE, top=Top.CAP
)
BUCKET = Silhouette(outline=((9.5, 0.0), (14.5, 27.0)), handle=Handle.BAIL)
BIN = Silhouette(outline=((15.0, 0.0), (16.0, 24.0)), handle=Handle.EARS)
JAR = Silhouette(outline=((5.5, 0.0), (5.5, 14.0), (3.8, 16.5), (3.8, 18.0)), top=Top.CAP)

_CARRIER_FILL = VesselFill(
    height_cm=18.4,
    band_cm=0.5,
    contents_text="14.0 L water, 12 °C",
    height_text="18.4 cm from the base",
    mass_text="14.7 kg ± 0.3",
    spoken="14.7 kg ± 0.3: 14.0 L of water, 18.4 cm from the base",
)

_LOADS = (0.7, 1.1, 1.6, 2.6, 3.7, 4.7, 6.2, 8.0, 9.3, 10.2, 12.7, 14.7, 18.7, 22.8, 25.4)


def ticks(full_kg: int, top_cm: float) -> tuple[ScaleTick, ...]:
    """An invented scale with a mark each kilogram and a label each fifth."""
    return tuple(
        ScaleTick(height_cm=top_cm * mass / full_kg, label=f"{mass} kg" if mass % 5 == 0 else "")
        for mass in range(full_kg + 1)
    )


def rungs() -> tuple[RungMark, ...]:
    """An invented ladder with two wide steps."""
    marks = [RungMark(load_kg=_LOADS[0], load_text=f"{_LOADS[0]} kg", recipe="carrier A, empty")]
    for lower, upper in itertools.pairwise(_LOADS):
        step = round(100 * (upper / lower - 1))
        marks.append(
            RungMark(
                load_kg=upper,
                load_text=f"{upper:.1f} kg",
                recipe=f"carrier A, {upper - 0.7:.1f} L",
                step_text=f"+{step} %",
                wide_step=step > 30,
            )
        )
    return tuple(marks)


def vessel_page(state: ShownState) -> QWidget:
    """A carrier with its scale, and the same painter for other shapes."""
    page = Page("Fill & weigh", "Water carrier · 25 L, straight sides to 31 cm", scroll=False)
    row = QHBoxLayout()
    row.setSpacing(Space.M + 2)
    row.addWidget(_held(_carrier(state)), 3)
    side = QHBoxLayout()
    shapes = ((BUCKET, 17.0, Contents.GRAIN, "dry sand"), (BIN, 9.0, Contents.LIQUID, "water"))
    for silhouette, height, contents, words in shapes:
        view = VesselView()
        view.show_vessel(silhouette)
        view.show_fill(VesselFill(height_cm=height, band_cm=0.8, contents_text=words, contents=contents))
        side.addWidget(_held(view), 1)
    row.addLayout(side, 3)
    page.body.addLayout(row, 1)
    return page


def _carrier(state: ShownState) -> VesselView:
    view = VesselView()
    view.show_vessel(CARRIER, name="water carrier A")
    view.show_scale(ticks(25, 31.0))
    if state is ShownState.EMPTY:
        text = "empty carrier"
        view.show_fill(VesselFill(height_cm=0.0, contents_text=text, mass_text="0.7 kg ± 0.1", spoken=text))
    elif state is ShownState.REFUSED:
        view.show_fill(
            VesselFill(height_cm=31.0, band_cm=0.6, contents_text="full at 25.4 kg", mass_text="25.4 kg ± 0.5")
        )
    else:
        view.show_fill(_CARRIER_FILL)
    return view


def ladder_page(state: ShownState) -> QWidget:
    """The same ladder lying and standing."""
    page = Page("Loads you can make", "Hugged to the chest · 15 loads, 2 wide steps")
    marks = () if state is ShownState.EMPTY else rungs()
    strip = LadderView(Qt.Orientation.Horizontal)
    strip.show_rungs(marks, 9)
    page.body.addWidget(_held(TableTwin(strip, strip.twin())))
    ladder = LadderView()
    ladder.show_rungs(marks, 9)
    page.body.addWidget(_held(ladder))
    page.body.addStretch(1)
    return page


def _held(widget: QWidget) -> Card:
    card = Card()
    if isinstance(widget, VesselView):
        card.body.addWidget(widget, 1)
        return card
    if isinstance(widget, LadderView):
        card.body.addWidget(SectionHeader("Step by step"))
    card.body.addWidget(widget)
    return card

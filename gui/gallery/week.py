"""The ribbon of eight weeks and the days of one."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.states import ShownState
from gui.theme import Family, Icon, Space
from gui.widgets import (
    BlockView,
    Card,
    DayColumn,
    DayView,
    EffortBars,
    EmptyState,
    Page,
    PrimaryButton,
    SecondaryButton,
    WeekMark,
)

WEEKS = (
    ("test", 0.4, False),
    ("1", 0.55, False),
    ("2", 0.62, True),
    ("3", 0.75, False),
    ("4 easy", 0.5, False),
    ("5", 0.78, False),
    ("6", 0.9, False),
    ("7", 1.0, False),
    ("8 retest", 0.4, False),
)

_SQUAT = BlockView(
    block_id="1", title="Front-hugged squat", detail="4 × 12 · 22.8 kg", family=Family.SQUAT, pinned=True
)
_PUSH = BlockView(block_id="2", title="Push-up, hands on beam", detail="4 × 8 · 45 cm high", family=Family.PUSH)
_ROW = BlockView(block_id="3", title="Bent row", detail="4 × 10 · 12.7 kg", family=Family.PULL)
_CARRY = BlockView(block_id="4", title="Suitcase carry", detail="3 × 40 m · 18.7 kg", family=Family.CARRY)
_RUN = BlockView(block_id="5", title="Towpath, can talk", detail="25 min · effort 4 of 10", family=Family.GAIT)
_HIPS = BlockView(block_id="6", title="Hips, upper back, ankles", detail="9 positions × 60 s", family=Family.MOBILITY)
_PLANK = BlockView(block_id="7", title="Swing, side plank", detail="bucket, 6.2 kg", family=Family.TRUNK)
_LONG = BlockView(
    block_id="8",
    title="Heel-raised split squat with the Donaudampfschifffahrtsgesellschaft sack",
    detail="4 × 7–9 each leg · 10.2 kg ± 0.1, hold the rail the first time",
    family=Family.SQUAT,
)
_WARM = ("warm-up 8 min",)


def days(*, long: bool) -> tuple[DayView, ...]:
    """The invented week."""
    strength = (_SQUAT, _PUSH, _ROW, _LONG if long else _CARRY)
    return (
        DayView(name="Mon", minutes_text="32 of 40 min", kind="Easy run or walk", notes=_WARM, blocks=(_RUN,)),
        DayView(name="Tue", minutes_text="46 of 50 min", kind="Strength A", notes=_WARM, blocks=strength, today=True),
        DayView(name="Wed", minutes_text="22 of 30 min", kind="Mobility", notes=_WARM, blocks=(_HIPS,)),
        DayView(name="Thu", minutes_text="", kind="Rest", rest=True),
        DayView(name="Fri", minutes_text="27 of 30 min", kind="Intervals", notes=_WARM, blocks=(_PLANK, _PUSH)),
        DayView(name="Sat", minutes_text="44 of 50 min", kind="Strength B", notes=_WARM, blocks=(_SQUAT, _ROW, _PLANK)),
        DayView(name="Sun", minutes_text="55 of 60 min", kind="Loaded walk", notes=_WARM, blocks=(_CARRY,)),
    )


def week_page(state: ShownState) -> QWidget:
    """One week of the invented block."""
    page = Page("Week 2 of 8", "built from what you own · nothing to buy")
    page.bar.add_action(SecondaryButton("Print"))
    page.bar.add_action(PrimaryButton("Rebuild around my changes"))
    if state is ShownState.EMPTY:
        sentence = "Say which days you train and how long. The week is built from what you own."
        page.body.addWidget(EmptyState(Icon.CALENDAR, "No week yet", sentence, "Plan a week"))
        return page
    ribbon = Card(padding=Space.M)
    marks = (
        WeekMark(label=n, share=share, spoken=f"{share:.0%} of the hardest week", current=now)
        for n, share, now in WEEKS
    )
    ribbon.body.addWidget(EffortBars(tuple(marks)))
    page.body.addWidget(ribbon)
    row = QHBoxLayout()
    row.setSpacing(Space.S)
    for view in days(long=state is ShownState.LONG):
        row.addWidget(DayColumn(view), 1)
    page.body.addLayout(row, 1)
    return page

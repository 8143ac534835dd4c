"""Buttons, chips, fields, bars and strips, each in its kinds."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.states import ShownState
from gui.theme import Family, Icon, MovePicture, Space, TextRole
from gui.widgets import (
    ActionChip,
    BarRow,
    BarTable,
    BudgetBars,
    Card,
    Chip,
    ChoiceChip,
    ChoiceField,
    ClosenessBars,
    EmptyState,
    FlowLayout,
    Ink,
    LineField,
    LinkButton,
    LoadBar,
    Notice,
    Page,
    PictureButton,
    PrimaryButton,
    RemovableChip,
    SearchField,
    SecondaryButton,
    SectionHeader,
    Sentence,
    Span,
    Text,
    Tone,
)

_LONG = "Both water carriers from the forward locker and the patched-up daypack with the missing strap"

CLOSENESS = (
    BarRow(label="pattern", share=1.0, value_text="100"),
    BarRow(label="muscles", share=0.95, value_text="95"),
    BarRow(label="effort", share=0.9, value_text="90"),
    BarRow(label="set-up", share=0.74, value_text="74"),
)

BUDGET = (
    BarRow(label="reading the water line", share=1.0, value_text="0.24 kg"),
    BarRow(label="true capacity", share=0.67, value_text="0.16 kg"),
    BarRow(label="empty carrier", share=0.13, value_text="0.03 kg"),
    BarRow(label="water density", share=0.04, value_text="0.01 kg"),
)

WEEK_BARS = (
    BarRow(label="Squat", share=0.8, value_text="8 sets", family=Family.SQUAT),
    BarRow(label="Push, level", share=0.8, value_text="8 sets", family=Family.PUSH),
    BarRow(label="Pull, level", share=0.7, value_text="7 sets", family=Family.PULL),
    BarRow(label="Pull, overhead", share=0.0, value_text="no gear", family=Family.PULL),
    BarRow(label="Carry", share=0.6, value_text="3 + walk", family=Family.CARRY),
    BarRow(label="Trunk", share=0.6, value_text="6 sets", family=Family.TRUNK),
    BarRow(label="Walk, run, climb", share=0.5, value_text="2 days", family=Family.GAIT),
    BarRow(label="Mobility", share=0.3, value_text="1 day", family=Family.MOBILITY),
)


def controls_page(state: ShownState) -> QWidget:
    """Every control in its kinds."""
    page = Page("Controls", "Invented values; each control in its kinds")
    page.bar.add_action(SecondaryButton("Print the fill strip", sign=Icon.PRINTER))
    page.bar.add_action(SecondaryButton("I weighed it…"))
    page.bar.add_action(PrimaryButton("Use this load"))
    if state is ShownState.EMPTY:
        page.body.addWidget(_empty())
        return page
    row = QHBoxLayout()
    row.setSpacing(Space.M + 2)
    for column in (_left(state), _right(state)):
        row.addLayout(column, 1)
    page.body.addLayout(row)
    page.body.addStretch(1)
    page.toast.say("Coal bag taken off the list.", undo=True)
    return page


def _empty() -> QWidget:
    sentence = "Fillmark swaps a movement for the nearest one your house can do. It needs to know what stands there."
    return EmptyState(MovePicture.SQUAT, "Nothing to swap yet", sentence, "Add what you own")


def _left(state: ShownState) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(Space.M + 2)
    for card in (_fields(state), _chips(state), _buttons()):
        column.addWidget(card)
    column.addStretch(1)
    return column


def _right(state: ShownState) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(Space.M + 2)
    for card in (_load(), _budget(), _bars(), _words(state)):
        column.addWidget(card)
    column.addStretch(1)
    return column


def _fields(state: ShownState) -> Card:
    card = Card()
    card.body.addWidget(SearchField("Find a movement by half its name"))
    typed = LineField("Prescribed", "4 × 5 at 40 kg, effort 8")
    typed.show_text("4 × 5 at 40 stone" if state is ShownState.REFUSED else "4 × 5 at 40 kg, effort 8 of 10")
    if state is ShownState.REFUSED:
        typed.show_fault("“40 stone” is not a mass Fillmark reads; write it in kg or lb, such as 40 kg.")
    card.body.addWidget(typed)
    card.body.addWidget(ChoiceField("Where", ("Towpath · quiet after 20:00", "Cabin · 1.93 m high", "Anywhere")))
    return card


def _chips(state: ShownState) -> Card:
    card = Card()
    card.body.addWidget(Text("What is in the way?", TextRole.SMALL, Ink.SOFT))
    flow = FlowLayout(gap=Space.XS + 2)
    for at, words in enumerate(
        ("no gear for it", "it hurts or I can’t", "too hard", "too easy", "too loud", "no room")
    ):
        chip = ChoiceChip(words)
        chip.setChecked(at == 0)
        flow.addWidget(chip)
    card.body.addLayout(flow)
    spare = FlowLayout(gap=Space.XS + 2)
    long = state is ShownState.LONG
    spare.addWidget(RemovableChip("deep knee bend, left side worse than right" if long else "deep knee bend"))
    spare.addWidget(ActionChip("+ add"))
    for tone in (Tone.GOOD, Tone.FAIR, Tone.BAD, Tone.PLAIN):
        spare.addWidget(Chip(_LONG if long and tone is Tone.BAD else f"a {tone.value} chip", tone))
    card.body.addLayout(spare)
    return card


def _buttons() -> Card:
    card = Card()
    row = FlowLayout(gap=Space.S)
    off = PrimaryButton("Not now")
    off.setEnabled(False)
    quiet = SecondaryButton("Nor this")
    quiet.setEnabled(False)
    for button in (
        PrimaryButton("Use this"),
        SecondaryButton("Weigh it again"),
        off,
        quiet,
        LinkButton("All 23 and why"),
    ):
        row.addWidget(button)
    for icon, name in ((Icon.PENCIL, "Edit"), (Icon.PIN, "Pin"), (Icon.CLOSE, "Close")):
        row.addWidget(PictureButton(icon, name))
    card.body.addLayout(row)
    return card


def _load() -> Card:
    card = Card(gap=Space.XS)
    card.body.addWidget(Text("This load weighs", TextRole.SMALL, Ink.SOFT))
    row = QHBoxLayout()
    row.addWidget(Text("14.7 kg", TextRole.HUGE))
    row.addWidget(Text("± 0.3", TextRole.HEADING, Ink.SOFT))
    row.addStretch(1)
    card.body.addLayout(row)
    bar = LoadBar()
    bar.show_split(0.953, "contents 13.99 kg, empty carrier 0.68 kg")
    card.body.addWidget(bar)
    card.body.addWidget(Text("contents 13.99 kg · empty carrier 0.68 kg", TextRole.SMALL, Ink.SOFT))
    return card


def _budget() -> Card:
    card = Card()
    card.body.addWidget(SectionHeader("Where the ± comes from"))
    card.body.addWidget(BudgetBars(BUDGET))
    return card


def _bars() -> Card:
    card = Card()
    card.body.addWidget(SectionHeader("What the week trains"))
    card.body.addWidget(BarTable(WEEK_BARS))
    card.body.addWidget(ClosenessBars("91", CLOSENESS))
    return card


def _words(state: ShownState) -> Card:
    card = Card()
    bold = Span(text="Left out: ", bold=True)
    rest = Span(text="jump squat (spares knees), stool step-up (your stool <has> no load rating). ")
    card.body.addWidget(Sentence((bold, rest, Span(text="All 23 and why", link="left-out"))))
    caution = "Close the cap and tip it once before lifting. Water moves: hold it close for squats."
    card.body.addWidget(Notice(f"{_LONG}. {caution}" if state is ShownState.LONG else caution))
    return card

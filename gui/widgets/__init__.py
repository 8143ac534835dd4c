"""The widgets every screen is built from. They take plain values that somebody else computed and only paint them.

Text: Text(text, role, ink, *, wrap) · ElidedText(text, role, ink) with show_text · Sentence(spans) with show_spans,
    link_followed(str); Span(text=, bold=, link=) · SectionHeader(text) · announce(widget, sentence) ·
    SteadyText(role, ink, *, hold) and SteadyFigure() for words that follow a drag
Surfaces: Card(*, padding, gap) with body, set_chosen · Notice(sentence) with show_sentence ·
    EmptyState(picture, heading, sentence, action) with acted · PictureLabel(picture, size, *, name) · Page(title, ...)
Buttons: PrimaryButton(label, *, sign) · SecondaryButton(label, *, sign) · LinkButton(label, role) ·
    PictureButton(picture, name, *, size)
Chips: Chip(text, tone) with show_chip · ChoiceChip(text, tone) checkable · ActionChip(text, tone) ·
    RemovableChip(text, tone)
Fields: LineField(caption, placeholder, *, name) with edited, submitted, show_fault, edit · SearchField(placeholder) ·
    ChoiceField(caption, options) with chosen(int)
Layout: TitleBar(title, subtitle) with add_action · FlowLayout(*, gap, column_width) with clear ·
    ToastLine() with say, undo_wanted, action_wanted
Bars: MeterBar(*, family, thickness) with show_share · BarTable(rows), BudgetBars(rows) of BarRow(label=, share=,
    value_text=, family=) · ClosenessBars(total_text, rows) · LoadBar() with show_split · PatternBar(marks) of
    PatternMark(name=, count_text=, share=, family=) · EffortBars(marks) of WeekMark(label=, share=, spoken=, current=)
Cards: ThingCard(ThingView(thing_id=, title=, line=, detail=, chip=, chip_tone=, picture=)) with chosen, opened ·
    DayColumn(DayView(name=, minutes_text=, kind=, notes=, blocks=, foot=, rest=, today=)) and BlockCard(BlockView(
    block_id=, title=, detail=, family=, pinned=)) with head_chosen, block_chosen, block_menu_wanted
Paper: PaperView() with show_page(DrawnPage, name), show_larger
Charts: TableTwin(chart, Twin(caption=, columns=, rows=)) with show_twin
Signatures: VesselView() with show_vessel(Silhouette), show_fill(VesselFill), show_scale(ScaleTick...), height_changed,
    height_committed · LadderView(orientation) with show_rungs(RungMark...), rung_chosen, rung_taken

A widget's font is set once, when it is made: Qt's stylesheet takes a later setFont back when the theme changes. Write
numbers and their units with a no-break space, so that no line ends between them.

A name is loaded at its first use (see the end), so that the window paints before most widgets are loaded: a new one
needs its import, its place in `__all__` and its home.

Every parameter after * is by keyword; every constructor also takes parent=. `show_*` paints and never emits.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from gui.widgets.block_card import BlockCard, BlockView
    from gui.widgets.buttons import LinkButton, PictureButton, PrimaryButton, SecondaryButton
    from gui.widgets.card import Card, EmptyState, Notice, PictureLabel, SectionHeader
    from gui.widgets.chip import ActionChip, Chip, ChoiceChip, RemovableChip, Tone
    from gui.widgets.day_column import DayColumn
    from gui.widgets.day_head import DayView
    from gui.widgets.effort_ribbon import EffortBars, WeekMark
    from gui.widgets.fields import ChoiceField, LineField, SearchField
    from gui.widgets.flow import FlowLayout
    from gui.widgets.ladder import LadderView, RungMark
    from gui.widgets.meter import BarRow, BarTable, BudgetBars, ClosenessBars, LoadBar, MeterBar
    from gui.widgets.page import Page
    from gui.widgets.paper_view import PaperView
    from gui.widgets.pattern_strip import PatternBar, PatternMark
    from gui.widgets.steady import SteadyFigure, SteadyText
    from gui.widgets.text import ElidedText, Ink, Sentence, Span, Text, announce
    from gui.widgets.thing_card import ThingCard, ThingView
    from gui.widgets.title_bar import TitleBar
    from gui.widgets.toast import ToastLine
    from gui.widgets.twin import TableTwin, Twin
    from gui.widgets.vessel import Contents, Handle, ScaleTick, Silhouette, Top, VesselFill, VesselView

__all__ = [
    "ActionChip",
    "BarRow",
    "BarTable",
    "BlockCard",
    "BlockView",
    "BudgetBars",
    "Card",
    "Chip",
    "ChoiceChip",
    "ChoiceField",
    "ClosenessBars",
    "Contents",
    "DayColumn",
    "DayView",
    "EffortBars",
    "ElidedText",
    "EmptyState",
    "FlowLayout",
    "Handle",
    "Ink",
    "LadderView",
    "LineField",
    "LinkButton",
    "LoadBar",
    "MeterBar",
    "Notice",
    "Page",
    "PaperView",
    "PatternBar",
    "PatternMark",
    "PictureButton",
    "PictureLabel",
    "PrimaryButton",
    "RemovableChip",
    "RungMark",
    "ScaleTick",
    "SearchField",
    "SecondaryButton",
    "SectionHeader",
    "Sentence",
    "Silhouette",
    "Span",
    "SteadyFigure",
    "SteadyText",
    "TableTwin",
    "Text",
    "ThingCard",
    "ThingView",
    "TitleBar",
    "ToastLine",
    "Tone",
    "Top",
    "Twin",
    "VesselFill",
    "VesselView",
    "WeekMark",
    "announce",
]

_HOMES = {
    name: module
    for module, names in (
        ("block_card", "BlockCard BlockView"),
        ("buttons", "LinkButton PictureButton PrimaryButton SecondaryButton"),
        ("card", "Card EmptyState Notice PictureLabel SectionHeader"),
        ("chip", "ActionChip Chip ChoiceChip RemovableChip Tone"),
        ("day_column", "DayColumn"),
        ("day_head", "DayView"),
        ("effort_ribbon", "EffortBars WeekMark"),
        ("fields", "ChoiceField LineField SearchField"),
        ("flow", "FlowLayout"),
        ("ladder", "LadderView RungMark"),
        ("meter", "BarRow BarTable BudgetBars ClosenessBars LoadBar MeterBar"),
        ("page", "Page"),
        ("paper_view", "PaperView"),
        ("pattern_strip", "PatternBar PatternMark"),
        ("steady", "SteadyFigure SteadyText"),
        ("text", "ElidedText Ink Sentence Span Text announce"),
        ("thing_card", "ThingCard ThingView"),
        ("title_bar", "TitleBar"),
        ("toast", "ToastLine"),
        ("twin", "TableTwin Twin"),
        ("vessel", "Contents Handle ScaleTick Silhouette Top VesselFill VesselView"),
    )
    for name in names.split()
}
"""Where each widget lives. Modules load at the first use of a name, so that the window paints before most of them."""


def __getattr__(name: str) -> object:
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found: object = getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
    globals()[name] = found
    return found

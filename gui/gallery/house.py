"""The pattern strip and the cards for things."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from gui.states import ShownState
from gui.theme import Family, Space, ThingPicture
from gui.widgets import (
    Card,
    EmptyState,
    FlowLayout,
    LineField,
    Page,
    PatternBar,
    PatternMark,
    PrimaryButton,
    SectionHeader,
    Sentence,
    Span,
    ThingCard,
    ThingView,
    Tone,
)

_LONG = "The second-best enamelled water carrier that Ines’s aunt left under the foredeck"

PATTERNS = (
    ("Squat", 14, Family.SQUAT),
    ("Hinge", 9, Family.SQUAT),
    ("Lunge and step", 17, Family.SQUAT),
    ("Push, level", 12, Family.PUSH),
    ("Push, overhead", 4, Family.PUSH),
    ("Pull, level", 6, Family.PULL),
    ("Pull, overhead", 0, Family.PULL),
    ("Carry", 8, Family.CARRY),
    ("Trunk", 19, Family.TRUNK),
    ("Walk, run, climb", 7, Family.GAIT),
)

THINGS = (
    (
        "Water carrier × 2",
        "0.6 – 25.4 kg each",
        "any fill, 250 g cups",
        "estimated ± 1.9 %",
        Tone.FAIR,
        ThingPicture.JUG,
    ),
    ("Bean tins × 6", "0.47 kg each", "fixed", "label", Tone.GOOD, ThingPicture.TIN),
    ("Coal bag", "10.2 kg ± 0.1", "fixed", "weighed 3 Nov", Tone.GOOD, ThingPicture.SACK),
    ("Daypack 28 L", "1.1 kg + up to 16 kg", "holds other things", "estimated ± 3 %", Tone.FAIR, ThingPicture.BACKPACK),
    ("Mop bucket", "0.4 – 9.3 kg", "wire handle", "estimated ± 4 %", Tone.FAIR, ThingPicture.BUCKET),
    ("Lock steps", "rise 19 cm · 7 steps", "outdoors", "measured", Tone.GOOD, ThingPicture.STAIRS),
    ("Folding stool", "44 cm high", "no load rating", "not for stepping", Tone.BAD, ThingPicture.STOOL),
    ("Stern beam", "118 cm high", "rated 150 kg", "you rated it", Tone.FAIR, ThingPicture.BEAM),
)


def pattern_marks() -> tuple[PatternMark, ...]:
    """The invented boat's strip."""
    return tuple(
        PatternMark(name=name, count_text=str(many) if many else "none yet", share=1.0 if many else 0.0, family=family)
        for name, many, family in PATTERNS
    )


def house_page(state: ShownState) -> QWidget:
    """What the invented boat holds."""
    page = Page("What you own", "Narrowboat “Dipper” · 11 things · 64 movements possible")
    field = LineField("", "Add a thing: “2 five-litre bottles”", name="Add a thing")
    field.setMinimumWidth(240)
    page.bar.add_action(field)
    page.bar.add_action(PrimaryButton("Add"))
    if state is ShownState.EMPTY:
        sentence = "Tick what stands about in your house. Pictures help; the exact mass can wait."
        page.body.addWidget(EmptyState(ThingPicture.JUG, "Nothing on the list yet", sentence, "Pick from pictures"))
        return page
    page.body.addWidget(_strip())
    for heading, things in (("To lift and carry", THINGS[:5]), ("To step on, lean on, hang from", THINGS[5:])):
        page.body.addWidget(SectionHeader(heading))
        page.body.addLayout(_cards(things, state))
    page.body.addStretch(1)
    return page


def _strip() -> Card:
    card = Card()
    card.body.addWidget(PatternBar(pattern_marks()))
    gap = Span(text="Biggest gap: ", bold=True)
    text = "nothing to pull down from overhead. A sturdy towel over the stern beam would open 3 movements. "
    card.body.addWidget(Sentence((gap, Span(text=text), Span(text="Show what else would help", link="gaps"))))
    return card


def _cards(things: tuple[tuple[str, str, str, str, Tone, ThingPicture], ...], state: ShownState) -> FlowLayout:
    flow = FlowLayout(gap=Space.S + 2, column_width=216)
    for at, (title, line, detail, chip, tone, picture) in enumerate(things):
        long = state is ShownState.LONG and at % 2 == 0
        view = ThingView(
            thing_id=title,
            title=_LONG if long else title,
            line=line,
            detail=f"{detail}, {_LONG}" if long else detail,
            chip=f"{chip}, {_LONG}" if long else chip,
            chip_tone=tone,
            picture=picture,
        )
        card = ThingCard(view)
        card.setChecked(title == "Coal bag")
        flow.addWidget(card)
    return flow

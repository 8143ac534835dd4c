"""What the strip of movement patterns says: a mark per family, the biggest gap in a sentence, and what would help."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.exercise.model import Family
from gui.desk.names import FAMILY_COLOURS, FAMILY_NAMES, thing_picture
from gui.theme import ThingPicture
from gui.widgets import PatternMark, Span

if TYPE_CHECKING:
    from core.swap.gaps import FamilyState, Gaps, Helper, Together

FEW = 5
"""Fewer movements than this leave little to choose from."""
NOTHING, THIN, ENOUGH = 0.0, 0.35, 1.0
"""How far a mark is filled: no movement, few, enough to choose from."""
SHOW_HELP, ADD_PERSON = "help", "person"
COST_WORDS = ("costs nothing", "cheap", "costs some money", "real gear")
_CLOSED: dict[Family, str] = {
    Family.SQUAT: "nothing to squat with",
    Family.HINGE: "nothing to lift from the floor",
    Family.LUNGE: "nothing to lunge or step with",
    Family.PUSH_LEVEL: "nothing to push from",
    Family.PUSH_OVERHEAD: "nothing to press overhead",
    Family.PULL_LEVEL: "nothing to pull towards you",
    Family.PULL_OVERHEAD: "nothing to pull down from overhead",
    Family.CARRY: "nothing to carry",
    Family.TRUNK: "no room for the trunk",
    Family.GAIT: "nowhere to walk, run or climb",
    Family.MOBILITY: "no room to move freely",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class HelpRow:
    """A thing that would help: its kind, its name, what it opens, and whether a home usually has one."""

    kind_id: str
    name: str
    detail: str
    picture: ThingPicture


@dataclass(frozen=True, slots=True, kw_only=True)
class StripView:
    """The whole strip; `total` is the words for the title bar."""

    marks: tuple[PatternMark, ...]
    sentence: tuple[Span, ...]
    helpers: tuple[HelpRow, ...] = ()
    total: str = ""


def nobody_view() -> StripView:
    """Before anyone trains here there is nothing to count."""
    text = "Who trains? What these things let you do depends on your body mass and height. "
    return StripView(marks=_blank("–"), sentence=(Span(text=text), Span(text="Add yourself", link=ADD_PERSON)))


def waiting_view() -> StripView:
    """While the answer is worked out for the first time."""
    return StripView(marks=_blank("…"), sentence=(Span(text="Working out what these things let you do…"),))


def strip_view(found: Gaps, icons: dict[str, str]) -> StripView:
    """The answer; `icons` are the drawings of the kinds by id."""
    return StripView(
        marks=tuple(_mark(state) for state in found.families),
        sentence=_sentence(found),
        helpers=tuple(_row(helper, icons) for helper in found.would_help),
        total=f"{_movements(found.movements)} possible",
    )


def _blank(text: str) -> tuple[PatternMark, ...]:
    return tuple(
        PatternMark(name=FAMILY_NAMES[family], count_text=text, share=NOTHING, family=FAMILY_COLOURS[family])
        for family in Family
    )


def _mark(state: FamilyState) -> PatternMark:
    share = NOTHING if not state.movements else THIN if state.movements < FEW else ENOUGH
    return PatternMark(
        name=FAMILY_NAMES[state.family],
        count_text=str(state.movements) if state.movements else "none yet",
        share=share,
        family=FAMILY_COLOURS[state.family],
    )


def _sentence(found: Gaps) -> tuple[Span, ...]:
    closed = [state for state in found.families if not state.movements]
    thin = [state for state in found.families if 0 < state.movements < FEW]
    if closed:
        spans = _gap(closed[0], "Biggest gap: ", f"{_CLOSED[closed[0].family]} ({closed[0].why}). ", found)
    elif thin:
        few = min(thin, key=lambda state: state.movements)
        words = f"{FAMILY_NAMES[few.family].lower()} has {few.movements} to choose from. "
        spans = _gap(few, "Thinnest: ", words, found)
    else:
        spans = (
            Span(text="No gap: ", bold=True),
            Span(text=f"every pattern has movements to choose from. {_best(found.would_help, more='more ')}"),
        )
    link = (Span(text="Show what else would help", link=SHOW_HELP),) if found.would_help else ()
    return (*spans, *link)


def _gap(state: FamilyState, lead: str, words: str, found: Gaps) -> tuple[Span, ...]:
    opening = tuple(helper for helper in found.would_help if state.family in helper.opens)
    pair = next((both for both in found.together if state.family in both.opens), None)
    helps = _best(opening) if opening or pair is None else _both(pair)
    return (Span(text=lead, bold=True), Span(text=f"{words}{helps or _best(found.would_help)}"))


def _best(helpers: tuple[Helper, ...], more: str = "") -> str:
    """The thing that helps most: they come best first."""
    return f"{_article(helpers[0].name)} would open {_movements(helpers[0].movements, more)}. " if helpers else ""


def _both(pair: Together) -> str:
    """Two things that only together open it."""
    first, second = pair.names
    words = f"Two of “{first.lower()}”" if first == second else f"{_article(first)} and {_article(second).lower()}"
    return f"{words} together would open {_movements(pair.movements)}. "


def _row(helper: Helper, icons: dict[str, str]) -> HelpRow:
    opens = " and ".join(FAMILY_NAMES[family].lower() for family in helper.opens)
    parts = [f"opens {opens}" if opens else "", _movements(helper.movements, "more ")]
    parts.append("most homes have one" if helper.common > 1 else COST_WORDS[helper.cost])
    return HelpRow(
        kind_id=helper.kind_id,
        name=helper.name,
        detail=" · ".join(part for part in parts if part),
        picture=thing_picture(icons.get(helper.kind_id, "")),
    )


def _movements(many: int, lead: str = "") -> str:
    return f"{many} {lead}movement{'' if many == 1 else 's'}"


def _article(name: str) -> str:
    return f"{'An' if name[:1].lower() in 'aeiou' else 'A'} {name[:1].lower()}{name[1:]}"

"""What would open more, as rows one can act on: a thing to get, another place to look, something spared for nothing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from core.swap.opening import Opener
from core.things.model import ThingKind
from gui.desk.names import DEMAND_NAMES, thing_picture
from gui.swap.ask_panel import CAUSE_NAMES
from gui.swap.asking import WaysOut
from gui.theme import AnyPicture, Icon, ThingPicture

MOST_THINGS = 3
COST_WORDS = ("costs nothing", "cheap", "costs some money", "real gear")


class Deed(Enum):
    """What a row's button does."""

    HAVE = "I have one"
    LOOK = "Look there"
    UNSPARE = "Don’t spare it"
    DROP = "Ask so"


@dataclass(frozen=True, slots=True, kw_only=True)
class WayRow:
    """One way out: picture, title, what it opens, its button, and the id the button stands for."""

    picture: AnyPicture
    title: str
    detail: str
    deed: Deed
    target: str


def way_rows(ways: WaysOut, kinds: Mapping[str, ThingKind]) -> tuple[WayRow, ...]:
    """The best things first, then places, what is spared and another reason; `kinds` are those of the catalog by id."""
    things = tuple(_thing(opener, kinds) for opener in _different(ways.openers))
    places = tuple(
        WayRow(
            picture=ThingPicture.PATH,
            title=one.place.name,
            detail=f"{_movements(one.many)} fit there",
            deed=Deed.LOOK,
            target=one.place.id,
        )
        for one in ways.elsewhere
        if one.many
    )
    spared = tuple(
        WayRow(
            picture=Icon.MINUS,
            title=f"Without sparing {DEMAND_NAMES[one.demand]}",
            detail=f"{_movements(one.more, 'more ')} fit",
            deed=Deed.UNSPARE,
            target=one.demand.value,
        )
        for one in ways.unspared
    )
    return (*things, *places, *spared, *_other_reason(ways))


def _other_reason(ways: WaysOut) -> tuple[WayRow, ...]:
    if not ways.uncaused:
        return ()
    row = WayRow(
        picture=Icon.SWAP,
        title=f"If it were not “{CAUSE_NAMES[ways.question.cause]}”, only a matter of gear",
        detail=f"{_movements(ways.uncaused)} fit",
        deed=Deed.DROP,
        target=ways.question.cause.value,
    )
    return (row,)


def _different(openers: tuple[Opener, ...]) -> tuple[Opener, ...]:
    """The first few that each open something the ones before them don't."""
    found: list[Opener] = []
    opened: set[str] = set()
    for opener in openers:
        new = {exercise.id for exercise in opener.opens} - opened
        if new and len(found) < MOST_THINGS:
            found.append(opener)
            opened |= new
    return tuple(found)


def _thing(opener: Opener, kinds: Mapping[str, ThingKind]) -> WayRow:
    rest = len(opener.opens) - 1
    first = opener.opens[0].name.lower()
    opens = f"opens {first}" if not rest else f"opens {first} and {rest} more"
    cost = "most homes have one" if opener.common > 1 else COST_WORDS[opener.cost]
    return WayRow(
        picture=thing_picture(kinds[opener.kind_id].icon if opener.kind_id in kinds else ""),
        title=opener.name,
        detail=f"{opens} · {cost}",
        deed=Deed.HAVE,
        target=opener.kind_id,
    )


def _movements(many: int, lead: str = "") -> str:
    return f"{many} {lead}movement{'' if many == 1 else 's'}"

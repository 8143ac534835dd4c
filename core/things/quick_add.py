"""Adding things by typing them: "2 one-gallon milk jugs, backpack 25 L and stairs, 12 steps".

`read_things` gives one answer per item, in order: a `ReadThing`, or a `Question` where the words fit no kind or more
than one. The same text and kinds give the same answers. `make_thing` turns a reading into a thing of the house.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from core.errors import shorten
from core.things.amounts import Amounts, Changes, read_amounts, sizes_in
from core.things.item_text import Item, items_of
from core.things.making import with_changes
from core.things.matching import NEAREST, Match, find_name, nearest_kinds
from core.things.model import Hazard, Thing, ThingKind
from core.things.naming import is_plural, thing_name
from core.things.typed_numbers import loosened
from core.things.words import Spoken, Vocabulary, typical_amount, vocabulary

__all__ = ["Changes", "Question", "ReadThing", "answered", "make_thing", "read_things"]

UNCOUNTED_CONFIDENCE = 0.8
UNREAD_NUMBER_CONFIDENCE = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadThing:
    """What was understood: the kind, how many alike, a name, the facts stated, and words nothing was made of.

    `confidence` is 1 where every word was understood; below that, show the reading before it counts.
    """

    kind: ThingKind
    count: int
    name: str
    changes: Changes
    leftover: tuple[str, ...] = ()
    confidence: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """An item that could not be read for sure: one sentence, and up to three kinds to choose from."""

    sentence: str
    choices: tuple[ThingKind, ...]
    count: int
    item: Item


def read_things(text: str, kinds: tuple[ThingKind, ...]) -> tuple[ReadThing | Question, ...]:
    """One reading or question per thing typed; `InputError` for impossible numbers, too much text or none."""
    known = vocabulary(kinds)
    return tuple(_read(item, known) for item in items_of(text))


def answered(question: Question, kind: ThingKind) -> ReadThing:
    """The reading of a question's item once the person has chosen the kind."""
    amounts = read_amounts(question.item, kind)
    return _reading(question.item, kind, amounts, Match((), (), (), 1.0))


def make_thing(read: ReadThing, thing_id: str) -> Thing:
    """The thing to add to the house: the kind's facts with what was stated."""
    facts = with_changes(read.kind.facts, read.changes)
    spoilt = Hazard.HELD_CHEMICALS in facts.hazards
    return Thing(
        id=thing_id,
        kind_id=read.kind.id,
        name=read.name,
        count=read.count,
        facts=facts,
        icon=read.kind.icon,
        fills=() if spoilt else read.kind.fills,
        cautions=read.kind.cautions,
    )


def _read(item: Item, known: Vocabulary) -> ReadThing | Question:
    words = item.words
    match = find_name(words, known) if words else None
    if match is None:
        return _question(item, known)
    item = _several_of_one_unit(item, match)
    kind = _of_size(match.names, item)
    if kind is None:
        return _which(item, match)
    return _reading(item, kind, read_amounts(item, kind), match)


def _several_of_one_unit(item: Item, match: Match) -> Item:
    """“2 gallon jugs” as two of one gallon, where that is nearer to a size they come in than one of two gallons."""
    first = item.head[0]
    if not first.loose or not any(is_plural(item, name.kind) for name in match.names):
        return item
    other = replace(item, head=(*loosened(first), *item.head[1:]))
    return other if _off_size(match.names, other) < _off_size(match.names, item) - 1e-9 else item


def _off_size(names: tuple[Spoken, ...], item: Item) -> float:
    """How far the size is from the nearest usual one, as a logarithm."""
    sizes = sizes_in(item).items()
    found = (_apart(typical_amount(name.kind, measure), amount) for measure, amount in sizes for name in names)
    return min(found, default=math.inf)


def _of_size(names: tuple[Spoken, ...], item: Item) -> ThingKind | None:
    """The kind of that name nearest in size; without a size, the one that is called so plainly."""
    kinds = {name.kind.id: name.kind for name in names}
    if len(kinds) == 1:
        return names[0].kind
    for measure, amount in sizes_in(item).items():
        near = [(_apart(typical_amount(kind, measure), amount), kind.id) for kind in kinds.values()]
        best = min(near)
        if math.isfinite(best[0]):
            return kinds[best[1]]
    return next((name.kind for name in names if name.measure is None), None)


def _apart(usual: float | None, amount: float) -> float:
    return abs(math.log(amount / usual)) if usual and amount > 0 else math.inf


def _reading(item: Item, kind: ThingKind, amounts: Amounts, match: Match) -> ReadThing:
    confidence = match.confidence * UNREAD_NUMBER_CONFIDENCE ** len(amounts.leftover)
    if not amounts.counted and is_plural(item, kind):
        confidence *= UNCOUNTED_CONFIDENCE
    return ReadThing(
        kind=kind,
        count=amounts.count,
        name=thing_name(item, kind, dict(match.mended)),
        changes=amounts.changes,
        leftover=(*match.leftover, *amounts.leftover),
        confidence=round(confidence, 3),
    )


def _question(item: Item, known: Vocabulary) -> Question:
    count = read_amounts(item, None).count
    shown = shorten(item.shown)
    if item.words:
        sentence = f"“{shown}” is not a thing known here: choose the nearest, or say it in other words."
        return Question(sentence=sentence, choices=nearest_kinds(item.words, known), count=count, item=item)
    sentence = f"“{shown}” names no thing: say what it is."
    return Question(sentence=sentence, choices=_of_like_size(item, known), count=count, item=item)


def _of_like_size(item: Item, known: Vocabulary) -> tuple[ThingKind, ...]:
    """Usual kinds nearest to a bare size, or simply the usual ones."""
    sizes = tuple(sizes_in(item).items())

    def rank(kind: ThingKind) -> tuple[float, int, str]:
        apart = min((_apart(typical_amount(kind, measure), amount) for measure, amount in sizes), default=0.0)
        return apart, -kind.common, kind.id

    return tuple(sorted(known.kinds, key=rank)[:NEAREST])


def _which(item: Item, match: Match) -> Question:
    choices = tuple({name.kind.id: name.kind for name in match.names}.values())[:3]
    sentence = f"Which {' '.join(match.words)} do you mean? Choose one, or add its size."
    return Question(sentence=sentence, choices=choices, count=read_amounts(item, None).count, item=item)

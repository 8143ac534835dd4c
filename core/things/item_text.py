"""Cutting typed text into items: one thing each, with the parts that only describe it ("stairs, 12 steps").

Things are told apart by lines, commas, semicolons, "and", "+" and "&". A part without a name of its own belongs to the
thing before it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from core.errors import InputError
from core.things.model import Hazard
from core.things.typed_numbers import Sort, Token, plain_text, tokens_of
from core.things.words import SMALL_WORDS, noun_words, singular

LONGEST_TEXT = 20_000
LONGEST_ITEM = 160
MOST_ITEMS = 300

RATING_WORDS = frozenset(("rated", "rating", "max", "maximum", "limit", "bears", "carries", "takes", "up"))
HIGH_WORDS = frozenset(("high", "tall", "height", "surface"))
LONG_WORDS = frozenset(("long", "length"))
WIDE_WORDS = frozenset(("wide", "width", "deep", "thick", "diameter", "across"))
RISE_WORDS = frozenset(("rise", "riser", "each", "per"))
STEP_WORDS = frozenset(("step", "stair", "tread", "rung"))
VOLUME_WORDS = frozenset(("capacity", "volume", "size", "holds", "weight", "mass", "weighs", "weighing", "apiece", "x"))
DESCRIBING = RATING_WORDS | HIGH_WORDS | LONG_WORDS | WIDE_WORDS | RISE_WORDS | VOLUME_WORDS
HAZARD_WORDS: dict[str, Hazard] = {
    **dict.fromkeys(("folding", "foldable", "foldaway", "fold"), Hazard.FOLDING),
    **dict.fromkeys(("wheeled", "rolling", "wheel", "castor", "caster", "swivel"), Hazard.WHEELED),
    **dict.fromkeys(("glass",), Hazard.GLASS),
    **dict.fromkeys(("petrol", "gasoline", "diesel", "fuel", "bleach", "chemical"), Hazard.HELD_CHEMICALS),
    **dict.fromkeys(("antifreeze", "pesticide", "weedkiller", "solvent"), Hazard.HELD_CHEMICALS),
}
"""Words that tell of a danger, in the singular."""
LOOKS = frozenset(
    (
        "big", "large", "small", "little", "old", "new", "good", "spare", "empty", "full", "sturdy", "solid", "strong",
        "heavy", "light", "plain", "red", "blue", "green", "black", "white", "grey", "gray", "brown", "yellow",
        "orange", "plastic", "metal", "steel", "iron", "wooden", "wood", "oak", "pine", "rubber", "cloth", "leather",
        "cotton", "used", "other", "same", "identical", "matching", "household", "kitchen", "bathroom", "living",
        "room", "bedroom", "baked", "chopped", "real", "nice", "thick", "thin", "square", "round", "medium", "mini",
        "adjustable", "padded", "double", "single", "standard", "normal", "ordinary", "usual", "unopened", "sealed",
    )
)  # fmt: skip
"""Words that tell how a thing looks or where it stands, not what it is."""

_BY_THE_WAY = LOOKS | SMALL_WORDS | frozenset(HAZARD_WORDS)
_CUT = re.compile(r"\s*,\s*|\s+(?:and|plus)\s+|\s*[&+]\s*", re.IGNORECASE)
_BULLET = re.compile(r"^\s*(?:[-*•·>]\s+|\d{1,3}[.)]\s+)+")
_INLINE_MARKUP = re.compile(r"</?(?:b|i|u|em|strong|span)>", re.IGNORECASE)
_MARKUP = re.compile(r"</?[a-zA-Z][^<>]{0,200}>|&[a-z]{2,6};")


@dataclass(frozen=True, slots=True)
class Item:
    """One thing as typed: the tokens that name it and the tokens that only describe it."""

    shown: str
    head: tuple[Token, ...]
    tail: tuple[Token, ...] = ()

    @property
    def words(self) -> tuple[str, ...]:
        """The naming words, as they are compared; whose it is and a number of steps are no name."""
        return noun_words(token.key for token in _without_step_counts(self.head) if not token.is_owner)


def _without_step_counts(tokens: tuple[Token, ...]) -> tuple[Token, ...]:
    kept = []
    for at, token in enumerate(tokens):
        if token.sort is not Sort.WORD:
            continue
        counted = at > 1 and tokens[at - 1].sort is Sort.NUMBER and singular(token.key) in STEP_WORDS
        if not counted:
            kept.append(token)
    return tuple(kept)


def items_of(text: str) -> tuple[Item, ...]:
    """Every item of the text, in order; `InputError` for nothing, far too much, or a negative number of things."""
    if len(text) > LONGEST_TEXT:
        raise InputError(text, f"is longer than {LONGEST_TEXT} characters", "add a few things at a time")
    found: list[Item] = []
    for line in re.split(r"[\n\r;]+", _MARKUP.sub(", ", _INLINE_MARKUP.sub(" ", text))):
        found.extend(_items_of_line(_BULLET.sub("", line)))
    if not found:
        raise InputError(text, "names no thing", "write what you have, like “2 five-litre bottles”")
    if len(found) > MOST_ITEMS:
        raise InputError(text, f"lists more than {MOST_ITEMS} things", "add a few at a time")
    return tuple(found)


def _items_of_line(line: str) -> list[Item]:
    found: list[Item] = []
    for part in _CUT.split(plain_text(line)):
        _refuse_odd_part(part)
        tokens = tokens_of(part)
        if not tokens:
            continue
        if found and _only_describes(tokens, found[-1]):
            before = found[-1]
            found[-1] = Item(f"{before.shown}, {part.strip()}", before.head, (*before.tail, *tokens))
            continue
        pieces = _counted_pieces(tokens)
        shown = [part.strip()] if len(pieces) == 1 else [" ".join(token.text for token in piece) for piece in pieces]
        found.extend(Item(words, piece) for words, piece in zip(shown, pieces, strict=True))
    return found


def _counted_pieces(tokens: tuple[Token, ...]) -> list[tuple[Token, ...]]:
    """A new piece wherever a count and a name follow a name: “2 bottles 3 bricks”."""
    inner = range(1, len(tokens))
    new = (
        at for at in inner if tokens[at].sort is Sort.NUMBER and _is_name(tokens[at - 1]) and _name_follows(tokens, at)
    )
    starts = [0, *new]
    return [tokens[start:end] for start, end in zip(starts, (*starts[1:], len(tokens)), strict=True)]


def _is_name(token: Token) -> bool:
    return token.sort is Sort.WORD and token.key not in SMALL_WORDS | DESCRIBING


def _name_follows(tokens: tuple[Token, ...], at: int) -> bool:
    following = next((token for token in tokens[at + 1 :] if token.key not in LOOKS), None)
    return following is not None and _is_name(following) and singular(following.key) not in STEP_WORDS


def _refuse_odd_part(part: str) -> None:
    if len(part) > LONGEST_ITEM:
        raise InputError(part, f"is longer than {LONGEST_ITEM} characters", "write one thing per line")
    negative = re.match(r"\s*-\s*\d+", part)
    if negative is not None:
        raise InputError(negative.group().replace(" ", ""), "is no number of things", "write a number from 1")


def _only_describes(tokens: tuple[Token, ...], before: Item) -> bool:
    """Whether a part names nothing itself: only numbers, describing words, looks and dangers."""
    allowed = DESCRIBING | SMALL_WORDS | (STEP_WORDS if STEP_WORDS & set(before.words) else frozenset())
    words = [token.key for token in tokens if token.sort is Sort.WORD]
    numbers = len(words) < len(tokens)
    if all(word in allowed or singular(word) in allowed for word in words):
        return numbers or bool(DESCRIBING & set(words))
    return not numbers and all(word in _BY_THE_WAY or singular(word) in _BY_THE_WAY for word in words)

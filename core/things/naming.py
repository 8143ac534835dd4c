"""What a typed thing is called: the person's own words, tidied. “2 one-gallon milk jugs” becomes “Milk jug 1 gal”."""

from __future__ import annotations

from core.things.amounts import role_of
from core.things.item_text import DESCRIBING, STEP_WORDS, Item
from core.things.model import ThingKind
from core.things.typed_numbers import Measure, Sort, Token
from core.things.words import SMALL_WORDS, singular

LONGEST_NAME = 60
SHOWN_AS = {"noten": "No. 10", "sixpack": "six-pack", "tshirt": "T-shirt"}
"""How words that hide a number are written."""


def _naming(item: Item) -> list[Token]:
    """The words of the head, without those that only say what a number is and small words at either end."""
    head = item.head
    kept = [
        token
        for at, token in enumerate(head)
        if token.sort is Sort.WORD
        and not (token.key in DESCRIBING and _beside_number(head, at))
        and not _counts(head, at)
    ]
    while kept and kept[-1].key in SMALL_WORDS:
        kept.pop()
    while kept and kept[0].key in SMALL_WORDS:
        kept.pop(0)
    return kept


def _beside_number(head: tuple[Token, ...], at: int) -> bool:
    before = at - 1
    after = at + 1
    while after < len(head) and head[after].sort is Sort.WORD and head[after].key in SMALL_WORDS | DESCRIBING:
        after += 1
    return any(0 <= near < len(head) and head[near].sort is not Sort.WORD for near in (before, after))


def _counts(head: tuple[Token, ...], at: int) -> bool:
    return at > 1 and head[at - 1].sort is Sort.NUMBER and singular(head[at].key) in STEP_WORDS


def _noun(words: list[Token]) -> int:
    """Place of the word the others describe: the last one, or the one before "of" or "with"."""
    for at, token in enumerate(words):
        if at and token.key in ("of", "with"):
            return at - 1
    return len(words) - 1


def is_plural(item: Item, kind: ThingKind) -> bool:
    """Whether more than one is named without saying how many."""
    words = _naming(item)
    if not words or kind.name == kind.plural:
        return False
    word = words[_noun(words)].key
    return singular(word) != word


def thing_name(item: Item, kind: ThingKind, mended: dict[str, str]) -> str:
    """The name to show: no count, the thing in the singular, slips mended, the size at the end."""
    words = _naming(item)
    noun = _noun(words)
    one_of_many = kind.name != kind.plural
    shown = [_written(token, mended, single=at == noun and one_of_many) for at, token in enumerate(words)]
    sizes = [token.text for at, token in enumerate(item.head) if _is_size(item.head, at)]
    name = " ".join((*shown, *sizes[:1])) if shown else kind.name
    return name[:1].upper() + name[1:LONGEST_NAME].rstrip()


def _is_size(head: tuple[Token, ...], at: int) -> bool:
    return head[at].measure in (Measure.VOLUME, Measure.MASS) and role_of(head, at) != "rating"


def _written(token: Token, mended: dict[str, str], *, single: bool) -> str:
    text = token.text.lower() if token.text.isupper() else token.text
    one = singular(token.key)
    if one in mended or one in SHOWN_AS:
        return mended.get(one) or SHOWN_AS[one]
    if not single or one == token.key:
        return text
    return text[:1] + one[1:]

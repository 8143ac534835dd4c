"""The words people use for things: how they are compared, and which kinds answer to them.

A spoken name is compared by its words in the singular, without small words; "tin of beans" is the same as "bean tin".
A quantity in an alias ("5 L bottle") is set apart, so that kinds of one name are told apart by their size.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from core.things.model import ThingKind
from core.things.typed_numbers import Measure, Sort, plain_text, tokens_of

SMALL_WORDS = frozenset((
    "a", "an", "the", "of", "with", "for", "my", "our", "your", "his", "her", "their", "some", "in", "on", "at",
    "to", "from", "by", "is", "are", "i", "we", "have", "and", "or", "it", "has",
))  # fmt: skip
_IRREGULAR = {
    "shelves": "shelf", "knives": "knife", "scarves": "scarf", "loaves": "loaf", "halves": "half", "shoes": "shoe",
    "feet": "foot", "leaves": "leaf", "bus": "bus", "gas": "gas", "canvas": "canvas", "lens": "lens", "tyres": "tyre",
    "tires": "tire",
}  # fmt: skip
_PLURALS = {one: many for many, one in _IRREGULAR.items() if many != one}


def singular(word: str) -> str:
    """The singular of an English noun, well enough to compare words by."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("sses", "xes", "ches", "shes", "oes")):
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us", "is")) and len(word) > 2:
        return word[:-1]
    return word


def plural_of(name: str) -> str:
    """The plural of a name such as "Storage box" or "Bag of rice": the noun before "of" or "with" carries it."""
    words = name.split(" ")
    at = next((place for place, word in enumerate(words) if place and word in ("of", "with")), len(words)) - 1
    words[at] = _plural_of_word(words[at])
    return " ".join(words)


def _plural_of_word(word: str) -> str:
    if word.lower() in _PLURALS:
        return word[0] + _PLURALS[word.lower()][1:]
    if word.endswith(("s", "x", "z", "ch", "sh", "otato")):
        return f"{word}es"
    if word.endswith("y") and word[-2:-1] not in tuple("aeiou"):
        return f"{word[:-1]}ies"
    return f"{word}s"


def noun_words(words: Iterable[str]) -> tuple[str, ...]:
    """Words as they are compared: lower case, singular, no small words, "x of y" turned to "y x"."""
    listed = [part for word in words for part in word.lower().split("-")]
    if "of" in listed[1:]:
        at = listed.index("of", 1)
        listed = listed[at + 1 :] + listed[:at]
    return tuple(singular(word) for word in listed if word not in SMALL_WORDS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """One way to name a kind; `amount` (with its measure) is the size the name itself states."""

    words: tuple[str, ...]
    kind: ThingKind
    measure: Measure | None = None
    amount: float = 0.0


def _spoken(kind: ThingKind, phrase: str) -> Spoken:
    tokens = tokens_of(plain_text(phrase))
    words = noun_words(token.key for token in tokens if token.sort in (Sort.WORD, Sort.NUMBER))
    sized = next((token for token in tokens if token.sort is Sort.QUANTITY), None)
    if sized is None or sized.measure is None:
        return Spoken(words=words, kind=kind)
    return Spoken(words=words, kind=kind, measure=sized.measure, amount=sized.value)


def spoken_names(kind: ThingKind) -> Iterator[Spoken]:
    """Every way to name a kind."""
    for phrase in (kind.name, kind.plural, *kind.aliases):
        yield _spoken(kind, phrase)


def spoken_keys(kind: ThingKind) -> tuple[str, ...]:
    """What must belong to one kind alone: its words, with the size where a name states one; each once."""
    found = (
        f"{' '.join(name.words)}{f' {name.amount:.3g} {name.measure}' if name.measure else ''}"
        for name in spoken_names(kind)
    )
    return tuple(dict.fromkeys(found))


def typical_amount(kind: ThingKind, measure: Measure) -> float | None:
    """The size a kind usually has in litres or kg, or None where that says nothing about it."""
    facts = kind.facts
    if measure is Measure.VOLUME:
        if facts.container is not None:
            return facts.container.nominal_l.value
        return facts.hold.volume_l if facts.hold is not None else None
    if measure is Measure.MASS and facts.container is None and facts.hold is None and facts.mass is not None:
        return facts.label_kg or facts.mass.value
    return None


class Vocabulary:
    """All spoken names of a set of kinds, for looking up exact, partly matching and mistyped words."""

    def __init__(self, kinds: tuple[ThingKind, ...]) -> None:
        self.kinds = kinds
        self.by_words: dict[tuple[str, ...], tuple[Spoken, ...]] = {}
        for kind in kinds:
            for name in spoken_names(kind):
                if name.words:
                    self.by_words[name.words] = (*self.by_words.get(name.words, ()), name)
        self.by_letters = {"".join(words): words for words in self.by_words}
        self.longest = max((len(words) for words in self.by_words), default=0)
        self.phrases = {" ".join(words): words for words in self.by_words}
        self.known = frozenset(word for words in self.by_words for word in words)


@lru_cache(maxsize=4)
def vocabulary(kinds: tuple[ThingKind, ...]) -> Vocabulary:
    """The vocabulary of these kinds, made once."""
    return Vocabulary(kinds)

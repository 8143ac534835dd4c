"""Finding which kind of thing is meant by some words: exactly, as part of a longer name, or with a typing slip.

Nothing is guessed in silence: words that fit no kind, or two of them, give None, and `nearest_kinds` says what to ask.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.things.item_text import DESCRIBING, HAZARD_WORDS, LOOKS
from core.things.model import ThingKind
from core.things.words import Spoken, Vocabulary

SLIP_CONFIDENCE = 0.9
UNKNOWN_WORD_CONFIDENCE = 0.9
NEAREST = 3


@dataclass(frozen=True, slots=True)
class Match:
    """The names that fit, the words they use, the words left over and how sure that is (0 to 1).

    `mended` pairs each mistyped word with what it was read as.
    """

    names: tuple[Spoken, ...]
    words: tuple[str, ...]
    leftover: tuple[str, ...]
    confidence: float
    mended: tuple[tuple[str, str], ...] = ()


def find_name(words: tuple[str, ...], known: Vocabulary) -> Match | None:
    """The best match for naming words, or None when one must ask."""
    found = _within(words, known)
    if found is not None:
        return found
    mended = tuple(_mended(word, known) for word in words)
    if mended == words:
        return None
    slips = tuple((before, after) for before, after in zip(words, mended, strict=True) if before != after)
    found = _within(mended, known)
    if found is None:
        return None
    return replace(found, confidence=found.confidence * SLIP_CONFIDENCE ** len(slips), mended=slips)


def _within(words: tuple[str, ...], known: Vocabulary) -> Match | None:
    """The longest run of words that is a name, the last such run; nothing that matters may follow it."""
    for size in range(min(known.longest + 1, len(words)), 0, -1):
        for start in range(len(words) - size, -1, -1):
            names = _names(words[start : start + size], known)
            if names:
                return _accepted(words, start, size, names, known)
    return None


def _names(words: tuple[str, ...], known: Vocabulary) -> tuple[Spoken, ...]:
    exact = known.by_words.get(words)
    if exact is not None:
        return exact
    joined = known.by_letters.get("".join(words))
    return known.by_words[joined] if joined is not None else ()


def _accepted(
    words: tuple[str, ...], start: int, size: int, names: tuple[Spoken, ...], known: Vocabulary
) -> Match | None:
    before, after = words[:start], words[start + size :]
    if any(_is_unknown(word) for word in after):
        return None
    if any(_names(before[at : at + 2], known) for at in range(len(before) - 1)):
        return None
    unknown = tuple(word for word in before if _is_unknown(word))
    return Match(names, words[start : start + size], unknown, UNKNOWN_WORD_CONFIDENCE ** len(unknown))


def _is_unknown(word: str) -> bool:
    return word not in LOOKS and word not in DESCRIBING and word not in HAZARD_WORDS


def _mended(word: str, known: Vocabulary) -> str:
    """The one known word a slip away, if there is exactly one; short words must only have letters swapped."""
    if word in known.known or not _is_unknown(word) or len(word) < 5:
        return word
    from rapidfuzz import process  # loaded on the first slip of the pen, not at the start
    from rapidfuzz.distance import OSA

    most = 1 if len(word) < 10 else 2
    near = process.extract(word, sorted(known.known), scorer=OSA.distance, score_cutoff=most, limit=None)
    if len(word) == 5:
        near = [choice for choice in near if sorted(choice[0]) == sorted(word)]
    least = min((choice[1] for choice in near), default=None)
    closest = [choice[0] for choice in near if choice[1] == least]
    return closest[0] if len(closest) == 1 else word


def nearest_kinds(words: tuple[str, ...], known: Vocabulary) -> tuple[ThingKind, ...]:
    """The three kinds whose names look most like the words; fewer only where there are fewer."""
    from rapidfuzz import fuzz, process

    found = process.extract(" ".join(words), known.phrases.keys(), scorer=fuzz.WRatio, limit=24)
    ranked = sorted(found, key=lambda choice: (-choice[1], choice[0]))
    kinds = [name.kind for phrase, _, _ in ranked for name in known.by_words[known.phrases[phrase]]]
    usual = sorted(known.kinds, key=lambda kind: (-kind.common, kind.id))
    unique = {kind.id: kind for kind in (*kinds, *usual)}
    return tuple(unique.values())[:NEAREST]

"""Where each fault sentence of the checker belongs in the form, and how it reads there."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from gui.own.field import Table

_FIELD = re.compile(r"^(?P<path>[a-z][a-z0-9_. ]*): “(?P<found>[^”]*)” (?P<rest>.+)$", re.DOTALL)
_SUBJECT = re.compile(r"^“(?P<found>[^”]*)” ")
_SHORT = re.compile(r"is refused: String should have at least (\d+) characters; correct it")
_LONG = re.compile(r"is refused: (?:String|Tuple|List) should have at most (\d+) (?:characters|items)[^;]*; correct it")
WORDS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("typical", ("typical", "usual dose")),
    ("rep_s", ("rep_s", "repetition of")),
    ("patterns", ("pattern", "both weigh")),
    ("muscles", ("muscle", "prime mover")),
    ("needs", ("mass_share", "height_cm and bears", "uses", "need ", "space_m", "load, not to a fixture")),
    ("demands", ("demand", "overhead_reach")),
    ("reach_over_head", ("reach_over_head",)),
    ("impact", ("impact", "noise")),
    ("floor_m2", ("floor", "m² of it")),
    ("easier", ("named as easier", "below level", "easier")),
    ("harder", ("named as harder", "above level", "harder", "leads back")),
    ("cautions", ("caution",)),
    ("rating_origin", ("rating",)),
    ("grip_cm", ("grip_cm",)),
    ("litres", ("litres", "brimful", "tare_kg", "empty mass")),
    ("length_cm", ("length_cm", "outer size", "do not fit", "does not fit")),
    ("mass_kg", ("mass_kg", "anyone lifts", "label_kg")),
    ("surface_cm", ("surface_cm",)),
    ("icon", ("picture",)),
    ("fills", ("fill",)),
)
PLAIN: tuple[tuple[str, str], ...] = (
    ("reach_over_head is false", "“hands or load go above the head” is off"),
    ("rep_s", "the seconds of a repetition"),
    ("Rep_s", "The seconds of a repetition"),
    ("mass_share", "the range of its mass"),
    ("overhead_reach", "reaching overhead"),
    ("floor_transfer", "getting down to the floor"),
    ("typical", "the usual dose"),
    ("length_cm, width_cm and height_cm", "length, width and height"),
    ("mass_kg", "its mass"),
    ("surface_cm", "its height"),
    ("tare_kg", "its empty mass"),
    ("grip_cm", "its grip"),
)


def placed(sentences: Iterable[str], table: Table, keys: Iterable[str]) -> dict[str, str]:
    """Sentences by the field they stand under; those that belong to no one field are under an empty key."""
    known = frozenset(keys)
    found: dict[str, list[str]] = {}
    for sentence in sentences:
        key, words = _placed_one(sentence, table)
        found.setdefault(key if key in known else "", []).append(words)
    return {key: " ".join(dict.fromkeys(lines)) for key, lines in found.items()}


def _placed_one(sentence: str, table: Table) -> tuple[str, str]:
    field = _FIELD.match(sentence)
    if field is not None:
        key = field["path"].split(".")[0].replace(" ", "_")
        return key, plain(f"“{field['found']}” {field['rest']}" if field["found"] else field["rest"])
    named = _named(sentence, table)
    if named:
        return named, plain(sentence)
    return next(_by_words(_SUBJECT.sub("", sentence)), ""), plain(_without_name(sentence, table))


def _named(sentence: str, table: Table) -> str:
    """The field whose word a sentence about a taken name begins with."""
    subject = _SUBJECT.match(sentence)
    if subject is None or "already means" not in sentence:
        return ""
    aliases = [alias.casefold() for alias in table.get("aliases") or ()]
    return "aliases" if subject["found"].casefold() in aliases else "name"


def _by_words(sentence: str) -> Iterator[str]:
    for key, words in WORDS:
        if any(word in sentence for word in words):
            yield key


def _without_name(sentence: str, table: Table) -> str:
    """A fault of the entry as a whole begins with its name; the form says whose it is."""
    lead = f"“{table.get('name', '')}” is refused: "
    return sentence.removeprefix(lead)


def plain(sentence: str) -> str:
    """A sentence without the names of data fields."""
    sentence = _SHORT.sub(r"needs at least \1 letters; write more", sentence)
    sentence = _LONG.sub(r"is too long (at most \1); shorten it", sentence)
    for field, words in PLAIN:
        sentence = sentence.replace(field, words)
    sentence = sentence.replace("; change the entry so that it holds.", "; change it.")
    return _capital(sentence.replace("_", " "))


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"

"""What the numbers of an item say: how many, and which facts of the thing they change.

A number's part in it follows from its unit, the word beside it ("rated", "high", "long", "rise") and the kind of thing:
a length is the rise of stairs, the way along a path, the length of a rope, the height of a seat.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from core.errors import InputError
from core.things.item_text import (
    HAZARD_WORDS,
    HIGH_WORDS,
    LONG_WORDS,
    RATING_WORDS,
    RISE_WORDS,
    STEP_WORDS,
    WIDE_WORDS,
    Item,
)
from core.things.model import Form, Hazard, ThingKind
from core.things.typed_numbers import SCORES, Measure, Sort, Token
from core.things.words import SMALL_WORDS, singular, typical_amount

MOST_ALIKE = 500
FEWEST_STEPS_READ = 3
"""A number before stairs from here on counts steps; below it, flights."""
SIZE_RATIO = {Measure.VOLUME: (1 / 6, 6.0), Measure.MASS: (1 / 20, 8.0)}
"""How far a typed size may lie from the usual one, as a factor."""
LONG_FORMS = frozenset({Form.CLOTH, Form.ROPE, Form.STICK, Form.BAND, Form.BARBELL})
WAY_FORMS = frozenset({Form.ROUTE, Form.FLOOR})
RISE_CM, SURFACE_CM, LENGTH_CM = (5.0, 45.0), (3.0, 350.0), (2.0, 3000.0)
WAY_CM, RATING_KG, AREA_M2 = (100.0, 5_000_000.0), (5.0, 2000.0), (0.2, 10_000.0)
MOST_STEPS = 2000
ROLES: tuple[tuple[str, frozenset[str]], ...] = (
    ("rating", RATING_WORDS),
    ("rise", RISE_WORDS),
    ("high", HIGH_WORDS),
    ("long", LONG_WORDS),
    ("wide", WIDE_WORDS),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """Facts the person stated; None leaves the kind's own. Litres, kg, cm, m and m²."""

    capacity_l: float | None = None
    mass_kg: float | None = None
    rise_cm: float | None = None
    steps: int | None = None
    length_cm: float | None = None
    height_cm: float | None = None
    sides_cm: tuple[float, ...] = ()
    rating_kg: float | None = None
    route_m: float | None = None
    area_m2: float | None = None
    hazards: frozenset[Hazard] = field(default=frozenset())


@dataclass(frozen=True, slots=True)
class Amounts:
    """How many, the facts changed, the numbers nothing could be made of, and whether the count was typed."""

    count: int
    changes: Changes
    leftover: tuple[str, ...]
    counted: bool


def sizes_in(item: Item) -> dict[Measure, float]:
    """The first volume and the first mass typed, ratings left out: they tell kinds of one name apart."""
    tokens = (*item.head, *item.tail)
    found: dict[Measure, float] = {}
    for at, token in enumerate(tokens):
        measure = token.measure
        if measure is not None and measure in SIZE_RATIO and role_of(tokens, at) != "rating":
            found.setdefault(measure, token.value)
    return found


def read_amounts(item: Item, kind: ThingKind | None) -> Amounts:
    """Counts and changes of an item for a kind; without one only the count is read."""
    tokens = (*item.head, *item.tail)
    used: set[int] = set()
    changes = Changes(hazards=_hazards(item, kind))
    if kind is not None:
        changes = _steps(tokens, kind, changes, used)
    count = _count(tokens, used)
    if kind is not None:
        for at, token in enumerate(tokens):
            if token.sort in (Sort.QUANTITY, Sort.SIDES):
                changed = _with(changes, token, role_of(tokens, at), kind)
                used.update({at} if changed is not None else set())
                changes = changed or changes
    numbers = (Sort.NUMBER, Sort.QUANTITY, Sort.SIDES)
    left = tuple(token.text for at, token in enumerate(tokens) if token.sort in numbers and at not in used)
    return Amounts(1 if count is None else count, changes, left, count is not None)


def _hazards(item: Item, kind: ThingKind | None) -> frozenset[Hazard]:
    words = {singular(token.key) for token in (*item.head, *item.tail) if token.sort is Sort.WORD}
    had = kind.facts.hazards if kind is not None else frozenset()
    return frozenset(hazard for word, hazard in HAZARD_WORDS.items() if word in words) - had


def _steps(tokens: tuple[Token, ...], kind: ThingKind, changes: Changes, used: set[int]) -> Changes:
    """For stairs: the number beside a word for steps, else the first large enough number."""
    if kind.facts.flight is None:
        return changes
    numbers = [at for at, token in enumerate(tokens) if token.sort is Sort.NUMBER and not _timed(tokens, at)]
    named = [at for at in numbers if at and _word_at(tokens, at + 1) in STEP_WORDS]
    large = [at for at in numbers if tokens[at].value >= FEWEST_STEPS_READ]
    for at in (named or large)[:1]:
        steps = tokens[at].value
        if not (steps == int(steps) and 1 <= steps <= MOST_STEPS):
            raise InputError(tokens[at].text, "is no number of steps", f"write a whole number from 1 to {MOST_STEPS}")
        used.add(at)
        return replace(changes, steps=int(steps))
    return changes


def _timed(tokens: tuple[Token, ...], at: int) -> bool:
    return any(0 <= near < len(tokens) and tokens[near].sort is Sort.TIMES for near in (at - 1, at + 1))


def _word_at(tokens: tuple[Token, ...], at: int) -> str:
    if 0 <= at < len(tokens) and tokens[at].sort is Sort.WORD:
        key = tokens[at].key
        return key if key in SMALL_WORDS else singular(key)
    return ""


def _count(tokens: tuple[Token, ...], used: set[int]) -> int | None:
    """The number beside a ×, else the first number; "2 dozen" and "2 x 6" multiply."""
    free = [at for at, token in enumerate(tokens) if token.sort is Sort.NUMBER and at not in used]
    if not free:
        return None
    first = next((at for at in free if _timed(tokens, at)), free[0])
    total = tokens[first].value
    used.add(first)
    following = first + 1
    if following < len(tokens) and tokens[following].sort is Sort.TIMES:
        following += 1
    joined = following in free and (following > first + 1 or tokens[following].text.lower() in SCORES)
    if joined:
        total *= tokens[following].value
        used.add(following)
    return _checked_count(total, tokens[first].text)


def _checked_count(total: float, typed: str) -> int:
    if total != int(total) or total < 1:
        raise InputError(typed, "is no number of things", "write a whole number from 1, or the size with its unit")
    if total > MOST_ALIKE:
        raise InputError(f"{total:.0f}", f"is more alike things than this program keeps ({MOST_ALIKE})", "write fewer")
    return int(total)


def role_of(tokens: tuple[Token, ...], at: int) -> str:
    """What the words around a quantity make of it; a word after it goes before a word in front."""
    roles = ROLES if tokens[at].measure is Measure.LENGTH else ROLES[:1]
    before = at - 1
    while before >= 0 and tokens[before].sort is Sort.WORD and tokens[before].key in SMALL_WORDS:
        before -= 1
    for near in (at + 1, before):
        word = tokens[near].key if 0 <= near < len(tokens) and tokens[near].sort is Sort.WORD else ""
        for role, words in roles:
            if word in words or singular(word) in words:
                return role
    return ""


def _with(changes: Changes, token: Token, role: str, kind: ThingKind) -> Changes | None:
    """The changes with one more quantity in its place, or None where the kind has no place for it."""
    if token.sort is Sort.SIDES:
        return replace(
            changes, sides_cm=tuple(_within(side, LENGTH_CM, "size", "cm", token) for side in token.sides_cm)
        )
    if token.measure is Measure.AREA:
        return replace(changes, area_m2=_within(token.value, AREA_M2, "area", "m²", token))
    if token.measure is Measure.LENGTH:
        return _with_length(changes, token, role, kind)
    if role == "rating":
        return replace(changes, rating_kg=_within(token.value, RATING_KG, "rating", "kg", token))
    return _with_size(changes, token, kind)


def _with_size(changes: Changes, token: Token, kind: ThingKind) -> Changes | None:
    measure = token.measure
    usual = typical_amount(kind, measure) if measure is not None else None
    if measure is None or usual is None:
        return None
    low, high = SIZE_RATIO[measure]
    if not low * usual <= token.value <= high * usual:
        rule = f"is far from the usual size, about {usual:.3g} {measure} for “{kind.name}”"
        raise InputError(token.text, rule, "check the number and its unit")
    if measure is Measure.VOLUME:
        return replace(changes, capacity_l=token.value)
    return replace(changes, mass_kg=token.value)


def _with_length(changes: Changes, token: Token, role: str, kind: ThingKind) -> Changes | None:
    facts = kind.facts
    if role == "wide":
        return None
    if facts.flight is not None and role != "long":
        return replace(changes, rise_cm=_within(token.value, RISE_CM, "height of a step", "cm", token))
    if facts.form in WAY_FORMS:
        return replace(changes, route_m=_within(token.value, WAY_CM, "way", "cm", token) / 100)
    if role == "long" or (not role and facts.form in LONG_FORMS):
        return replace(changes, length_cm=_within(token.value, LENGTH_CM, "length", "cm", token))
    if role or facts.surface_cm is not None:
        return replace(changes, height_cm=_within(token.value, SURFACE_CM, "height", "cm", token))
    return None


def _within(value: float, limits: tuple[float, float], what: str, unit: str, token: Token) -> float:
    low, high = limits
    if not low <= value <= high:
        rule = f"is no usable {what} ({low:g} to {high:,.0f} {unit})"
        raise InputError(token.text, rule, "check the number and its unit")
    return value

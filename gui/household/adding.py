"""Adding things by typing: what is understood for sure, what must be asked, and names that begin as somebody types."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from core.house.model import House
from core.knowledge import Catalog
from core.store.commands import AddThing, Command, LoadHouse
from core.store.commands.base import free_id
from core.things.model import Thing, ThingKind
from core.things.quick_add import Changes, Question, ReadThing, answered, make_thing, read_things

MOST_NAMES = 8
CUTS = ",;\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """Something typed that needs an answer: the sentence, the answers to press, and what stands behind each.

    `typed` is what to put back into the field for other words.
    """

    sentence: str
    answers: tuple[str, ...]
    readings: tuple[ReadThing, ...]
    typed: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """What was read for sure, and what must be asked first."""

    sure: tuple[ReadThing, ...]
    asks: tuple[Ask, ...]


def understand(text: str, kinds: tuple[ThingKind, ...]) -> Understood:
    """Read what was typed; `InputError` for an impossible number, too much text or none."""
    found = read_things(text, kinds)
    sure = tuple(one for one in found if isinstance(one, ReadThing) and one.confidence >= 1)
    asks = tuple(_ask(one) for one in found if isinstance(one, Question) or one.confidence < 1)
    return Understood(sure=sure, asks=asks)


def things_of(readings: Iterable[ReadThing], taken: Iterable[str]) -> tuple[Thing, ...]:
    """Things with ids of their own."""
    used = set(taken)
    things = []
    for reading in readings:
        thing = make_thing(reading, free_id(reading.name, used))
        used.add(thing.id)
        things.append(thing)
    return tuple(things)


def adding(things: Sequence[Thing]) -> Command:
    """One command for all of them, so that one undo takes them back."""
    if len(things) == 1:
        return AddThing(things[0])
    return LoadHouse(House(name=f"{len(things)} things", things=tuple(things), fills=()))


def one_of_kind(kind: ThingKind, count: int = 1) -> ReadThing:
    """A reading as if the plain name of the kind had been typed."""
    return ReadThing(kind=kind, count=count, name=kind.name, changes=Changes())


def beginnings(text: str, catalog: Catalog) -> tuple[str, ...]:
    """The whole text with its last, half-typed thing completed, in every way that begins so; usual things first."""
    start = max((text.rfind(cut) for cut in CUTS), default=-1) + 1
    head, rest = text[:start], text[start:].lstrip()
    count, _, wanted = _counted(rest)
    if len(wanted) < 2:
        return ()
    lead = f"{head} " if head else ""
    many = count not in ("", "1")
    names = [kind.plural if many else kind.name for kind in _beginning(wanted.casefold(), catalog)]
    return tuple(f"{lead}{count} {_lower(name)}" if count else f"{lead}{name}" for name in names[:MOST_NAMES])


def _ask(found: Question | ReadThing) -> Ask:
    if isinstance(found, Question):
        readings = tuple(answered(found, kind) for kind in found.choices)
        names = tuple(_counted_name(reading.count, kind) for reading, kind in zip(readings, found.choices, strict=True))
        return Ask(sentence=found.sentence, answers=names, readings=readings, typed=found.item.shown)
    name = _counted_name(found.count, found.kind)
    without = f", leaving out {', '.join(f'“{word}”' for word in found.leftover)}" if found.leftover else ""
    plain = replace(found, leftover=(), confidence=1.0)
    return Ask(
        sentence=f"“{found.name}” reads as {name.lower()}{without}. Is that right?",
        answers=(f"Add {name.lower()}",),
        readings=(plain,),
        typed=found.name if found.count == 1 else f"{found.count} {found.name}",
    )


def _counted_name(count: int, kind: ThingKind) -> str:
    if count == 1:
        return kind.name
    return f"{count} × {kind.name}" if kind.name[0].isdecimal() else f"{count} {_lower(kind.plural)}"


def _lower(name: str) -> str:
    return name[:1].lower() + name[1:]


def _counted(text: str) -> tuple[str, str, str]:
    """“2 bot” as “2” and “bot”; without a leading number the first is empty."""
    count, space, rest = text.partition(" ")
    return (count, space, rest.strip()) if count.isdecimal() and space else ("", "", text.strip())


def _beginning(wanted: str, catalog: Catalog) -> list[ThingKind]:
    """Kinds whose name, plural or an alias begins so, or has a word that does; names before aliases."""
    ranked = [(_rank(wanted, kind), -kind.common, kind.id, kind) for kind in catalog.kinds]
    return [kind for rank, _, _, kind in sorted(ranked, key=lambda entry: entry[:3]) if rank < 3]


def _rank(wanted: str, kind: ThingKind) -> int:
    name = kind.name.casefold()
    if name.startswith(wanted) or kind.plural.casefold().startswith(wanted):
        return 0
    if any(word.startswith(wanted) for word in name.replace("-", " ").split()):
        return 1
    return 2 if any(alias.casefold().startswith(wanted) for alias in kind.aliases) else 3

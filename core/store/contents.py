"""Everything a record holds as one value and one JSON document, to take along or to bring in from elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from core.errors import InputError
from core.house.log import LoggedSession, LoggedTest
from core.house.model import Person, Place
from core.house.own import OwnEntry
from core.house.wishes import WeekWishes
from core.store import codec_own, codec_people
from core.store.changes import HOUSE_FACTS, ONLY, HouseFacts, Part, Value
from core.store.codec import ID, THING
from core.store.encoding import whole
from core.store.encoding_groups import TAG, TaggedCodec, many, record
from core.store.json_text import from_text
from core.store.values import SavedBlock, SavedWeek, Settings
from core.things.model import Thing

FORM = 4
"""The form of the document; one higher when its fields change, with the older ones still read."""
TAG_OF_DOCUMENT = "fillmark_record"
MOST_LOGGED = 200_000


@dataclass(frozen=True, slots=True, kw_only=True)
class WishesOf:
    """One person's wishes."""

    person_id: str
    wishes: WeekWishes


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekOf:
    """One person's saved week."""

    person_id: str
    week: SavedWeek


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockOf:
    """One person's saved block of weeks."""

    person_id: str
    block: SavedBlock


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """A whole record, the log included, without its history."""

    form: int = FORM
    house: HouseFacts
    own: tuple[OwnEntry, ...] = ()
    places: tuple[Place, ...] = ()
    people: tuple[Person, ...] = ()
    things: tuple[Thing, ...] = ()
    wishes: tuple[WishesOf, ...] = ()
    weeks: tuple[WeekOf, ...] = ()
    blocks: tuple[BlockOf, ...] = ()
    settings: Settings = field(default_factory=Settings)
    sessions: tuple[LoggedSession, ...] = ()
    tests: tuple[LoggedTest, ...] = ()

    def entries(self) -> Iterator[tuple[Part, str, Value]]:
        """Every entry with its part and id."""
        yield Part.HOUSE, ONLY, self.house
        yield from ((Part.OWN, entry.id, entry) for entry in self.own)
        yield from ((Part.PLACE, place.id, place) for place in self.places)
        yield from ((Part.PERSON, person.id, person) for person in self.people)
        yield from ((Part.THING, thing.id, thing) for thing in self.things)
        yield from ((Part.WISHES, entry.person_id, entry.wishes) for entry in self.wishes)
        yield from ((Part.WEEK, entry.person_id, entry.week) for entry in self.weeks)
        yield from ((Part.BLOCK, entry.person_id, entry.block) for entry in self.blocks)
        yield Part.SETTINGS, ONLY, self.settings
        yield from ((Part.SESSION, session.id, session) for session in self.sessions)
        yield from ((Part.TEST, test.id, test) for test in self.tests)


CONTENTS: TaggedCodec[Contents] = record(
    TAG_OF_DOCUMENT,
    Contents,
    {
        "form": whole(1, FORM),
        "house": HOUSE_FACTS,
        "own": many(codec_own.OWN),
        "places": many(codec_people.PLACE),
        "people": many(codec_people.PERSON),
        "things": many(THING),
        "wishes": many(record("wishes_of", WishesOf, {"person_id": ID, "wishes": codec_people.WISHES})),
        "weeks": many(record("week_of", WeekOf, {"person_id": ID, "week": codec_people.SAVED_WEEK})),
        "blocks": many(record("block_of", BlockOf, {"person_id": ID, "block": codec_people.SAVED_BLOCK})),
        "settings": codec_people.SETTINGS,
        "sessions": many(codec_people.SESSION, MOST_LOGGED),
        "tests": many(codec_people.TEST, MOST_LOGGED),
    },
    added={"own": [], "blocks": []},
)


def contents_json(contents: Contents) -> dict[str, object]:
    """The document of a whole record; `contents_from_json` gives back equal contents."""
    return CONTENTS.write(contents)


def contents_from_json(document: object, where: str = "") -> Contents:
    """The contents of a document of this form or an older one; `InputError` naming the first field that is wrong."""
    if isinstance(document, dict) and document.get(TAG) == TAG_OF_DOCUMENT:
        form = document.get("form")
        if isinstance(form, int) and form > FORM:
            rule = f"is the form of a newer Fillmark; this one reads up to {FORM}"
            raise InputError(form, rule, "update the program", where=where)
    return replace(CONTENTS.read(document, where), form=FORM)


def contents_from_text(written: str, where: str = "") -> Contents:
    """The contents of an exported file's text."""
    return contents_from_json(from_text(written, where), where)


def contents_schema() -> dict[str, object]:
    """The JSON Schema of the document."""
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "Fillmark record", **CONTENTS.schema}

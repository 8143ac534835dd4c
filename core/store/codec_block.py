"""How a block of weeks is written as JSON: each movement in a session once, the weeks by its number in that list.

Weeks of a block repeat most of what they hold (warm-ups, mobility, doses that stay), so this is some six times shorter
than the weeks in full. Reading is strict; a movement or test that the catalog lost is an `InputError` that names it.
"""

from __future__ import annotations

from core.assess.model import Protocol
from core.errors import InputError
from core.knowledge import Catalog
from core.plan.block_model import BLOCK_WEEKS, BlockWeek, Happening, PlannedTest, TrainingBlock, What
from core.plan.model import Block, Week
from core.store.codec import ID
from core.store.codec_people import NOTE
from core.store.codec_week import SENTENCE, WEEKDAY, planned_codec, week_of
from core.store.encoding import DATE, Codec, number, one_word, text, unfit, whole
from core.store.encoding_groups import TAG, TaggedCodec, many, maybe, record
from core.store.json_text import from_text, to_text

BLOCK_VERSION = 1
MOST_WEEKS = BLOCK_WEEKS[1] + 1
MOST_BLOCKS = 20_000
FIELDS = {TAG, "movements", "block"}
DOCUMENT = "block_document"

HAPPENING = record(
    "happening",
    Happening,
    {
        "what": one_word(What),
        "week": whole(0, MOST_WEEKS),
        "weekday": WEEKDAY,
        "to_weekday": maybe(WEEKDAY),
        "days": whole(1, 100),
        "share": number(0, 1),
        "session_id": text(120),
        "note": NOTE,
    },
)
PLANNED_TEST = record("planned_test", PlannedTest, {"protocol_id": ID, "weekday": maybe(WEEKDAY)})


def protocol_codec(catalog: Catalog) -> Codec[Protocol]:
    """A test as its id."""

    def read(json_value: object, where: str) -> Protocol:
        found = catalog.protocol_by_id.get(ID.read(json_value, where))
        if found is None:
            raise InputError(json_value, "is no test of this catalog any more", "plan the block again", where=where)
        return found

    return Codec(lambda protocol: protocol.id, read, ID.schema)


def block_text(block: TrainingBlock, catalog: Catalog) -> str:
    """The block as JSON text; equal blocks give equal text."""
    listed: list[object] = []
    places: dict[str, int] = {}
    one = planned_codec(catalog)

    def write(planned: Block) -> int:
        written = one.write(planned)
        key = to_text(written)
        if key not in places:
            places[key] = len(listed)
            listed.append(written)
        return places[key]

    def unread(json_value: object, where: str) -> Block:
        raise unfit(json_value, "can only be written", where)

    body = _block_codec(week_of(Codec(write, unread, {"type": "integer"})), catalog).write(block)
    return to_text({TAG: DOCUMENT, "movements": listed, "block": body})


def block_from_text(written: str, catalog: Catalog) -> TrainingBlock:
    """The block from its JSON text; `InputError` names what does not fit."""
    document = from_text(written, "block")
    if not isinstance(document, dict) or document.keys() != FIELDS or document[TAG] != DOCUMENT:
        raise unfit(document, "is not a block of weeks", "block")
    listed = many(planned_codec(catalog), MOST_BLOCKS).read(document["movements"], "movements")
    place = whole(0, MOST_BLOCKS)

    def read(json_value: object, where: str) -> Block:
        at = place.read(json_value, where)
        if at >= len(listed):
            raise unfit(at, f"is no number of a movement (0 to {len(listed) - 1})", where)
        return listed[at]

    def unwritten(planned: Block) -> int:
        raise ValueError(f"{planned.exercise.id} can only be read")

    return _block_codec(week_of(Codec(unwritten, read, place.schema)), catalog).read(document["block"], "block")


def _block_codec(week: Codec[Week], catalog: Catalog) -> TaggedCodec[TrainingBlock]:
    of_block = record(
        "block_week",
        BlockWeek,
        {
            "number": whole(0, MOST_WEEKS),
            "kind": one_of_kinds(),
            "week": week,
            "notes": many(SENTENCE, 200),
            "tests": many(PLANNED_TEST, 20),
            "predicted": maybe(week),
        },
    )
    return record(
        "training_block",
        TrainingBlock,
        {
            "weeks": many(of_block, MOST_WEEKS),
            "tests": many(protocol_codec(catalog), 20),
            "starts": maybe(DATE),
            "happened": many(HAPPENING, 1000),
            "pattern": maybe(week),
            "pattern_week": whole(0, MOST_WEEKS),
        },
        added={"pattern_week": 0},
    )


def one_of_kinds() -> Codec[str]:
    """The kind of a week."""
    kinds = ("test", "build", "easy", "retest")

    def read(json_value: object, where: str) -> str:
        if json_value not in kinds:
            raise unfit(json_value, f"is none of {', '.join(kinds)}", where)
        return str(json_value)

    return Codec(str, read, {"enum": list(kinds)})

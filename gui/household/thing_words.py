"""What a card of a thing shows, and in which group it stands."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum

from core.house.model import House
from core.mass.model import Material
from core.quantity.display import UnitSystem
from core.things.affordance import Grade, affordances
from core.things.describe import Trust, card
from core.things.model import Form, RatingOrigin, Thing
from gui.desk.names import USE_NAMES, thing_picture
from gui.widgets import ThingView, Tone

MOST_USES = 2


class Group(Enum):
    """The groups of cards; the value is the heading."""

    LIFT = "To lift and carry"
    STAND = "To step on, lean on, hang from"
    SOFT = "Soft things, bands, sticks and ground"


_LIFTED = frozenset({
    Form.VESSEL, Form.TIN, Form.SACK, Form.BLOCK, Form.BOOK, Form.BAG, Form.FREE_WEIGHT, Form.WHEELED, Form.BARBELL,
})  # fmt: skip
_SOFT = frozenset({
    Form.CLOTH, Form.ROPE, Form.BAND, Form.STICK, Form.PAD, Form.SLIDER, Form.FLOOR, Form.ROUTE,
})  # fmt: skip
_TONES: dict[Trust, Tone] = {
    Trust.ESTIMATED: Tone.FAIR,
    Trust.LABEL: Tone.GOOD,
    Trust.WEIGHED: Tone.GOOD,
    Trust.RATED: Tone.GOOD,
    Trust.BUILT: Tone.GOOD,
    Trust.CHECKED: Tone.FAIR,
    Trust.UNRATED: Tone.PLAIN,
    Trust.REFUSED: Tone.BAD,
    Trust.STATED: Tone.PLAIN,
}


def group_of(thing: Thing) -> Group:
    """Where the thing stands on the screen."""
    if thing.facts.form in _LIFTED:
        return Group.LIFT
    return Group.SOFT if thing.facts.form in _SOFT else Group.STAND


def thing_title(thing: Thing) -> str:
    """The name, with how many there are alike."""
    return thing.name if thing.count == 1 else f"{thing.name} × {thing.count}"


def thing_view(thing: Thing, house: House, system: UnitSystem, materials: Iterable[Material]) -> ThingView:
    """The card: name, size or mass, where it is or what it is for, and how far that can be trusted."""
    told = card(thing, system, materials, cup_l=house.cup_l)
    tone = _TONES[told.trust]
    if told.trust is Trust.RATED and thing.facts.rating_origin is RatingOrigin.OWN_CHECK:
        tone = Tone.FAIR
    return ThingView(
        thing_id=thing.id,
        title=thing_title(thing),
        line=told.size,
        detail=_detail(thing, house, told.note),
        chip=told.standing or "usual size",
        chip_tone=tone,
        picture=thing_picture(thing.icon),
    )


def grouped(views: Iterable[tuple[Group, ThingView]]) -> tuple[tuple[Group, tuple[ThingView, ...]], ...]:
    """Views by group in the order of the groups; a group without things is left out."""
    listed = tuple(views)
    found = ((group, tuple(view for mine, view in listed if mine is group)) for group in Group)
    return tuple((group, members) for group, members in found if members)


def place_names(thing: Thing, house: House) -> tuple[str, ...]:
    """The names of the places the thing is tied to."""
    return tuple(place.name for place in house.places if place.id in thing.place_ids)


def _detail(thing: Thing, house: House, note: str) -> str:
    where = ", ".join(place_names(thing, house))
    parts = [part for part in (note, where) if part]
    return " · ".join(parts) or ", ".join(_uses(thing))


def _uses(thing: Thing) -> list[str]:
    """The first ways it serves well, whoever uses it; without any, the first that has a drawback."""
    found = affordances(thing)
    good = [one.use for one in found if one.grade is Grade.GOOD]
    fair = [one.use for one in found if one.grade is Grade.FAIR]
    return [USE_NAMES[use] for use in good[:MOST_USES] or fair[:1]]

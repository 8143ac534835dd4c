"""From what stands in the panel to a question, and back: places, people, movements of the week and examples."""

from __future__ import annotations

from core.effort.capacity import Prescription
from core.exercise.model import Demand
from core.things.model import Thing
from gui.desk.desk import Desk
from gui.desk.names import MOVE_PICTURES
from gui.swap.ask_panel import Asked, AskPanel
from gui.swap.asking import Question
from gui.swap.start_page import EXAMPLES
from gui.theme import MovePicture

ANYTHING = "anything you own"


def question_of(asked: Asked, prescription: Prescription | None, desk: Desk) -> Question | None:
    """What is asked; None while nobody trains or no movement is named."""
    person = desk.person()
    if person is None or not asked.movement.strip():
        return None
    place_id = place_ids(desk)[max(0, asked.place)]
    things = things_at(place_id, desk)
    return Question(
        text=asked.movement,
        cause=asked.cause,
        spare=asked.spare,
        prescription=prescription,
        place_id=place_id,
        using=things[asked.thing - 1].id if 0 < asked.thing <= len(things) else "",
        house=desk.house(),
        person=person,
        catalog=desk.catalog,
    )


def place_ids(desk: Desk) -> tuple[str | None, ...]:
    """The ids behind the places in the panel; None stands for anywhere."""
    return tuple(place.id for place in desk.house().places) or (None,)


def things_at(place_id: str | None, desk: Desk) -> tuple[Thing, ...]:
    """The things of a place, in the order in which the panel lists them."""
    things = desk.house().things
    return tuple(thing for thing in things if place_id is None or not thing.place_ids or place_id in thing.place_ids)


def show_things(panel: AskPanel, desk: Desk, thing_id: str) -> None:
    """Paint what the answers may have to use; anything, where the thing is not in the place chosen."""
    things = things_at(place_ids(desk)[max(0, panel.place.index())], desk)
    chosen = next((at for at, thing in enumerate(things, start=1) if thing.id == thing_id), 0)
    panel.show_things((ANYTHING, *(thing.name for thing in things)), chosen)


def show_people_and_places(panel: AskPanel, desk: Desk) -> None:
    """Paint who can be asked for and where, and what that person spares anyway."""
    house, person = desk.house(), desk.person()
    names = tuple(place.name for place in house.places) or ("Anywhere",)
    panel.show_places(names, min(max(0, panel.place.index()), len(names) - 1))
    ids = [one.id for one in house.people]
    chosen = ids.index(person.id) if person is not None else -1
    panel.show_people(tuple(one.name for one in house.people), chosen)
    own = person.spares if person is not None else frozenset()
    panel.show_own_spares(tuple(demand for demand in Demand if demand in own))


def week_names(desk: Desk) -> tuple[str, ...]:
    """The movements of the person's week, each once, in its order."""
    week = desk.week()
    blocks = (block for day in (week.days if week is not None else ()) for block in day.blocks)
    return tuple(dict.fromkeys(block.exercise.name for block in blocks))


def examples(desk: Desk) -> tuple[tuple[MovePicture, str], ...]:
    """Well-known movements with the pictures of their patterns."""
    by_id = desk.catalog.exercise_by_id
    known = [by_id[exercise_id] for exercise_id in EXAMPLES if exercise_id in by_id]
    return tuple((MOVE_PICTURES[exercise.main_pattern], exercise.name) for exercise in known)

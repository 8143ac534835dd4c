"""Rows of people with what they spare and can do, their wishes for the week and the week they were given."""

from __future__ import annotations

from sqlalchemy.orm import Mapped, mapped_column, relationship

from core.house.model import Capacity, Person
from core.house.wishes import DayWish, Pin, WeekWishes
from core.store.changes import Part
from core.store.codec_people import PINNED_DOSE
from core.store.encoding import TIME
from core.store.encoding_groups import maybe
from core.store.rows.base import (
    CHILDREN,
    STRICT,
    Base,
    Entry,
    check,
    date_check,
    json_of,
    name_check,
    object_check,
    other,
    owner,
    position_check,
    tagged,
    text_of,
    weekday_check,
)
from core.store.values import SavedBlock, SavedWeek


class SpareRow(Base):
    """A demand a person spares."""

    __tablename__ = "spare"
    __table_args__ = (STRICT,)

    person_id: Mapped[str] = owner("person.id")
    demand: Mapped[str] = mapped_column(primary_key=True)


class CapacityRow(Base):
    """What a person could just lift once in a pattern."""

    __tablename__ = "capacity"
    __table_args__ = (position_check(), check("u_kg", "u_kg >= 0"), STRICT)

    person_id: Mapped[str] = owner("person.id")
    position: Mapped[int] = mapped_column(primary_key=True)
    pattern: Mapped[str]
    one_rep_kg: Mapped[float]
    u_kg: Mapped[float]
    origin: Mapped[str]
    exercise_id: Mapped[str]
    told_by: Mapped[str]

    def fields(self) -> dict[str, object]:
        """The JSON of the capacity."""
        one_rep = tagged("measured", value=self.one_rep_kg, u=self.u_kg, origin=self.origin)
        return tagged(
            "capacity",
            pattern=self.pattern,
            one_rep_kg=one_rep,
            exercise_id=self.exercise_id,
            told_by=self.told_by,
        )

    @classmethod
    def to_row(cls, capacity: Capacity, position: int) -> CapacityRow:
        """The row for this capacity."""
        return cls(
            position=position,
            pattern=capacity.pattern.value,
            one_rep_kg=capacity.one_rep_kg.value,
            u_kg=capacity.one_rep_kg.u,
            origin=capacity.one_rep_kg.origin.value,
            exercise_id=capacity.exercise_id,
            told_by=capacity.told_by,
        )


class PersonRow(Entry):
    """Someone who trains."""

    part = Part.PERSON
    __tablename__ = "person"
    __table_args__ = (
        name_check(),
        position_check(),
        check("body_mass_kg", "body_mass_kg BETWEEN 30 AND 250"),
        check("height_cm", "height_cm BETWEEN 120 AND 230"),
        STRICT,
    )

    id: Mapped[str] = mapped_column(primary_key=True)
    position: Mapped[int]
    name: Mapped[str]
    body_mass_kg: Mapped[float]
    height_cm: Mapped[float]
    experience: Mapped[str]
    birth_year: Mapped[int | None]
    sex: Mapped[str | None]
    spares: Mapped[list[SpareRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=SpareRow.demand)
    capacities: Mapped[list[CapacityRow]] = relationship(
        cascade=CHILDREN, lazy="selectin", order_by=CapacityRow.position
    )

    def key(self) -> str:
        """The person's id."""
        return self.id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {
            "id": self.id,
            "name": self.name,
            "body_mass_kg": self.body_mass_kg,
            "height_cm": self.height_cm,
            "experience": self.experience,
            "spares": [row.demand for row in self.spares],
            "capacities": [row.fields() for row in self.capacities],
            "birth_year": self.birth_year,
            "sex": self.sex,
        }

    @classmethod
    def to_row(cls, person: Person, position: int) -> PersonRow:
        """The row for this person, with its children."""
        return cls(
            id=person.id,
            position=position,
            name=person.name,
            body_mass_kg=person.body_mass_kg,
            height_cm=person.height_cm,
            experience=person.experience.value,
            birth_year=person.birth_year,
            sex=person.sex.value if person.sex is not None else None,
            spares=[SpareRow(demand=demand) for demand in sorted(person.spares)],
            capacities=[CapacityRow.to_row(capacity, i) for i, capacity in enumerate(person.capacities)],
        )


class DayWishRow(Base):
    """A day to train on."""

    __tablename__ = "day_wish"
    __table_args__ = (weekday_check(), position_check(), check("minutes", "minutes > 0"), STRICT)

    person_id: Mapped[str] = owner("wishes.person_id")
    position: Mapped[int] = mapped_column(primary_key=True)
    weekday: Mapped[int]
    minutes: Mapped[float]
    place_id: Mapped[str | None] = other("place.id", nullable=True)
    start: Mapped[str | None]

    def fields(self) -> dict[str, object]:
        """The JSON of the day."""
        return tagged("day", weekday=self.weekday, minutes=self.minutes, place_id=self.place_id, start=self.start)

    @classmethod
    def to_row(cls, day: DayWish, position: int) -> DayWishRow:
        """The row for this day."""
        return cls(
            position=position,
            weekday=day.weekday,
            minutes=day.minutes,
            place_id=day.place_id,
            start=maybe(TIME).write(day.start),
        )


class BanRow(Base):
    """An exercise never to plan."""

    __tablename__ = "ban"
    __table_args__ = (position_check(), STRICT)

    person_id: Mapped[str] = owner("wishes.person_id")
    position: Mapped[int] = mapped_column(primary_key=True)
    exercise_id: Mapped[str]


class PinRow(Base):
    """Something to keep on a weekday."""

    __tablename__ = "pin"
    __table_args__ = (
        weekday_check(),
        position_check(),
        check("something", "exercise_id IS NOT NULL OR kind IS NOT NULL"),
        STRICT,
    )

    person_id: Mapped[str] = owner("wishes.person_id")
    position: Mapped[int] = mapped_column(primary_key=True)
    weekday: Mapped[int]
    exercise_id: Mapped[str | None]
    kind: Mapped[str | None]
    dose: Mapped[str | None]

    def fields(self) -> dict[str, object]:
        """The JSON of the pin."""
        dose = json_of(self.dose, f"pin of “{self.person_id}”")
        return tagged("pin", weekday=self.weekday, exercise_id=self.exercise_id, kind=self.kind, dose=dose)

    @classmethod
    def to_row(cls, pin: Pin, position: int) -> PinRow:
        """The row for this pin."""
        dose = None if pin.dose is None else text_of(PINNED_DOSE.write(pin.dose))
        return cls(position=position, weekday=pin.weekday, exercise_id=pin.exercise_id, kind=pin.kind, dose=dose)


class WishesRow(Entry):
    """One person's wishes for the week."""

    part = Part.WISHES
    __tablename__ = "wishes"
    __table_args__ = (
        *(check(column, f"{column} BETWEEN 0 AND 1") for column in ("strength", "run_walk", "loaded_walk", "mobility")),
        STRICT,
    )

    person_id: Mapped[str] = other("person.id", primary_key=True)
    strength: Mapped[float]
    run_walk: Mapped[float]
    loaded_walk: Mapped[float]
    mobility: Mapped[float]
    days: Mapped[list[DayWishRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=DayWishRow.position)
    bans: Mapped[list[BanRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=BanRow.position)
    pins: Mapped[list[PinRow]] = relationship(cascade=CHILDREN, lazy="selectin", order_by=PinRow.position)

    def key(self) -> str:
        """The person's id."""
        return self.person_id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        goals = tagged(
            "goals",
            strength=self.strength,
            run_walk=self.run_walk,
            loaded_walk=self.loaded_walk,
            mobility=self.mobility,
        )
        return {
            "days": [row.fields() for row in self.days],
            "goals": goals,
            "bans": [row.exercise_id for row in self.bans],
            "pins": [row.fields() for row in self.pins],
        }

    @classmethod
    def to_row(cls, person_id: str, wishes: WeekWishes) -> WishesRow:
        """The row for these wishes, with its children."""
        return cls(
            person_id=person_id,
            strength=wishes.goals.strength,
            run_walk=wishes.goals.run_walk,
            loaded_walk=wishes.goals.loaded_walk,
            mobility=wishes.goals.mobility,
            days=[DayWishRow.to_row(day, i) for i, day in enumerate(wishes.days)],
            bans=[BanRow(position=i, exercise_id=exercise_id) for i, exercise_id in enumerate(wishes.bans)],
            pins=[PinRow.to_row(pin, i) for i, pin in enumerate(wishes.pins)],
        )


class WeekRow(Entry):
    """The week a person was given last, as its planner wrote it."""

    part = Part.WEEK
    __tablename__ = "saved_week"
    __table_args__ = (date_check("starts"), check("version", "version >= 1"), object_check("plan"), STRICT)

    person_id: Mapped[str] = other("person.id", primary_key=True)
    starts: Mapped[str]
    version: Mapped[int]
    plan: Mapped[str]

    def key(self) -> str:
        """The person's id."""
        return self.person_id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {"starts": self.starts, "version": self.version, "plan": self.plan}

    @classmethod
    def to_row(cls, person_id: str, week: SavedWeek) -> WeekRow:
        """The row for this week."""
        return cls(person_id=person_id, starts=week.starts.isoformat(), version=week.version, plan=week.plan)


class BlockRow(Entry):
    """The block of weeks a person is in, as its planner wrote it."""

    part = Part.BLOCK
    __tablename__ = "saved_block"
    __table_args__ = (date_check("starts"), check("version", "version >= 1"), object_check("plan"), STRICT)

    person_id: Mapped[str] = other("person.id", primary_key=True)
    starts: Mapped[str]
    version: Mapped[int]
    plan: Mapped[str]

    def key(self) -> str:
        """The person's id."""
        return self.person_id

    def fields(self) -> dict[str, object]:
        """See `Entry`."""
        return {"starts": self.starts, "version": self.version, "plan": self.plan}

    @classmethod
    def to_row(cls, person_id: str, block: SavedBlock) -> BlockRow:
        """The row for this block."""
        return cls(person_id=person_id, starts=block.starts.isoformat(), version=block.version, plan=block.plan)

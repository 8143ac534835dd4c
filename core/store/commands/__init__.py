"""Edits as small frozen values. Each tells, for the state it meets, which entries change and what to call that.

A command is executed and saved with `core.store.record.Record.do`; its inverse follows from the changes themselves.
"""

from core.store.commands.base import Command, Plan
from core.store.commands.house import ChangeHouse, ChangeSettings, LoadHouse
from core.store.commands.log import AddSession, AddTest, ChangeSession, RemoveSession, RemoveTest
from core.store.commands.own import AddOwn, ChangeOwn, RemoveOwn
from core.store.commands.people import (
    AddPerson,
    ChangePerson,
    ForgetBlock,
    ForgetWeek,
    RemovePerson,
    SaveBlock,
    SaveWeek,
    SetPins,
    SetWishes,
)
from core.store.commands.places import AddPlace, ChangePlace, RemovePlace
from core.store.commands.record import LoadRecord
from core.store.commands.things import (
    AddReading,
    AddThing,
    ChangeThing,
    RemoveReading,
    RemoveThing,
    SetFill,
    SetFills,
    SetOwnCheck,
)
from core.store.commands.week import SavePlan

__all__ = [
    "AddOwn",
    "AddPerson",
    "AddPlace",
    "AddReading",
    "AddSession",
    "AddTest",
    "AddThing",
    "ChangeHouse",
    "ChangeOwn",
    "ChangePerson",
    "ChangePlace",
    "ChangeSession",
    "ChangeSettings",
    "ChangeThing",
    "Command",
    "ForgetBlock",
    "ForgetWeek",
    "LoadHouse",
    "LoadRecord",
    "Plan",
    "RemoveOwn",
    "RemovePerson",
    "RemovePlace",
    "RemoveReading",
    "RemoveSession",
    "RemoveTest",
    "RemoveThing",
    "SaveBlock",
    "SavePlan",
    "SaveWeek",
    "SetFill",
    "SetFills",
    "SetOwnCheck",
    "SetPins",
    "SetWishes",
]

"""Values packed as plain JSON come back equal, and what does not fit is refused."""

from __future__ import annotations

import json
from typing import Any

import pytest

from catalog.exercises import load_exercises
from catalog.materials import load_materials
from catalog.rows import Packer, Unpacker
from core.exercise.model import Exercise, Need, Use
from core.knowledge import Catalog, Source
from core.mass.model import BoxBase, Container, Material, PourTable, RoundBase, Shape, Shouldered
from core.quantity.measured import Measured
from core.things.model import Facts, Form, Hazard


def there_and_back(value: object, hint: Any) -> object:
    packer = Packer()
    root = packer.packed(value)
    pool, written = json.loads(json.dumps([packer.pool, root], allow_nan=False))
    read = Unpacker(pool).reader(hint)
    return written if read is None else read(written)


def written_as(value: object) -> object:
    packer = Packer()
    return packer.pool[packer.packed(value)]


def test_every_shipped_exercise_and_material_comes_back_equal() -> None:
    exercises, materials = load_exercises(), load_materials()
    assert there_and_back(exercises, tuple[Exercise, ...]) == exercises
    assert there_and_back(materials, tuple[Material, ...]) == materials


def test_what_equals_its_default_is_not_written() -> None:
    assert written_as(Need(uses=(Use.WALL,))) == {"is": "Need", "uses": ["wall"]}
    assert written_as(Need(uses=(Use.WALL,), optional=True)) == {"is": "Need", "uses": ["wall"], "optional": True}


def test_sets_are_written_in_order_and_come_back_as_sets() -> None:
    facts = Facts(form=Form.SEAT, hazards=frozenset({Hazard.TIPS, Hazard.FOLDING}))
    assert written_as(facts) == {"is": "Facts", "form": "seat", "hazards": ["folding", "tips"]}
    assert there_and_back(facts, Facts) == facts


@pytest.mark.parametrize(
    "shape",
    [
        Shouldered(base=base, straight_to_cm=10.0, neck_diameter_cm=3.0, neck_height_cm=2.0, full_height_cm=18.0)
        for base in (RoundBase(diameter_cm=9.0), BoxBase(length_cm=9.0, width_cm=8.0))
    ]
    + [PourTable(points=((0.0, 0.0), (5.0, 1.0)))],
    ids=["round", "box", "table"],
)
def test_one_of_several_shapes_comes_back_as_the_same_shape(shape: Shape) -> None:
    assert there_and_back(shape, Shape) == shape
    vessel = Container(shape=shape, nominal_l=Measured(1.0), brimful_l=Measured(1.1), tare_kg=Measured(0.1, 0.01))
    assert there_and_back(vessel, Container) == vessel


def test_what_many_share_is_written_and_read_once() -> None:
    wall = Need(uses=(Use.WALL,))
    packer = Packer()
    assert packer.packed((wall, Need(uses=(Use.WALL,)), wall)) == [0, 0, 0]
    read = Unpacker(packer.pool).reader(tuple[Need, ...])
    assert read is not None
    first, second, third = read([0, 0, 0])
    assert first == wall
    assert first is second is third


def test_a_number_outside_the_pool_is_refused() -> None:
    read = Unpacker([]).reader(Need)
    assert read is not None
    with pytest.raises(IndexError):
        read(4)


def test_absent_values_come_back_absent() -> None:
    assert there_and_back(None, Facts | None) is None
    assert there_and_back(None, Shape | None) is None


@pytest.mark.parametrize(
    ("hint", "written"),
    [
        (Need, {"is": "Source", "uses": ["wall"]}),
        (Need, {"is": "Need", "uses": ["moon"]}),
        (Need, {"is": "Need"}),
        (Need, {"is": "Need", "uses": ["wall"], "colour": 1}),
        (Need, {"uses": ["wall"]}),
        (Shape, {"is": "Need", "uses": ["wall"]}),
    ],
)
def test_what_does_not_fit_is_refused(hint: Any, written: object) -> None:
    read = Unpacker([]).reader(hint)
    assert read is not None
    with pytest.raises((ValueError, TypeError, KeyError)):
        read(written)


def test_a_type_without_a_form_is_refused_both_ways() -> None:
    with pytest.raises(TypeError, match="no form as a row"):
        Packer().packed(object())
    with pytest.raises(TypeError, match="no form as a row"):
        Unpacker([]).reader(complex)
    with pytest.raises(TypeError, match="no form as a row"):
        Unpacker([]).reader(int | str)


def test_a_whole_catalog_comes_back_equal() -> None:
    catalog = Catalog(
        exercises=load_exercises()[:3], kinds=(), materials=(), sources=(Source(id="a", citation="b", kind="exact"),)
    )
    assert there_and_back(catalog, Catalog) == catalog

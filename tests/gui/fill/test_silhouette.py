"""Every container of the catalog is drawn closed and held as it is."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRectF

from core.knowledge import Catalog
from core.mass.model import Bag
from core.things.model import Closure, Thing
from gui.fill.present import silhouette
from gui.widgets import Top
from gui.widgets.vessel import VesselFrame
from tests.dipper import bucket, carrier, coal

AREA = QRectF(0, 0, 400, 500)


def test_what_stands_open_has_nothing_on_top_and_the_rest_is_closed() -> None:
    assert silhouette(bucket()).top is Top.OPEN
    assert silhouette(carrier()).top is Top.SPOUT


def test_every_container_fits_its_place_with_what_closes_it(catalog: Catalog) -> None:
    for kind in catalog.kinds:
        if kind.facts.container is None:
            continue
        shape = silhouette(Thing(id=kind.id, kind_id=kind.id, name=kind.name, facts=kind.facts))
        frame = VesselFrame.inside(shape, AREA)
        drawn = frame.body().boundingRect().united(frame.handle().boundingRect()).united(frame.cap())
        assert AREA.adjusted(-2, -2, 2, 2).contains(drawn), kind.id
        assert (shape.top is Top.OPEN) is (kind.facts.closure is Closure.OPEN), kind.id
        assert isinstance(kind.facts.container.shape, Bag) or frame.cap().height() < AREA.height() / 10


def test_what_is_no_container_has_no_outline() -> None:
    with pytest.raises(ValueError, match="is no container"):
        silhouette(coal())

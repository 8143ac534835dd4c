"""An open record, empty or with the Dipper's household in it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from core.store.record import Record
from tests.core.store.examples import fill_with_dipper, open_record


@pytest.fixture
def record(data_dir: Path) -> Iterator[Record]:
    with open_record(data_dir) as opened:
        yield opened


@pytest.fixture
def dipper(record: Record) -> Record:
    fill_with_dipper(record)
    return record

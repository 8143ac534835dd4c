"""An open record, empty or with the Dipper's household in it."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from core.store.paths import DataFolder
from core.store.record import Record
from tests.core.store.examples import fill_with_dipper, open_record


@pytest.fixture
def record(data_dir: Path) -> Iterator[Record]:
    with open_record(data_dir) as opened:
        yield opened


@pytest.fixture(scope="session")
def dipper_database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A closed record with the Dipper's household, entered command by command; tests get copies."""
    with open_record(tmp_path_factory.mktemp("dipper")) as record:
        fill_with_dipper(record)
        return record.path


@pytest.fixture
def dipper_folder(dipper_database: Path, data_dir: Path) -> DataFolder:
    """A data folder with the Dipper's household, not opened yet."""
    folder = DataFolder(data_dir)
    shutil.copyfile(dipper_database, folder.database)
    return folder


@pytest.fixture
def dipper(dipper_folder: DataFolder) -> Iterator[Record]:
    with open_record(dipper_folder.folder) as opened:
        yield opened

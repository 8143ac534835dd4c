"""The shipped catalog, loaded once for the tests of tests."""

from __future__ import annotations

import pytest

from catalog.load import load_catalog
from core.knowledge import Catalog


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    """Everything that ships."""
    return load_catalog()

"""The states in which every screen must look right, for pictures and for tests."""

from __future__ import annotations

from enum import StrEnum


class ShownState(StrEnum):
    """Nothing yet; the invented household; the same with very long names; what is refused and why."""

    EMPTY = "empty"
    DEMO = "demo"
    LONG = "long"
    REFUSED = "refused"

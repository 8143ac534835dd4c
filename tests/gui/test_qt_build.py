"""The Qt for Python underneath must be one that can be trusted."""

from __future__ import annotations

import sys

from PySide6 import __version__
from PySide6.QtCore import QObject


def test_a_call_without_a_result_costs_no_reference_to_none() -> None:
    """PySide6 6.12.0 on Python 3.11 loses one at each call; the program ends when none are left (measured)."""
    thing = QObject()
    before = sys.getrefcount(None)
    for _ in range(500):
        thing.setObjectName("x")
    lost = before - sys.getrefcount(None)
    assert lost < 250, f"PySide6 {__version__} on Python {sys.version_info[:2]} lost {lost} references in 500 calls"

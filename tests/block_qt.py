"""pytest plugin `-p tests.block_qt`: every import of PySide6 fails, as on a machine that has no Qt.

It also stands in for pytest-qt's settings, since that plugin cannot load then.
"""

from __future__ import annotations

import sys

import pytest

BLOCKED = ("PySide6", "shiboken6")


def pytest_addoption(parser: pytest.Parser, pluginmanager: pytest.PytestPluginManager) -> None:
    for name in BLOCKED:
        if name in sys.modules:
            raise pytest.UsageError(f"{name} was imported before it could be blocked")
        sys.modules[name] = None  # type: ignore[assignment]  # Python's own mark for "this import must fail"
    pluginmanager.set_blocked("pytest-qt")
    for setting in ("qt_api", "qt_log_level_fail"):
        parser.addini(setting, "read by pytest-qt when it is there")

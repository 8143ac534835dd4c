"""The widgets by name: every name leads to its widget, and is loaded only when it is used."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from gui import widgets

ROOT = Path(__file__).parents[3]


def test_every_name_leads_to_its_widget() -> None:
    assert [name for name in widgets.__all__ if getattr(widgets, name).__name__ != name] == []
    assert sorted(widgets.__all__) == sorted(set(widgets.__all__))


def test_another_name_is_an_error_as_in_any_module() -> None:
    with pytest.raises(AttributeError, match="no attribute 'Wheel'"):
        getattr(widgets, "Wheel")  # noqa: B009  # as an import would


def test_the_shell_loads_only_what_it_shows() -> None:
    listed = "import sys, gui.app; print(*sorted(name for name in sys.modules if name.startswith('gui.widgets.')))"
    done = subprocess.run([sys.executable, "-c", listed], cwd=ROOT, capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert "gui.widgets.buttons" in loaded
    assert not loaded & {"gui.widgets.vessel", "gui.widgets.ladder", "gui.widgets.day_column", "gui.widgets.meter"}

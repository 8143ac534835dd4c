"""Running commands in this process: what they print, what they return, and that a refusal is one sentence."""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

import gui.command_line.check
import gui.command_line.home
from catalog.load import load_catalog
from core.knowledge import Catalog
from gui.command_line.main import main

NOW = datetime.datetime(2026, 5, 1, 9, 30, tzinfo=datetime.UTC)


@dataclass(frozen=True)
class Told:
    """What a command did."""

    code: int
    out: str
    err: str

    @property
    def document(self) -> Any:
        return json.loads(self.out)


Run = Callable[..., Told]


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    """The shipped catalog, loaded once."""
    return load_catalog()


@pytest.fixture(autouse=True)
def loaded_once(catalog: Catalog, monkeypatch: pytest.MonkeyPatch) -> None:
    """Commands in this process share the catalog; how it loads is tested elsewhere."""
    for module in (gui.command_line.home, gui.command_line.check):
        monkeypatch.setattr(module, "load_catalog", lambda: catalog)


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    """Run a command given as words."""

    def command(*words: str | Path) -> Told:
        capsys.readouterr()
        code = main([str(word) for word in words], lambda: NOW)
        out, err = capsys.readouterr()
        return Told(code, out, err)

    return command


@pytest.fixture
def demo(run: Run) -> Run:
    """Run a command on the invented household and look that it was answered."""

    def command(*words: str | Path) -> Told:
        told = run(*words, "--demo")
        assert (told.code, told.err) == (0, "")
        return told

    return command


@pytest.fixture
def refused(run: Run) -> Callable[..., str]:
    """Run a command that must be refused: exit code 2, nothing printed, one sentence."""

    def command(*words: str | Path) -> str:
        told = run(*words)
        assert (told.code, told.out) == (2, "")
        assert told.err.endswith(".\n")
        assert told.err.count("\n") == 1
        assert "Traceback" not in told.err
        assert len(told.err) < 600
        return told.err.rstrip("\n")

    return command

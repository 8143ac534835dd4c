"""Everything in core/, catalog/ and the command line imports on a machine that has no Qt."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

IMPORT_ALL = """
import importlib, pkgutil, sys
sys.modules["PySide6"] = sys.modules["shiboken6"] = None
names = sys.argv[1:]
for name in names:
    module = importlib.import_module(name)
    if hasattr(module, "__path__"):
        inside = [found.name for found in pkgutil.iter_modules(module.__path__) if found.name != "__main__"]
        names.extend(f"{name}.{part}" for part in inside)
print(*names)
"""
PACKAGES = ("core", "catalog", "gui.command_line")


def test_it_imports_without_qt() -> None:
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", IMPORT_ALL, *PACKAGES],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    imported = done.stdout.split()
    for package in PACKAGES:
        assert any(name.startswith(f"{package}.") for name in imported)

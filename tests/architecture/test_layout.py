"""Files and functions stay small, core/ prints nothing, and every package a file sits in is a real one."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from statistics import median, quantiles

import pytest

ROOT = Path(__file__).parents[2]
PACKAGES = ("core", "catalog", "gui")
MOST_LINES = 400
VAGUE_NAMES = {"utils", "util", "helpers", "helper", "common", "manager", "misc"}


def python_files(*folders: str) -> list[Path]:
    return sorted(path for folder in folders for path in (ROOT / folder).rglob("*.py"))


@cache
def parsed(package: str) -> tuple[tuple[Path, ast.Module], ...]:
    return tuple((path, ast.parse(path.read_text(encoding="utf-8"))) for path in python_files(package))


def functions(package: str) -> Iterator[tuple[str, int]]:
    """Every function's place and its number of lines of code, docstring and decorators left out."""
    for path, tree in parsed(package):
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                first = node.body[1] if ast.get_docstring(node) is not None and node.body[1:] else node.body[0]
                yield f"{path.relative_to(ROOT)}:{node.lineno} {node.name}", (node.end_lineno or 0) - first.lineno + 1


def test_no_file_is_longer_than_a_reader_can_hold() -> None:
    lengths = {
        str(path.relative_to(ROOT)): len(path.read_text(encoding="utf-8").splitlines())
        for path in python_files(*PACKAGES)
    }
    assert {name: lines for name, lines in lengths.items() if lines > MOST_LINES} == {}


@pytest.mark.parametrize("package", PACKAGES)
def test_functions_are_short(package: str) -> None:
    found = sorted(functions(package), key=lambda entry: -entry[1])
    lengths = [lines for _, lines in found]
    longest = found[:5]
    assert median(lengths) <= 8, longest
    assert quantiles(lengths, n=10)[-1] <= 30, longest


def test_core_never_prints() -> None:
    calls = [
        f"{path.relative_to(ROOT)}:{node.lineno}"
        for path, tree in parsed("core")
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "print"
    ]
    assert calls == []


def test_no_module_has_a_name_that_says_nothing() -> None:
    assert [path for path in python_files(*PACKAGES) if path.stem in VAGUE_NAMES] == []


def test_every_folder_with_code_is_a_package() -> None:
    """A folder without __init__.py is invisible to the import contracts."""
    bare = {path.parent for path in python_files(*PACKAGES) if not (path.parent / "__init__.py").exists()}
    assert sorted(str(folder.relative_to(ROOT)) for folder in bare) == []

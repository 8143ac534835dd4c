"""Nothing asks “Are you sure?”: what can be undone is simply done. A question that is needed stands here, with why."""

from __future__ import annotations

import ast
from pathlib import Path

ROOT = Path(__file__).parents[2]
ASKING = {"QMessageBox", "QInputDialog", "QErrorMessage"}
ALLOWED: dict[str, str] = {}
"""File of the window to the reason it may ask: only going back to a copy, deleting everything, overwriting a file."""


def asks(path: Path) -> bool:
    text = path.read_text(encoding="utf-8")
    if not any(name in text for name in ASKING):
        return False
    tree = ast.parse(text)
    names = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    imported = {alias.name for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) for alias in node.names}
    return bool(ASKING & (names | imported))


def test_only_what_cannot_be_undone_is_asked_about() -> None:
    asking = {str(path.relative_to(ROOT)) for path in (ROOT / "gui").rglob("*.py") if asks(path)}
    assert asking == ALLOWED.keys()


def test_a_question_would_be_found(tmp_path: Path) -> None:
    path = tmp_path / "page.py"
    text = "from PySide6.QtWidgets import QMessageBox as Box\nBox.question(None, 'a', 'b')\n"
    path.write_text(text, encoding="utf-8")
    assert asks(path)

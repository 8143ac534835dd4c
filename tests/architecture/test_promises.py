"""Every promise in DEVELOPERS.md names tests that exist."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
ROW = re.compile(r"^\| (?P<promise>[^|]+) \| (?P<proof>[^|]+) \|$", re.MULTILINE)
TEST = re.compile(r"`([\w/]+/test_\w+\.py)`")


def test_each_promise_names_tests_that_are_there() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    table = text[text.index("## What the program promises") :]
    rows = {found["promise"]: TEST.findall(found["proof"]) for found in ROW.finditer(table)}
    del rows["Promise"]
    assert len(rows) >= 20
    assert {promise for promise, tests in rows.items() if not tests} == set()
    named = [test for tests in rows.values() for test in tests]
    assert [test for test in named if not (ROOT / "tests" / test).is_file()] == []

"""Writes the record of this form of the tables, for every later program to prove that it can still read it.

`python -m tests.core.store.make_fixture` before a release; a file that is there is never overwritten.
"""

from __future__ import annotations

import json
import shutil
import tempfile
from pathlib import Path

from core.store.contents import contents_json
from core.store.engine import SCHEMA
from tests.core.store.examples import fill_with_dipper, open_record

FIXTURES = Path(__file__).with_name("fixtures")


def main() -> None:
    """Enter the Dipper's household in a new record and keep it with its contents as JSON."""
    kept = FIXTURES / f"form-{SCHEMA}.sqlite3"
    if kept.exists():
        raise SystemExit(f"{kept} is there already")
    with tempfile.TemporaryDirectory() as folder, open_record(Path(folder)) as record:
        fill_with_dipper(record)
        document = contents_json(record.contents())
        shutil.copyfile(record.path, kept)
    written = json.dumps(document, ensure_ascii=False, indent=1, sort_keys=True)
    kept.with_suffix(".json").write_text(f"{written}\n", encoding="utf-8")


if __name__ == "__main__":
    main()

"""Everything can be taken along as one JSON document, and brought in again equal; nothing else gets in."""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from core.errors import InputError
from core.store.backup import digest_of
from core.store.changes import HouseFacts
from core.store.commands import LoadRecord, RemoveThing
from core.store.contents import (
    CONTENTS,
    FORM,
    Contents,
    contents_from_json,
    contents_from_text,
    contents_json,
    contents_schema,
)
from core.store.json_text import MOST_COMMAS, to_text
from core.store.record import Record
from tests.core.store.examples import COAL_BAG, INES, LOCK_STEPS, SESSION, STOOL, TOMAS, TOWPATH, open_record


def test_an_export_reads_back_equal(dipper: Record) -> None:
    contents = dipper.contents()
    assert contents_from_text(json.dumps(contents_json(contents), indent=2)) == contents


def test_an_export_brought_into_an_empty_record_gives_the_same_export(dipper: Record, tmp_path: Path) -> None:
    written = to_text(contents_json(dipper.contents()))
    with open_record(tmp_path / "elsewhere") as other:
        changed = other.do(LoadRecord(other.contents(), contents_from_text(written)))
        assert to_text(contents_json(other.contents())) == written
        assert changed.sentence == "Loaded the record of Dipper"
        other.undo()
        assert other.contents() == Contents(house=HouseFacts(name="Home"))


def test_an_export_brought_back_undoes_what_was_changed_since_the_order_included(dipper: Record) -> None:
    exported = dipper.contents()
    dipper.do(RemoveThing("carrier"))
    dipper.do(LoadRecord(dipper.contents(), replace(exported, things=exported.things[::-1])))
    assert dipper.contents().things == exported.things[::-1]
    since = dipper.contents()
    dipper.do(LoadRecord(since, exported))
    assert dipper.contents() == exported
    dipper.undo()
    assert dipper.contents() == since


BARE = Contents(house=HouseFacts(name="Heron"))


@pytest.mark.parametrize(
    ("contents", "words"),
    [
        (
            replace(BARE, things=(LOCK_STEPS,)),
            "“towpath” is mentioned by the thing lock_steps, but there is no such place",
        ),
        (replace(BARE, things=(COAL_BAG, COAL_BAG)), "“coal_bag” is the id of two entries"),
        (replace(BARE, settings=replace(BARE.settings, person_id="ines")), "“ines” is mentioned by the settings"),
        (replace(BARE, people=(INES, TOMAS, INES)), "“ines” is the id of two entries"),
    ],
)
def test_contents_that_do_not_fit_together_are_refused_and_nothing_changes(
    dipper: Record, contents: Contents, words: str
) -> None:
    before = digest_of(dipper.path)
    with pytest.raises(InputError, match=words):
        dipper.do(LoadRecord(dipper.contents(), contents))
    assert digest_of(dipper.path) == before


def test_wishes_without_their_person_or_place_are_refused(dipper: Record) -> None:
    document: Any = contents_json(dipper.contents())
    nobody = contents_from_json(
        document | {"people": [], "weeks": [], "blocks": [], "settings": contents_json(BARE)["settings"]}
    )
    with pytest.raises(InputError, match="“ines” is mentioned by the wishes of ines"):
        dipper.do(LoadRecord(dipper.contents(), nobody))


def test_a_document_of_a_newer_program_is_refused_with_the_way_out(dipper: Record) -> None:
    document = contents_json(dipper.contents()) | {"form": FORM + 1, "moods": []}
    words = f"“{FORM + 1}” is the form of a newer Fillmark; this one reads up to {FORM}; update"
    with pytest.raises(InputError, match=words):
        contents_from_json(document)


def test_a_document_of_an_earlier_form_is_read_as_one_of_today(dipper: Record) -> None:
    document = {key: value for key, value in contents_json(dipper.contents()).items() if key != "own"}
    assert contents_from_json(document | {"form": 1}) == replace(dipper.contents(), own=())


@pytest.mark.parametrize("document", [None, [], {}, "text", 7, {"is": "thing"}, {"is": "fillmark_record"}])
def test_any_other_document_is_refused(document: object) -> None:
    with pytest.raises(InputError):
        contents_from_json(document, "file.json")


def test_the_schema_describes_every_field_and_allows_no_other() -> None:
    schema: Any = contents_schema()
    assert schema["$schema"].startswith("https://json-schema.org/")
    assert set(schema["properties"]) == {"is", *CONTENTS.write(BARE)}
    assert set(schema["properties"]) - set(schema["required"]) == {"blocks", "own"}, "older documents lack these"
    assert schema["additionalProperties"] is False
    assert json.loads(json.dumps(schema)) == schema


def test_ten_years_of_log_go_out_and_come_back_in_seconds() -> None:
    session = replace(SESSION, sets=SESSION.sets * 5)
    sessions = tuple(replace(session, id=f"s{n}") for n in range(4000))
    contents = Contents(
        house=HouseFacts(name="Dipper"), people=(INES,), places=(TOWPATH,), things=(STOOL,), sessions=sessions
    )
    assert contents_from_text(to_text(contents_json(contents))) == contents


HOSTILE = {
    "deep": lambda: '{"a":' * 3_000_000,
    "lists": lambda: "[" + "[]," * 6_000_000 + "[]]",
    "numbers": lambda: "[" + "1.5," * 4_000_000 + "1]",
    "fields": lambda: "{" + ",".join(f'"{n}":1' for n in range(1_500_000)) + "}",
    "long name": lambda: json.dumps(contents_json(BARE) | {"house": {"is": "house", "name": "x" * 15_000_000}}),
    "many things": lambda: json.dumps(contents_json(BARE) | {"things": [{}] * 300_000}),
    "wide signs": lambda: json.dumps(["\U0001f600" * 4_900_000], ensure_ascii=False),
    "most fields": lambda: "{" + ",".join(f'"{n}":1.5' for n in range(MOST_COMMAS)) + "}",
    "large number": lambda: "9" * 10_000_000,
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_document_is_refused_quickly_and_in_little_memory(name: str, tmp_path: Path) -> None:
    file = tmp_path / "import.json"
    file.write_text(HOSTILE[name]())
    # VmHWM begins anew with the program; ru_maxrss would carry over the peak of the process that runs the tests.
    code = (
        "import json, pathlib, sys, time\n"
        "begun = time.process_time()\n"
        "json.loads('[' + '1.5,' * 400_000 + '1]')\n"
        "usual = time.process_time() - begun\n"
        "from core.errors import InputError\n"
        "from core.store.contents import contents_from_text\n"
        "begun = time.process_time()\n"
        "try:\n"
        "    contents_from_text(pathlib.Path(sys.argv[1]).read_text(), 'import.json')\n"
        "except InputError as told:\n"
        "    print(str(told).count(chr(10)), len(str(told)) < 400)\n"
        "spent = time.process_time() - begun\n"
        "lines = pathlib.Path('/proc/self/status').read_text().splitlines()\n"
        "peak_kb = next(int(line.split()[1]) for line in lines if line.startswith('VmHWM'))\n"
        "print(spent, usual, peak_kb // 1024)\n"
    )
    command = [sys.executable, "-c", code, str(file)]
    told, spent = subprocess.run(command, check=True, capture_output=True, text=True).stdout.splitlines()
    assert told == "0 True"
    seconds, usual, megabytes = spent.split()
    assert float(seconds) < max(2, 40 * float(usual))  # a machine that is busy takes longer over anything
    assert int(megabytes) < 300

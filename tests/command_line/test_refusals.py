"""What can't be used is refused: exit code 2, one sentence, nothing printed and nothing written."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest

Refused = Callable[..., str]
LONG = "x" * 10_000

WORDS = {
    ("weig",): "“weig” is no command",
    ("weigh",): "The following arguments are required: THING",
    ("weigh", "water carrier", "--demo", "--colour", "red"): "Unrecognized arguments: --colour red",
    ("weigh", "water carrier", "--dem"): "Unrecognized arguments: --dem",
    ("weigh", "zorp", "--demo"): "“zorp” is not a thing known here for sure",
    ("weigh", LONG, "--demo"): "is longer than 160 characters",
    ("weigh", "<script>alert(1)</script>", "--demo"): "is not a thing known here for sure",
    ("weigh", "", "--demo"): "names no thing",
    (
        "weigh",
        "2 chairs and 3 books",
    ): "names more than one thing",
    ("weigh", "water carrier", "--demo", "--fill", "petrol"): "“petrol” is not a fill",
    ("weigh", "water carrier", "--demo", "--fill", LONG): "is not one fill material known here",
    ("weigh", "water carrier", "--demo", "--level", "14 furlongs"): "has no unit of volume that is known here",
    ("weigh", "water carrier", "--demo", "--level", "140 L"): "is not a volume this container can hold",
    ("weigh", "water carrier", "--demo", "--level", "140%"): "is more than full",
    ("weigh", "water carrier", "--demo", "--level", "-3 L"): "is a negative volume",
    ("weigh", "water carrier", "--demo", "--for", "12 parsecs"): "has no unit of mass that is known here",
    ("weigh", "water carrier", "--demo", "--for", "0 kg"): "is not a mass",
    ("weigh", "water carrier", "--demo", "--for", "nan kg"): "is not a mass",
    ("weigh", "water carrier", "--demo", "--for", "12 kg", "--level", "full"): "ask two different things",
    ("weigh", "water carrier", "--demo", "--scale", "heavy"): "is not a mass",
    ("weigh", "water carrier", "--demo", "--scale", "0.2 kg"): "is less than the empty container weighs",
    ("weigh", "water carrier", "--demo", "--scale", "60 kg - 68 kg"): "is less than you weigh without it",
    ("weigh", "water carrier", "--demo", "--packing", "tight"): "is no packing",
    ("weigh", "water carrier", "--demo", "--temperature", "300 C"): "is outside -60 to 100 °C",
    ("weigh", "coal bag", "--demo", "--fill", "water"): "can't be filled",
    ("weigh", "water carrier", "--demo", "--units", "furlong"): "“furlong” is no system of units",
    ("loads", "--demo"): "The following arguments are required: --use",
    ("loads", "--demo", "--use", "juggle"): "“juggle” is no use of a load",
    ("loads", "--demo", "--use", "hug", "--near", "12 L"): "is a volume, not a mass",
    ("loads", "--demo", "--use", "hug", "--near", "500 kg"): "is not a load from 0 to 150 kg",
    ("loads", "--demo", "--use", "hug", "--near", "12 kg", "--within", "60"): "is not a tolerance from 0 to 50 %",
    ("loads", "--demo", "--use", "hug", "--near", "12 kg", "--within", "few"): "is no number of per cent",
    ("loads", "--demo", "--use", "hug", "--within", "5"): "give the mass with --near",
    ("loads", "--demo", "--use", "hug", "--person", "Nobody"): "choose one of: Ines, Tomas",
    ("loads", "--demo", "--use", "hug", "--place", LONG): "is no place of this household",
    ("swap", "xqxqxq", "--demo"): "“xqxqxq” is no movement in the catalog",
    ("swap", LONG, "--demo"): "is no movement in the catalog",
    ("swap", "squ", "--demo"): "could be more than one movement",
    ("swap", "push-up", "--demo", "--because", "bored"): "“bored” is no cause",
    ("swap", "push-up", "--demo", "--spare", "feelings"): "“feelings” is no demand",
    ("swap", "push-up", "--demo", "--dose", "lots"): "is not a dose that can be read",
    ("swap", "push-up", "--demo", "--dose", "4 x 5 at 40 L"): "is a volume, not a mass",
    ("week", "--demo", "--days", "tue 0 min"): "is no session length",
    ("week", "--demo", "--days", "tue"): "is empty",
    ("week", "--demo", "--days", "someday 30 min"): "“someday” is no weekday",
    ("week", "--demo", "--days", "tue 30 min, tue 40 min"): "is listed more than once",
    ("week", "--demo", "--pin", "tue"): "is pinned to nothing",
    ("week", "--demo", "--pin", "tue xqxqxq"): "is no movement in the catalog",
    ("week", "--demo", "--ban", "xqxqxq"): "is no movement in the catalog",
    ("week", "--demo", "--from", "missing.json"): "is no file with a week",
    ("block", "--demo", "--weeks", "3"): "is no length for a block",
    ("block", "--demo", "--weeks", "many"): "is no number of weeks",
    ("block", "--demo", "--start", "2026-05-06"): "is no Monday",
    ("block", "--demo", "--start", "soon"): "is no date",
    ("calendar", "--demo", "--ics", "a.ics", "--starts", "tomorrow"): "is no date",
    ("calendar", "--demo", "--ics", "a.ics", "--starts", "2026-05-05"): "give 2026-05-04",
    ("sheet", "--demo", "--pdf", "a.pdf", "--paper", "a3"): "“a3” is no paper size",
    ("sheet", "--demo", "--pdf", "a.pdf", "--days", "tue 5 min", "--pin", "tue strength"): "can't hold together",
    ("strip", "mop bucket", "--demo", "--pdf", "missing/a.pdf"): "cannot be written",
    ("strip", "coal bag", "--demo", "--pdf", "a.pdf"): "is nothing that can be filled",
    ("strip", "water carrier", "--demo", "--fill", "bleach", "--pdf", "a.pdf"): "is not a fill",
    ("export", "--demo"): "One of the arguments --json --csv --schema --toml is required",
    ("check",): "check takes a FILE, --schema or --catalog",
    ("check", "--schema", "--catalog"): "check takes a FILE, --schema or --catalog",
    ("gaps", "--demo", "--home", "a.toml"): "are two households",
    ("gaps", "--home", "missing.toml"): "is not there",
    ("--home", "a.toml"): "--home is for commands",
}


@pytest.mark.parametrize("words", WORDS, ids=range(len(WORDS)))
def test_words_that_cannot_be_used_are_refused(
    words: tuple[str, ...], refused: Refused, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert WORDS[words] in refused(*words)
    assert list(tmp_path.iterdir()) == []


def test_without_a_record_the_way_out_is_told(refused: Refused, data_dir: Path) -> None:
    for words in (("loads", "--use", "hug"), ("gaps",), ("week",), ("export", "--json", data_dir / "a.json")):
        assert "holds no household yet" in refused(*words, "--data", data_dir)
    assert list(data_dir.iterdir()) == []


EMPTY = {
    "fillmark = 1": "has nobody in it",
    "fillmark = 1\n[[people]]\nname = 'Ines'\nbody_mass = '68 kg'\nheight = '171 cm'": "leave nothing to plan",
}


@pytest.mark.parametrize("text", EMPTY)
def test_an_empty_house_is_told_what_it_lacks(text: str, refused: Refused, tmp_path: Path) -> None:
    path = tmp_path / "home.toml"
    path.write_text(text, encoding="utf-8")
    assert EMPTY[text] in refused("week", "--home", path)


# --- files from strangers -------------------------------------------------------------------------------------------

PERSON = b"[[people]]\nname = 'A'\nbody_mass = '68 kg'\nheight = '171 cm'\n"
HEAD = b"fillmark = 1\n"
HOSTILE: dict[str, bytes] = {
    "empty": b"",
    "not text": bytes(range(256)) * 64,
    "zeros": b"\0" * 100_000,
    "a picture": b"\xff\xd8\xff\xe0" + b"JFIF" * 5000,
    "a database": b"SQLite format 3\0" + b"\0" * 8000,
    "too large": HEAD + b"#" * 2_000_000,
    "broken": b"fillmark = = 1",
    "no closing": HEAD + b"things = ['chair'",
    "a key twice": HEAD + b"name = 'a'\nname = 'b'",
    "nested arrays": HEAD + b"things = " + b"[" * 50_000 + b"]" * 50_000,
    "nested tables": HEAD + b"a = " + b"{ a = " * 20_000 + b"1" + b" }" * 20_000,
    "a dotted key": HEAD + b".".join([b"a"] * 50_000) + b" = 1",
    "many dotted keys": HEAD + (b".".join([b"a"] * 390) + b"%d = 1\n") % 1 * 1000,
    "a huge number": HEAD + b"name = " + b"9" * 100_000,
    "a newer form": b"fillmark = 99",
    "another form": b"fillmark = 'one'",
    "a list for a table": HEAD + b"people = [1, 2, 3]",
    "a table for a list": HEAD + b"things = { a = 1 }",
    "numbers for words": HEAD + b"things = [1, 2.5, true]",
    "infinity": HEAD + b"[[places]]\nname = 'a'\nfloor_m2 = inf",
    "not a number": HEAD + b"[[places]]\nname = 'a'\nfloor_m2 = nan",
    "a 20 kg person": HEAD + PERSON.replace(b"68 kg", b"20 kg"),
    "a long name": HEAD + PERSON.replace(b"'A'", b"'" + b"x" * 10_000 + b"'"),
    "markup": HEAD + b"things = ['<script>alert(1)</script>']",
    "a formula": HEAD + b"things = ['=HYPERLINK(1)']",
    "control characters": HEAD + PERSON.replace(b"'A'", b'"a\\u0000b"'),
    "turned writing": HEAD + PERSON.replace(b"'A'", b'"a\\u202Eb"'),
    "half a pair": HEAD + PERSON.replace(b"'A'", b'"\\uD800"'),
    "a path": HEAD + b"things = ['../../../etc/passwd']",
    "a billion things": HEAD + b"things = ['999999999 chairs']",
    "many things": HEAD + b"things = [" + b"'chair'," * 5000 + b"]",
    "many people": HEAD + PERSON * 3000,
    "many unknown fields": HEAD + b"".join(b"a%d = 1\n" % at for at in range(20_000)),
    "many bad things": HEAD + b"things = [" + b"'zorp quux'," * 400 + b"]",
    "an unknown unit": HEAD + PERSON.replace(b"68 kg", b"68 furlongs"),
    "a unit that computes": HEAD + PERSON.replace(b"68 kg", b"68 kg**9999999"),
    "zero minutes": HEAD + PERSON + b"[week]\ndays = { tue = '0 min' }",
    "a day too many": HEAD + PERSON + b"[week]\ndays = { someday = '30 min' }",
    "an unknown pin": HEAD + PERSON + b"[week]\npins = [{ day = 'tue', exercise = 'xqxqxq' }]",
    "an exact thing of another kind": HEAD + b"things = [{ exact = { is = 'os.system' } }]",
    "a deep exact thing": HEAD + b"things = [{ exact = { facts = " + b"{ facts = " * 60 + b"1" + b" }" * 60 + b" } }]",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_file_from_a_stranger_costs_one_line(name: str, refused: Refused, tmp_path: Path) -> None:
    path = tmp_path / "home.toml"
    path.write_bytes(HOSTILE[name])
    started = time.process_time()
    sentence = refused("gaps", "--home", path)
    assert time.process_time() - started < 2
    assert sentence.isprintable()
    assert [found.name for found in tmp_path.iterdir()] == ["home.toml"]


def test_a_week_from_a_stranger_costs_one_line(refused: Refused, tmp_path: Path) -> None:
    path = tmp_path / "week.json"
    for text in ("", "{}", "[]", '{"plan": 1}', '{"plan": {"is": "week"}}', "[" * 100_000, '{"plan": NaN}', "\0"):
        path.write_text(text, encoding="utf-8")
        assert refused("week", "--demo", "--from", path)

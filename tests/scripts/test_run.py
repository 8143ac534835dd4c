"""`./run` says in one sentence what is missing: a display, a package, Python."""

from __future__ import annotations

import os
import re
import subprocess
from pathlib import Path

import pytest

from gui.command_line.options import COMMANDS, top_parser

ROOT = Path(__file__).parents[2]
DISPLAYS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


def shell(script: str, *, path: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run `script` with the set-up functions loaded, programs taken from `path` first."""
    environment = {**os.environ, "PATH": f"{path}:/usr/bin:/bin" if path else os.environ["PATH"]}
    command = f'root="{ROOT}"; . "$root/scripts/set-up.sh"; {script}'
    return subprocess.run(["sh", "-euc", command], env=environment, capture_output=True, text=True, check=False)


def stand_in(folder: Path, name: str, body: str) -> None:
    program = folder / name
    program.write_text(f"#!/bin/sh\n{body}\n", encoding="utf-8")
    program.chmod(0o755)


@pytest.mark.parametrize("arguments", [[], ["--demo"], ["--data", "somewhere"]])
def test_without_a_display_one_sentence_points_to_the_commands(arguments: list[str]) -> None:
    environment = {name: value for name, value in os.environ.items() if name not in DISPLAYS}
    done = subprocess.run([ROOT / "run", *arguments], env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert done.stdout == ""
    assert re.fullmatch(r"There is no display .*: weigh loads .*\n", done.stderr)


def test_a_person_without_root_is_told_the_line_to_type(tmp_path: Path) -> None:
    stand_in(tmp_path, "id", "echo 1000")
    stand_in(tmp_path, "apt-get", "echo called >&2")
    done = shell('need_packages "Something is missing" libgl1 libegl1', path=tmp_path)
    assert done.returncode == 1
    assert done.stderr == "Something is missing; type: sudo apt-get install libgl1 libegl1\n"


def test_root_on_debian_gets_it_installed_after_one_update(tmp_path: Path) -> None:
    stand_in(tmp_path, "id", "echo 0")
    stand_in(tmp_path, "apt-get", f'echo "$@" >> {tmp_path}/calls')
    done = shell('need_packages "A is missing" a; need_packages "B is missing" b c', path=tmp_path)
    assert done.returncode == 0, done.stderr
    calls = (tmp_path / "calls").read_text(encoding="utf-8").splitlines()
    assert calls == [
        "-qq update",
        "-qq -y --no-install-recommends install a",
        "-qq -y --no-install-recommends install b c",
    ]


def test_an_old_python_is_passed_over(tmp_path: Path) -> None:
    stand_in(tmp_path, "python3", "exit 1")
    stand_in(tmp_path, "python3.13", "exit 0")
    done = shell("find_python; echo $python", path=tmp_path)
    assert done.stdout == "python3.13\n"


def test_a_persons_own_python_path_cannot_hide_our_modules() -> None:
    done = shell('PYTHONPATH=/elsewhere; . "$root/scripts/set-up.sh"; echo "path: ${PYTHONPATH:-none}"')
    assert done.stdout == "path: none\n"


def listed_in_run(name: str) -> list[str]:
    found = re.search(rf'^{name}="(.+)"$', (ROOT / "run").read_text(encoding="utf-8"), re.MULTILINE)
    assert found is not None
    return found[1].split()


def test_the_commands_named_without_a_display_are_the_command_lines_own() -> None:
    assert listed_in_run("commands") == list(COMMANDS)


def test_the_options_that_take_a_value_are_the_command_lines_own() -> None:
    options = [option for action in top_parser()._actions if action.nargs is None for option in action.option_strings]
    assert sorted(listed_in_run("options_with_value")) == sorted(options)


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("", True),
        ("--demo", True),
        ("--data week", True),
        ("--data somewhere --units us", True),
        ("week", False),
        ("--data somewhere week", False),
        ("--units us --demo loads --use hug", False),
        ("--help", False),
        ("weeek", False),
    ],
)
def test_the_window_opens_only_when_no_command_is_given(words: str, wanted: bool) -> None:
    text = (ROOT / "run").read_text(encoding="utf-8")
    function = text[text.index("options_with_value=") : text.index("has_display()")]
    done = shell(f"{function}\nif wants_window {words}; then echo yes; else echo no; fi")
    assert done.stdout == ("yes\n" if wanted else "no\n"), done.stderr

"""The lock files pin every dependency that pyproject.toml names, with hashes, and name no host."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
PIN = re.compile(r"^(?P<name>[a-z0-9-]+)==(?P<version>[^ ;\\]+)", re.MULTILINE)

RUNTIME = PROJECT["project"]["dependencies"] + PROJECT["dependency-groups"]["build"]
DEV = RUNTIME + PROJECT["dependency-groups"]["dev"]


def lock_text(name: str) -> str:
    return (ROOT / name).read_text(encoding="utf-8")


def pins(name: str) -> dict[str, str]:
    return {found["name"]: found["version"] for found in PIN.finditer(lock_text(name))}


@pytest.mark.parametrize(("lock", "wanted"), [("requirements.lock", RUNTIME), ("requirements-dev.lock", DEV)])
def test_a_lock_pins_what_the_project_asks_for(lock: str, wanted: list[str]) -> None:
    locked = pins(lock)
    for requirement in map(Requirement, wanted):
        assert requirement.specifier.contains(locked[canonicalize_name(requirement.name)]), requirement


def test_the_dev_lock_holds_the_runtime_locks_versions() -> None:
    assert pins("requirements.lock").items() <= pins("requirements-dev.lock").items()


@pytest.mark.parametrize("lock", ["requirements.lock", "requirements-dev.lock"])
def test_every_pin_has_a_hash_and_no_host_is_named(lock: str) -> None:
    entries = re.split(r"\n(?=[a-z0-9])", lock_text(lock))[1:]
    assert len(entries) == len(pins(lock))
    assert [entry.split()[0] for entry in entries if "--hash=sha256:" not in entry] == []
    assert "://" not in lock_text(lock)

"""pyproject.toml names exactly the libraries the program imports: none missing, none that nothing uses."""

from __future__ import annotations

import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import grimp
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
OURS = ("core", "catalog", "gui")
BROUGHT_ALONG = {
    "pydantic-core": "pydantic",  # its error types are part of pydantic's interface
    "shiboken6": "pyside6-essentials",  # tells whether Qt has deleted an object
}
"""Libraries that come with a declared one and may be named where that one may."""


def declared() -> set[str]:
    """The libraries every installation has; an extra need not be there."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return {canonicalize_name(Requirement(line).name) for line in project["dependencies"]}


def imported() -> dict[str, set[str]]:
    """For each foreign package the program imports, the distributions that may hold it."""
    graph = grimp.build_graph(*OURS, include_external_packages=True, cache_dir=None)
    roots = {module.split(".")[0] for module in graph.modules} - set(OURS) - sys.stdlib_module_names
    holders = packages_distributions()
    return {root: {canonicalize_name(name) for name in holders.get(root, ())} for root in roots}


def test_every_library_imported_is_declared() -> None:
    known = declared()
    stray = {
        root
        for root, holders in imported().items()
        if not {BROUGHT_ALONG.get(holder, holder) for holder in holders} & known
    }
    assert sorted(stray) == []


def test_every_library_declared_is_imported() -> None:
    used = {holder for holders in imported().values() for holder in holders}
    assert sorted(declared() - used) == []

"""The import contracts in pyproject.toml hold, name modules that exist, and each one breaks on a wrong import.

A contract that names a module which does not exist watches nothing, and nobody would notice.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator
from importlib.metadata import packages_distributions
from pathlib import Path

import grimp
import pytest
from importlinter import Contract
from importlinter.api import read_configuration
from importlinter.cli import EXIT_STATUS_SUCCESS, lint_imports
from importlinter.domain.contract import registry

ROOT = Path(__file__).parents[2]
CONFIGURATION = read_configuration(str(ROOT / "pyproject.toml"))
CONTRACTS = {options["id"]: options for options in CONFIGURATION["contracts_options"]}
FIELDS_NAMING_MODULES = (
    "layers",
    "source_modules",
    "forbidden_modules",
    "protected_modules",
    "allowed_importers",
    "ancestors",
)

WRONG_IMPORTS = {
    "one-way": [("core.errors", "catalog"), ("core.errors", "gui"), ("catalog", "gui")],
    "no-qt": [
        ("core.errors", "PySide6"),
        ("catalog", "PySide6"),
        ("gui.command_line", "PySide6"),
        ("gui.command_line", "gui.theme.controller"),
        ("core.errors", "shiboken6"),
    ],
    "record-last": [("core.loads", "core.store"), ("core.errors", "core.store")],
    "database-in-store": [("core.plan", "sqlalchemy"), ("gui.theme", "sqlalchemy"), ("catalog", "alembic")],
    "solver-in-plan": [("core.swap", "ortools"), ("gui.theme", "ortools")],
    "units-in-quantity": [("core.mass", "pint"), ("catalog", "pint")],
    "models-at-the-edge": [
        ("core.exercise.model", "pydantic"),
        ("gui.theme", "pydantic"),
        ("core.errors", "pydantic_core"),
    ],
    "paper-in-paper": [("core.plan", "reportlab"), ("gui.theme", "icalendar")],
    "no-circles": [("core.errors", "core.mass")],
}
"""For each contract, imports that it must refuse."""

CASES = [(name, *wrong) for name, pairs in WRONG_IMPORTS.items() for wrong in pairs]


@pytest.fixture(scope="module")
def graph() -> grimp.ImportGraph:
    return grimp.build_graph("core", "catalog", "gui", include_external_packages=True, cache_dir=None)


def contract(name: str) -> Contract:
    options = CONTRACTS[name]
    made = registry.get_contract_class(options["type"])(
        name=options["name"], session_options=CONFIGURATION["session_options"], contract_options=options
    )
    assert isinstance(made, Contract)
    return made


def named_modules(name: str) -> Iterator[str]:
    for field in FIELDS_NAMING_MODULES:
        yield from CONTRACTS[name].get(field, ())


def test_the_contracts_hold(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    status = lint_imports(config_filename="pyproject.toml", no_cache=True, no_logo=True)
    assert status == EXIT_STATUS_SUCCESS, capsys.readouterr().out


@pytest.mark.parametrize("name", CONTRACTS)
def test_every_module_a_contract_names_exists(name: str, graph: grimp.ImportGraph) -> None:
    known = graph.modules | packages_distributions().keys()
    assert [module for module in named_modules(name) if "*" not in module and module not in known] == []


def test_every_contract_has_a_wrong_import_to_refuse() -> None:
    assert WRONG_IMPORTS.keys() == CONTRACTS.keys()


@pytest.mark.parametrize(("name", "importer", "imported"), CASES)
def test_a_wrong_import_breaks_the_contract(name: str, importer: str, imported: str, graph: grimp.ImportGraph) -> None:
    wrong = copy.deepcopy(graph)
    assert importer in wrong.modules
    wrong.add_import(importer=importer, imported=imported, line_number=1, line_contents=f"import {imported}")
    assert not contract(name).check(wrong, verbose=False).kept

"""What pytest needs while mutants are run: loaded by `run.py`, never by the suite.

A mutant has to die by what a test finds. So the lexicon is not refused for having been
made from other sources (`run.py` has checked that before it copied them), a slow example
is not a failure, and hypothesis tries the same examples each time.
"""

from __future__ import annotations

import ast
import doctest
import importlib
import json
import os
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ORIGINALS = "MUTATION_ORIGINALS"
"""The variable that says where the sources are that no mutant was put into."""

MUTANT = "MUTANT_UNDER_TEST"
"""The variable in which mutmut names the mutant, or what else it is doing."""

AT_IMPORT = "at_import.json"
"""The file, beside the originals, that names the functions called while modules are imported."""


def function_of(mutant: str) -> str:
    """Return the name under which mutmut counts the function of a mutant."""
    return mutant.rpartition("__mutmut_")[0]


@pytest.hookimpl(tryfirst=True)
def pytest_load_initial_conftests() -> None:
    from hypothesis import HealthCheck, settings

    settings.register_profile(
        "mutation",
        deadline=None,
        derandomize=True,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    settings.load_profile("mutation")
    # mutmut chooses the mutant when everything is imported: what was made by then was made
    # by the original, so it is made again.
    names = Path(os.environ[ORIGINALS], AT_IMPORT)
    if names.exists() and function_of(os.environ[MUTANT]) in json.loads(names.read_text("utf-8")):
        for name in list(sys.modules):
            if name.partition(".")[0] in ("phonodrill", "tests") and name != __name__:
                del sys.modules[name]
    compiling = importlib.import_module("phonodrill.lexicon.compile")
    package = Path(str(compiling.__file__)).resolve().parents[1]
    if package.parent != Path.cwd().resolve():
        pytest.exit(f"the tests would not see the mutants but {package}", 2)
    stored = compiling.stored_fingerprint(compiling.LEXICON_PATH)
    setattr(compiling, "fingerprint", lambda _: stored)  # noqa: B010 - mypy knows no such name


def _documented(path: Path) -> Iterator[tuple[str, str]]:
    """Yield the name and docstring of everything in a source file that has one."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, (ast.FunctionDef, ast.ClassDef, ast.Module)):
            yield getattr(node, "name", "module"), ast.get_docstring(node) or ""


def read_examples() -> list[doctest.DocTest]:
    """Return the examples of the docstrings of the mutated room, none outside a mutation run.

    They are read from the sources without mutants: in the mutated copy every mutant of a
    function repeats its docstring.
    """
    if ORIGINALS not in os.environ:
        return []
    root = Path(os.environ[ORIGINALS])
    found = []
    for path in map(Path, json.loads(root.joinpath("mutated.json").read_text("utf-8"))):
        for name, text in _documented(root / path):
            if ">>>" in text:
                module = ".".join(path.with_suffix("").parts)
                globs = dict(vars(importlib.import_module(module)))
                label = f"{module}.{name}"
                found.append(doctest.DocTestParser().get_doctest(text, globs, label, str(path), 0))
    return found

"""Each fault that docs/reliability.md speaks of has its test."""

from __future__ import annotations

import ast
import re
from functools import cache

import pytest

from tests.conftest import ROOT

TEXT = (ROOT / "docs" / "reliability.md").read_text("utf-8")
FAULTS = re.search(r"^## Faults\n(.*?)(?=^## )", TEXT, re.DOTALL | re.MULTILINE)
ROWS = [
    [cell.strip() for cell in line.strip("|").split("|")]
    for line in (FAULTS[1] if FAULTS else "").splitlines()
    if line.startswith("| ")
][1:]
NAMED = re.compile(r"`([\w/]+\.py)::(test_\w+)`")


@cache
def named_in(name: str) -> frozenset[str]:
    tree = ast.parse((ROOT / "tests" / name).read_text("utf-8"))
    return frozenset(node.name for node in tree.body if isinstance(node, ast.FunctionDef))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0][:40])
def test_each_fault_has_its_test(row: list[str]) -> None:
    what, answer, tests = row
    named = NAMED.findall(tests)
    assert what
    assert answer
    assert named
    assert tests == ", ".join(f"`{file}::{test}`" for file, test in named)
    for file, test in named:
        assert test in named_in(file)


def test_the_table_is_read() -> None:
    assert len(ROWS) > 30
    assert len({what for what, _, _ in ROWS}) == len(ROWS)

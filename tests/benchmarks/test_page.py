"""The page on performance is what the script writes from what was measured."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.benchmarks.commands import Command, Limits, measure
from tests.benchmarks.page import command_row, growth_rows, library_rows, slope, write_page
from tests.benchmarks.report import MEASURED
from tests.conftest import ROOT

PAGE = ROOT / "docs" / "performance.md"


def test_the_page_is_as_the_script_writes_it() -> None:
    """Nobody edits it; after a change of the template: ``report --again --out``."""
    assert PAGE.read_text("utf-8") == write_page(json.loads(MEASURED.read_text("utf-8")))


@pytest.mark.parametrize(
    ("clock", "times", "memory", "missed"),
    [
        (0.4, 1.5, 50.0, ""),
        (0.6, 1.5, 50.0, "600 ms by the clock (300 ms of processor time); target 500 ms"),
        (0.4, 1.7, 50.0, "1.70 times `import typer`; target 1.6"),
        (0.4, 1.5, 70.0, "70 MiB; target 60"),
    ],
)
def test_a_missed_target_is_said(clock: float, times: float, memory: float, missed: str) -> None:
    row = command_row(
        {
            "shown": "gull",
            "clock": (clock, clock),
            "processor": (0.3, 0.3),
            "times": times,
            "memory": memory,
            "limits": Limits(1.6, 0.5, 60)._asdict(),
        }
    )
    assert row.missed == (f"gull: {missed}" if missed else "")
    assert row.cells[-1] == ("**not met**" if missed else "met")


@pytest.mark.parametrize(("power", "is_met"), [(1, True), (2, False)])
def test_growth_is_judged_by_its_slope(power: int, is_met: bool) -> None:
    series = [
        {"group": "growth: ropes", "unit": "m", "size": size, "least": size**power, "slope": 1.1}
        for size in (4, 1, 2)
    ]
    (row,) = growth_rows(series)
    assert row.cells[1] == "1, 2, 4 m"
    assert row.cells[3] == f"{power:.2f}"
    assert (row.cells[-1] == "met") is is_met
    assert bool(row.missed) is not is_met


def test_a_library_is_set_beside_ours() -> None:
    def bench(shown: str, median: float, **asked: int) -> dict[str, Any]:
        return {"group": "crabs", "shown": shown, "median": median, **asked}

    rows = library_rows(
        [bench("ours", 0.02), bench("slow", 0.5, slower=20), bench("fast", 0.005, slower=20)]
    )
    assert [row.cells[3] for row in rows] == ["", "25 times", "1/4.0"]
    assert [bool(row.missed) for row in rows] == [False, False, True]


def test_a_command_is_run_beside_typer() -> None:
    typer, version = measure([Command("", ()), Command("--version", ("--version",))], rounds=1)
    assert typer.times == 1
    assert version.times > 0.5
    assert 0 < version.processor[0] <= version.processor[1]
    assert 5 < version.memory < 500


def test_no_growth_has_no_slope() -> None:
    assert slope([(10, 0.5), (20, 0.5), (40, 0.5)]) == 0

"""What was drawn, what was checked, what was found; kept in a file so that a run can go on."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path

MOST_SHOWN = 50


@dataclass
class Tally:
    """The figures of a soak.

    Attributes:
        seed: what the run was drawn by.
        cells: how many cells are done.
        worded: how many different items had their words and lines checked, over all cells.
        draws: how many items were drawn, by what, e.g. ``task delete``.
        distinct: how many different ones were checked in each cell, by the same.
        faults: how many were wrong or unfit, by the first word.
        shown: the first of them.
        wall, processor: seconds.
    """

    seed: int
    cells: int = 0
    worded: int = 0
    draws: Counter[str] = field(default_factory=Counter)
    distinct: Counter[str] = field(default_factory=Counter)
    faults: Counter[str] = field(default_factory=Counter)
    shown: list[str] = field(default_factory=list)
    wall: float = 0.0
    processor: float = 0.0

    def note(self, fault: str, item: str) -> None:
        """Keep a fault."""
        self.faults[fault.split(":")[0]] += 1
        if len(self.shown) < MOST_SHOWN:
            self.shown.append(f"{fault} | {item}")

    def write(self, path: Path) -> None:
        """Write it down."""
        path.write_text(json.dumps(vars(self), indent=1, ensure_ascii=False), "utf-8")

    def table(self) -> str:
        """Write the figures as a Markdown table."""
        lines = ["| | drawn | different, each checked |", "|---|---:|---:|"]
        lines += [
            f"| {name} | {count:,} | {self.distinct[name]:,} |"
            for name, count in self.draws.items()
        ]
        wrong, unfit = self.faults["wrong"], self.faults["unfit"]
        return "\n".join([*lines, "", f"wrong: {wrong}; unfit: {unfit}"])


def read_tally(path: Path, seed: int) -> Tally:
    """Read the figures of a run that was stopped, or begin anew."""
    if not path.is_file():
        return Tally(seed)
    data = json.loads(path.read_text("utf-8"))
    if data["seed"] != seed:
        raise SystemExit(f"{path.name} is of --seed {data['seed']}")
    counts = {name: Counter(data[name]) for name in ("draws", "distinct", "faults")}
    return Tally(**(data | counts))

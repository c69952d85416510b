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
        self.faults[fault.partition(":")[0]] += 1
        if len(self.shown) < MOST_SHOWN:
            self.shown.append(f"{fault} | {item}")

    def write(self, path: Path) -> None:
        """Write it down."""
        path.write_text(json.dumps(vars(self), indent=1, ensure_ascii=False), "utf-8")

    def table(self) -> str:
        """Write the figures as a Markdown table; of lessons, each is different."""
        rows = [("", "drawn", "different, each checked"), ("---", "---:", "---:")]
        rows += [
            (name, f"{count:,}", f"{self.distinct[name]:,}") for name, count in _sorted(self.draws)
        ]
        width = 3 if self.distinct else 2
        lines = [f"| {' | '.join(row[:width])} |" for row in rows]
        if self.worded:
            lines += ["", f"words and lines checked of {self.worded:,} different items"]
        wrong, unfit = self.faults["wrong"], self.faults["unfit"]
        time = f"{self.processor:,.0f} s of processor time, {self.wall:,.0f} s in all"
        return "\n".join([*lines, "", f"wrong: {wrong}; unfit: {unfit}; {time}"])


def _sorted(counts: Counter[str]) -> list[tuple[str, int]]:
    """Return the whole first, then each part by its name."""
    return sorted(counts.items(), key=lambda pair: (pair[0] != "all", pair[0]))


def read_tally(path: Path, seed: int) -> Tally:
    """Read the figures of a run that was stopped, or begin anew."""
    if not path.is_file():
        return Tally(seed)
    data = json.loads(path.read_text("utf-8"))
    if data["seed"] != seed:
        raise SystemExit(f"{path.name} is of --seed {data['seed']}")
    counts = {name: Counter(data[name]) for name in ("draws", "distinct", "faults")}
    return Tally(**(data | counts))

"""Writes the page on performance from what was measured: pure, from data to text."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby
from math import log
from pathlib import Path
from statistics import linear_regression
from string import Template
from typing import Any, NamedTuple

HERE = Path(__file__).parent
QUIET_BEFORE, QUIET_AFTER = 0.5, 1.5
"""Most load of a quiet machine before the benchmarks, and after: they are one program."""
MOST_BYTES = 20_000_000
"""Asked of the lexicon's file."""
GROWTH = "growth: "
Data = Mapping[str, Any]


class Row(NamedTuple):
    """A row of a table: its cells, and what is asked and not met, in words; empty if all is."""

    cells: Sequence[str]
    missed: str = ""


def write_page(measured: Data) -> str:
    """Write the page.

    Args:
        measured: from ``report.measure_all``.
    """
    machine = measured["machine"]
    benchmarks = measured["benchmarks"]
    commands = [command_row(command) for command in measured["commands"]]
    libraries = library_rows([b for b in benchmarks if not b["group"].startswith(GROWTH)])
    growth = growth_rows([b for b in benchmarks if b["group"].startswith(GROWTH)])
    disk = disk_row(measured["lexicon"])
    long_runs = list(long_run_rows())
    missed = [row.missed for row in (*commands, *libraries, *growth, disk, *long_runs)]
    template = Template((HERE / "performance_template.md").read_text("utf-8"))
    return template.substitute(
        {key: machine[key] for key in ("date", "python", "system", "cores", "processor")},
        load_before=f"{machine['load_before']:.1f}",
        load_after=f"{machine['load_after']:.1f}",
        quiet=quiet(machine),
        missed="\n".join(f"- {text}" for text in missed if text) or "All are met.",
        commands=table(
            "command|clock: least, median|processor: least, median|"
            "times `import typer`|memory|target|",
            commands,
        ),
        libraries=table("question|who|time|beside ours|target|", libraries),
        growth=table("what|sizes|times|slope|target|", growth),
        memory=table("what|measured|target|", [*memory_rows(measured["commands"]), disk]),
        long_runs=table("date|what|measured|target||command", long_runs),
    )


def quiet(machine: Data) -> str:
    """Say whether other programs were computing."""
    if machine["load_before"] <= QUIET_BEFORE and machine["load_after"] <= QUIET_AFTER:
        return "The machine was quiet: nothing else was computing."
    return (
        "**The machine was not quiet**: other programs were computing, so times by the clock are"
        " high, and processor times somewhat."
    )


def command_row(command: Data) -> Row:
    """Show a command, and judge it by the clock's median and the ratio."""
    limits, ratio, clock = command["limits"], command["times"], command["clock"]
    asked, missed = [], []
    if limits["times"]:
        asked.append(f"{limits['times']:g} times")
        if ratio > limits["times"]:
            missed.append(f"{ratio:.2f} times `import typer`; target {limits['times']:g}")
    if limits["seconds"]:
        asked.append(duration(limits["seconds"]))
        if clock[1] > limits["seconds"]:
            processor = duration(command["processor"][1])
            missed.append(
                f"{duration(clock[1])} by the clock ({processor} of processor time);"
                f" target {duration(limits['seconds'])}"
            )
    if limits["memory"]:
        asked.append(f"{limits['memory']} MiB")
        if command["memory"] > limits["memory"]:
            missed.append(f"{command['memory']:.0f} MiB; target {limits['memory']}")
    cells = [
        command["shown"],
        ", ".join(map(duration, clock)),
        ", ".join(map(duration, command["processor"])),
        f"{ratio:.2f}",
        f"{command['memory']:.0f} MiB",
        ", ".join(asked),
        verdict(is_asked=bool(asked), is_met=not missed),
    ]
    return Row(cells, f"{command['shown']}: {'; '.join(missed)}" if missed else "")


def library_rows(benchmarks: Sequence[Data]) -> list[Row]:
    """Show each question with all who answer it; the first of a question is ours."""
    rows = []
    for group, members in groupby(benchmarks, key=lambda bench: str(bench["group"])):
        ours: Data | None = None
        for bench in members:
            rows.append(_library_row(bench, ours, group))
            ours = ours if ours and "limit" not in bench else bench
    return rows


def _library_row(bench: Data, ours: Data | None, group: str) -> Row:
    """Show one who answers a question; it has a limit in seconds, or is to be slower than ours."""
    against = asked = missed = ""
    if ours and "limit" not in bench:
        times = bench["median"] / ours["median"]
        against = f"{number(times)} times" if times >= 1 else f"1/{number(1 / times)}"
        if "slower" in bench:
            asked = f"{bench['slower']} times"
            if times < bench["slower"]:
                missed = f"{bench['shown']} takes {number(times)} times as long; target {asked}"
    if "limit" in bench:
        asked = duration(bench["limit"])
        if bench["median"] > bench["limit"]:
            missed = f"{duration(bench['median'])} of processor time; target {asked}"
    met = verdict(is_asked=bool(asked), is_met=not missed)
    question = "" if ours and "limit" not in bench else group
    cells = [question, bench["shown"], duration(bench["median"]), against, asked, met]
    return Row(cells, f"{group}: {missed}" if missed else "")


def growth_rows(benchmarks: Sequence[Data]) -> list[Row]:
    """Show each series with the slope of its logarithms."""
    rows = []
    for group, members in groupby(benchmarks, key=lambda bench: str(bench["group"])):
        series = sorted(members, key=lambda bench: int(bench["size"]))
        name, unit, most = group.removeprefix(GROWTH), series[0]["unit"], series[0]["slope"]
        found = slope([(bench["size"], bench["least"]) for bench in series])
        is_met = found <= most
        sizes = ", ".join(f"{bench['size']:,}" for bench in series)
        cells = [
            name,
            f"{sizes} {unit}",
            ", ".join(duration(bench["least"]) for bench in series),
            f"{found:.2f}",
            f"at most {most:g}",
            verdict(is_asked=True, is_met=is_met),
        ]
        rows.append(
            Row(cells, "" if is_met else f"growth of {name}: slope {found:.2f}; {cells[4]}")
        )
    return rows


def slope(points: Iterable[tuple[float, float]]) -> float:
    """Return the slope of the line through the logarithms of size and time.

    >>> round(slope([(1, 3.0), (2, 12.0), (4, 48.0)]), 6)
    2.0
    """
    sizes, times = zip(*points, strict=True)
    return linear_regression([log(size) for size in sizes], [log(time) for time in times]).slope


def memory_rows(commands: Sequence[Data]) -> list[Row]:
    """Show which command holds most, and those of which a limit is asked."""
    most = max(commands, key=lambda command: float(command["memory"]))
    rows = [Row([f"most of all commands: {most['shown']}", f"{most['memory']:.0f} MiB", "", ""])]
    for command in commands:
        limit = command["limits"]["memory"]
        if limit:
            met = verdict(is_asked=True, is_met=command["memory"] <= limit)
            cells = [command["shown"], f"{command['memory']:.0f} MiB", f"{limit} MiB", met]
            rows.append(Row(cells))
    return rows


def disk_row(size: int) -> Row:
    """Show how large the lexicon is."""
    is_met = size <= MOST_BYTES
    shown, asked = f"{size / 1e6:.1f} MB", f"{MOST_BYTES / 1e6:.0f} MB"
    cells = ["the lexicon's file", shown, asked, verdict(is_asked=True, is_met=is_met)]
    return Row(cells, "" if is_met else f"the lexicon's file: {shown}; target {asked}")


def long_run_rows() -> Iterable[Row]:
    """Show what was measured once, by commands that take long."""
    with (HERE / "long_runs.tsv").open(encoding="utf-8", newline="") as file:
        for run in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
            cells = [
                *(run["date"], run["what"], run["measured"], run["target"]),
                *(_bold(run["met"]), f"`{run['command']}`"),
            ]
            missed = f"{run['what']}: {run['measured']}; target {run['target']} ({run['date']})"
            yield Row(cells, missed if run["met"].startswith("not") else "")


def verdict(*, is_asked: bool, is_met: bool) -> str:
    """Say plainly whether a target is met; nothing where there is none."""
    return _bold("met" if is_met else "not met") if is_asked else ""


def duration(seconds: float) -> str:
    """Write a time with two or three digits that count.

    >>> [duration(seconds) for seconds in (0.00000253, 0.00047, 0.0621, 0.218, 1.194, 43.6)]
    ['2.5 µs', '470 µs', '62 ms', '218 ms', '1.19 s', '44 s']
    """
    if seconds < 0.001:
        micro = seconds * 1e6
        return f"{micro:.1f} µs" if micro < 10 else f"{micro:.0f} µs"
    if seconds < 1:
        return f"{seconds * 1000:.1f} ms" if seconds < 0.01 else f"{seconds * 1000:.0f} ms"
    return f"{seconds:.2f} s" if seconds < 10 else f"{seconds:.0f} s"


def number(value: float) -> str:
    """Write how many times: 7.2, 43, 1,200."""
    return f"{value:.1f}" if value < 10 else f"{value:,.0f}"


def table(head: str, rows: Iterable[Row]) -> str:
    """Write a table; the cells of the head are parted by bars."""
    names = head.split("|")
    lines = [names, ["---"] * len(names), *(row.cells for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def _bold(word: str) -> str:
    return f"**{word}**" if word.startswith("not") else word

"""Print the table of docs/performance.md: python -m tests.benchmarks.report."""

from __future__ import annotations

import json
import platform
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

from phonodrill.lexicon.schema import LEXICON_PATH

HERE = Path(__file__).parent


def peak_of(*arguments: str) -> float:
    """Return the peak memory of the largest command run so far, this one included, in MiB."""
    subprocess.run(
        [sys.executable, "-m", "phonodrill", *arguments], check=True, capture_output=True
    )
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024


def _case(name: str) -> str:
    """Return the parameter of a benchmark, from its name."""
    return name.partition("[")[2].removesuffix("]")


def main() -> None:
    peak = peak_of("warmup", "--drop", "first", "--ending", "es")
    with tempfile.TemporaryDirectory() as folder:
        bank_peak = peak_of("bank", "--band", "3", "--out", str(Path(folder) / "bank.csv"))
    with tempfile.TemporaryDirectory() as folder:
        report = Path(folder) / "report.json"
        subprocess.run(
            [
                *[sys.executable, "-m", "pytest", str(HERE), "-q", "-p", "no:randomly"],
                *["--benchmark-only", f"--benchmark-json={report}"],
                *["-o", "addopts=", "--override-ini=filterwarnings="],
            ],
            check=True,
            capture_output=True,
        )
        found = json.loads(report.read_text())["benchmarks"]
    median = {bench["name"]: bench["stats"]["median"] for bench in found}
    cost = {bench["name"]: bench["extra_info"].get("processor", 0.0) for bench in found}
    typer = median["test_import_typer"]
    lookup = median["test_lookup"]
    rows = [
        ("`import typer`, whole process", f"{typer * 1000:.0f} ms", ""),
        *[
            (
                f"cold `phonodrill warmup {_case(name)}`",
                f"{value * 1000:.0f} ms",
                f"{value / typer:.2f} times `import typer`; target 1.6",
            )
            for name, value in median.items()
            if name.startswith("test_cold_warmup[")
        ],
        *[
            (
                f"cold `phonodrill {name[18:-1]} FILE`",
                f"{value * 1000:.0f} ms",
                f"{value / typer:.2f} times `import typer`; target 2",
            )
            for name, value in median.items()
            if name.startswith("test_cold_reading")
        ],
        (
            "cold `phonodrill print cards`, 40 cards as PDF",
            f"{median['test_cold_print'] * 1000:.0f} ms",
            "target 1.5 s",
        ),
        ("a passage of 100,000 words", f"{median['test_passage']:.1f} s", "target 3 s"),
        ("alignment of all CMUdict", f"{median['test_alignment']:.0f} s", "target 60 s"),
        ("its peak memory", f"{peak:.0f} MiB", "target 60"),
        *[
            (f"cold `phonodrill warmup --task {_case(name)}`", f"{value * 1000:.0f} ms", "")
            for name, value in median.items()
            if name.startswith("test_cold_warmup_of")
        ],
        ("cold `phonodrill chain crab clam`", f"{median['test_cold_chain'] * 1000:.0f} ms", ""),
        (
            "`phonodrill bank --band 3`: every item of every task",
            f"{median['test_the_whole_bank']:.0f} s, {bank_peak:.0f} MiB",
            "target 60 s, 200 MB",
        ),
        *[
            (f"the bank of 1/{_case(name)} of the words", f"{value:.1f} s", "linear")
            for name, value in median.items()
            if name.startswith("test_the_bank_grows")
        ],
        (
            "all first- and last-sound deletions",
            f"{median['test_all_deletions']:.2f} s",
            "target 0.5 s",
        ),
        *[
            (
                f"cold `phonodrill lesson --focus {_case(name)} --format json`",
                f"{value * 1000:.0f} ms, processor {cost[name] * 1000:.0f} ms",
                "target 500 ms",
            )
            for name, value in median.items()
            if name.startswith("test_cold_lesson[")
        ],
        *[
            (
                f"cold `phonodrill lesson --focus es,ies --out lesson.{_case(name)}`",
                f"{value * 1000:.0f} ms, processor {cost[name] * 1000:.0f} ms",
                "target 1.5 s" if _case(name) == "pdf" else "",
            )
            for name, value in median.items()
            if name.startswith("test_cold_lesson_file")
        ],
        (
            "180 lessons",
            f"{median['test_a_class_year']:.0f} s, processor {cost['test_a_class_year']:.0f} s",
            "target 60 s",
        ),
        ("one lookup, the file opened for it", f"{lookup * 1e6:.0f} µs", ""),
        (
            "`pronouncing.search`",
            f"{median['test_pronouncing_search'] * 1000:.0f} ms",
            f"{median['test_pronouncing_search'] / lookup:,.0f} times a lookup; target 100",
        ),
        (
            "`cmudict.dict()`",
            f"{median['test_parse_of_cmudict'] * 1000:.0f} ms",
            f"{median['test_parse_of_cmudict'] / lookup:,.0f} times a lookup; target 100",
        ),
        (
            "the plural of a word, base looked up",
            f"{median['test_plurals'] / 10 * 1e6:.1f} µs",
            "",
        ),
        (
            "`inflect.plural_noun`",
            f"{median['test_plurals_of_inflect'] / 10 * 1e6:.0f} µs",
            f"{median['test_plurals_of_inflect'] / median['test_plurals']:.0f} times; target 20",
        ),
        (
            "100,000 words: what the ending says",
            f"{median['test_bulk_classification']:.2f} s",
            "target 1 s",
        ),
        ("compile at install", f"{median['test_compile']:.0f} s", "target 60 s"),
        ("lexicon file", f"{LEXICON_PATH.stat().st_size / 2**20:.1f} MiB", "target 20 MB"),
    ]
    print(f"Python {platform.python_version()}, {platform.machine()}; medians.\n")
    print("| what | measured | against |\n|---|---|---|")
    for row in rows:
        print(f"| {' | '.join(row)} |")


if __name__ == "__main__":
    main()

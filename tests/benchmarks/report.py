"""Run every benchmark and write docs/performance.md.

    python -m tests.benchmarks.report --out docs/performance.md

Takes about ten minutes on a machine that does nothing else. What was measured is kept in
``measured.json``; ``--again`` writes the page from it without measuring.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import subprocess
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from phonodrill.lexicon.schema import LEXICON_PATH
from tests.benchmarks.commands import list_commands, measure, warm
from tests.benchmarks.page import write_page

HERE = Path(__file__).parent
MEASURED = HERE / "measured.json"
IN_PROCESS = ("test_benchmarks.py", "test_growth.py")
ROUNDS = 15


def main() -> None:
    """Measure, and write the page."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--out", type=Path, help="the page; else it is printed")
    parser.add_argument("--rounds", type=int, default=ROUNDS, help="runs of each short command")
    parser.add_argument("--only", default="", help="benchmarks in one process, as pytest's -k")
    parser.add_argument("--again", action="store_true", help="from what was measured last")
    chosen = parser.parse_args()
    if not chosen.again:
        found = json.dumps(measure_all(chosen.rounds, chosen.only), indent=1, ensure_ascii=False)
        MEASURED.write_text(f"{found}\n", "utf-8")
    page = write_page(json.loads(MEASURED.read_text("utf-8")))
    if chosen.out:
        chosen.out.write_text(page, "utf-8")
    else:
        print(page)


def measure_all(rounds: int, only: str = "") -> dict[str, Any]:
    """Measure everything; what comes back can be written as JSON.

    Args:
        rounds: how often a short command is run.
        only: an expression of pytest's ``-k``; empty for all.
    """
    load = os.getloadavg()[0]
    with tempfile.TemporaryDirectory() as folder:
        commands = list_commands(Path(folder))
        warm(commands)
        measured = measure(commands, rounds)
        benchmarks = run_benchmarks(Path(folder) / "report.json", only)
    return {
        "machine": describe_machine() | {"load_before": load, "load_after": os.getloadavg()[0]},
        "commands": [
            command._asdict() | {"limits": command.limits._asdict()} for command in measured
        ],
        "benchmarks": benchmarks,
        "lexicon": LEXICON_PATH.stat().st_size,
    }


def describe_machine() -> dict[str, Any]:
    """Say what the figures depend on, and nothing of whose machine it is."""
    return {
        "date": datetime.now(UTC).date().isoformat(),
        "python": platform.python_version(),
        "system": platform.system(),
        "processor": platform.machine(),
        "cores": os.cpu_count(),
    }


def run_benchmarks(report: Path, only: str) -> list[dict[str, Any]]:
    """Run what pytest-benchmark measures; give name, group, times and what each was told."""
    done = subprocess.run(
        [
            *[sys.executable, "-m", "pytest", *(str(HERE / name) for name in IN_PROCESS), "-q"],
            *["-p", "no:randomly", "-p", "no:cacheprovider", "-o", "addopts=", "-k", only],
            *["--override-ini=filterwarnings=", "--benchmark-only", f"--benchmark-json={report}"],
            "--benchmark-timer=tests.benchmarks.clock.processor",
        ],
        check=False,
        stdout=sys.stderr,
    )
    if done.returncode:
        print("a benchmark failed: the page lacks it", file=sys.stderr)
    return [
        {
            "name": bench["name"],
            "group": bench["group"],
            "least": bench["stats"]["min"],
            "median": bench["stats"]["median"],
            **bench["extra_info"],
        }
        for bench in json.loads(report.read_text("utf-8"))["benchmarks"]
    ]


if __name__ == "__main__":
    main()

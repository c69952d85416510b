from __future__ import annotations

import pytest

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.patterns import check_pattern, pattern_of, signs_of


@pytest.mark.parametrize(
    ("word", "pattern"),
    [
        ("crab", "CCVC"),
        ("ship", "CVC"),
        ("rope", "CVCe"),
        ("taste", "CVCCe"),
        ("rain", "CVVC"),
        ("torch", "CRC"),
        ("gulls", "CVC"),
        ("queen", "CVVC"),
        ("ax", "VC"),
        ("table", "CVCle"),
        ("fox", "CVC"),
        ("hour", ""),
    ],
)
def test_the_shape_of_a_word(lexicon: Lexicon, word: str, pattern: str) -> None:
    signs = signs_of(lexicon.correspondences())
    assert pattern_of(lexicon.chunks_of(word), signs) == pattern


def test_a_pattern_has_only_its_signs() -> None:
    assert check_pattern("CCVCCe") == "CCVCCe"
    with pytest.raises(PhonodrillError, match="XYZ"):
        check_pattern("XYZ")

"""Spellings of sounds against published counts, over words of bands 1-4 that are no inflected form.

Ranks and wide bands only: the counts published rest on another dictionary
(17,310 words of Thorndike and Lorge), another accent and other conventions.
"""

from __future__ import annotations

from collections import Counter

import pytest

from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.inventory import BY_ARPABET

HANNA = "Hanna, Hanna, Hodges & Rudorf (1966) and Fry (2004), ranks from memory"


@pytest.fixture(scope="module")
def spellings(lexicon: Lexicon) -> dict[str, Counter[str]]:
    by_code = {row.code: row.correspondence for row in lexicon.correspondences()}
    counted: dict[str, Counter[str]] = {}
    for entry in lexicon.entries(highest_band=4):
        if entry.endings or entry.is_name:
            continue
        for said in entry.usable_pronunciations[:1]:
            for code in said.chunks:
                if code in by_code:
                    row = by_code[code]
                    counted.setdefault(row.sound, Counter())[row.spelling] += 1
    return counted


def shares(spellings: dict[str, Counter[str]], arpabet: str) -> list[tuple[str, float]]:
    sounds = "".join(BY_ARPABET[symbol].code for symbol in arpabet.split())
    found = spellings[sounds]
    return [(spelling, n / found.total()) for spelling, n in found.most_common()]


@pytest.mark.source(HANNA)
@pytest.mark.parametrize(
    ("arpabet", "ranked", "low", "high"),
    [
        ("F", "f ph ff", 0.70, 0.85),
        ("K", "c k ck", 0.60, 0.75),
        ("S", "s c", 0.65, 0.80),
        ("Z", "s z", 0.60, 0.75),
        ("SH", "ti sh", 0.40, 0.60),
        ("CH", "ch t tch", 0.50, 0.65),
        ("TH", "th", 0.99, 1.0),
        ("NG", "ng n", 0.50, 0.70),
        ("AE", "a", 0.80, 1.0),
        ("EH", "e ea", 0.80, 1.0),
        ("IH", "i y", 0.80, 1.0),
        ("AH", "u o ou", 0.80, 1.0),
        ("EY", "a a_e ai ay", 0.30, 0.60),
        ("AY", "i i_e y igh", 0.30, 0.50),
        ("OW", "o o_e ow oa", 0.50, 0.75),
        ("OY", "oi oy", 0.55, 0.80),
        ("AW", "ou ow", 0.55, 0.85),
    ],
)
def test_ranks_of_spellings(
    spellings: dict[str, Counter[str]], arpabet: str, ranked: str, low: float, high: float
) -> None:
    found = shares(spellings, arpabet)
    wanted = ranked.split()
    assert [spelling for spelling, _ in found[: len(wanted)]] == wanted
    assert low <= found[0][1] <= high


@pytest.mark.source(HANNA)
@pytest.mark.parametrize("arpabet", ["B", "D", "M", "N", "P", "T", "R", "HH"])
def test_plain_consonants_are_spelled_with_their_letter(
    spellings: dict[str, Counter[str]], arpabet: str
) -> None:
    letter, share = shares(spellings, arpabet)[0]
    assert letter == arpabet[0].lower()
    assert share > 0.88


@pytest.mark.source("Kessler (2009): the commonest spelling is right for 73 % of phonemes")
def test_how_often_the_commonest_spelling_is_right(spellings: dict[str, Counter[str]]) -> None:
    heard = [found for sounds, found in spellings.items() if sounds]
    right = sum(max(found.values()) for found in heard)
    assert 0.65 <= right / sum(found.total() for found in heard) <= 0.80


SANCTIONED = """
pit:p spider:p stop:p mitt:m comb:mb hymn:mn sipped:ed knight:kn gnat:gn cup:c kite:k duck:ck
chorus:ch folk:lk quiet:qu sing:ng bank:n fluff:ff sphere:ph tough:gh calf:lf dove:ve pass:ss
science:sc psychic:ps jazz:zz nose:s as:s xylophone:x shoe:sh mission:ssi sure:s charade:ch
precious:ci notion:ti special:ci measure:s azure:z cheap:ch future:t etch:tch judge:dge lamb:l
call:ll single:le wrap:wr feud:eu onion:i witch:w queen:qu whole:wh
"""


@pytest.mark.source("NGA & CCSSO (2010), Common Core Appendix A, figure 8: graphemes with examples")
@pytest.mark.parametrize("case", SANCTIONED.split())
def test_sanctioned_graphemes_are_found(lexicon: Lexicon, case: str) -> None:
    word, spelling = case.split(":")
    entry = lexicon.get(word)
    assert entry
    said = (entry.usable_pronunciations or entry.pronunciations)[0]
    assert spelling in {chunk.written(word) for chunk in lexicon.chunks(said.chunks)}

"""The clusters of the vocabulary are those that English is described to have."""

from __future__ import annotations

from collections import Counter

import pytest

from phonodrill import Lexicon
from phonodrill.sounds.syllables import ONSETS
from tests.raw_cmudict import plain, raw_cmudict


def names(text: str) -> list[str]:
    return text.split()


VOWELS = {"@", *names("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW")}
# Native core, Hammond (1999) and Roach's tables (ground truth of the project, section 8).
TWO = {
    *names("PR ST TR KR GR BR SP SK BL FL KL SL FR DR PL SN SW KW GL SM THR TW SHR DW"),
    *names("MY FY KY HHY PY BY VY"),
}
THREE = {*names("STR SKR SKW SPR SPL SPY SKY")}
BANNED = {*names("TL DL THL SR PW BW FW MW KN GN PN PS KS")}
MARGINAL = {*names("GW SHM SHN SHW SHL VW SF PY ZH HHW TS VR SKL SV PF DY")}


def clusters(lexicon: Lexicon) -> Counter[str]:
    """Onsets of two consonants or more of the words of bands 1-3, from raw CMUdict."""
    found: Counter[str] = Counter()
    for entry in lexicon.entries(highest_band=3):
        ways = raw_cmudict().get(entry.word, []) if not entry.is_name else []
        for phones in map(plain, ways[:1]):
            first = next((i for i, phone in enumerate(phones) if phone in VOWELS), 0)
            if first > 1:
                found["".join(phones[:first])] += 1
    return found


@pytest.mark.source("Hammond (1999), The Phonology of English; Roach's tables")
def test_onsets_of_the_vocabulary(lexicon: Lexicon) -> None:
    found = clusters(lexicon)
    total = sum(found.values())
    assert total > 2_000
    described = sum(count for onset, count in found.items() if onset in TWO | THREE)
    assert described / total > 0.995
    assert {onset for onset in TWO | THREE if found[onset]} >= TWO | THREE - {"SPY", "SKY"}
    assert not BANNED & set(found)
    assert set(found) - TWO - THREE <= MARGINAL


@pytest.mark.source("the order of frequency is computed from CMUdict and age norms (section 8)")
def test_the_commonest_onsets(lexicon: Lexicon) -> None:
    common = [onset for onset, _ in clusters(lexicon).most_common(12)]
    assert len({*common} & {*names("PR ST TR KR GR BR SP SK BL FL KL SL")}) >= 10


def test_our_onsets_are_the_described_ones() -> None:
    from phonodrill.sounds.inventory import BY_CODE

    ours = {"".join(BY_CODE[code].arpabet for code in onset) for onset in ONSETS if len(onset) > 1}
    assert ours - TWO - THREE == {"GW"}
    assert ours >= TWO | THREE

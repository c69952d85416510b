from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill import PhonodrillError
from phonodrill.sounds import notation
from phonodrill.sounds.inventory import PHONEMES
from phonodrill.sounds.notation import Notation
from tests.raw_cmudict import raw_cmudict

PHONES = st.lists(
    st.sampled_from(
        [p.arpabet + digit for p in PHONEMES for digit in ("012" if p.is_vowel else [""])]
    ),
    min_size=1,
    max_size=12,
)


@given(PHONES)
def test_arpabet_round_trip_loses_nothing(phones: list[str]) -> None:
    text = " ".join(phones)
    assert notation.arpabet(*notation.parse_arpabet(text)) == text


@given(PHONES)
def test_every_sound_is_written_in_every_notation(phones: list[str]) -> None:
    sounds, stress = notation.parse_arpabet(" ".join(phones))
    for style in Notation:
        written = notation.symbols(sounds, stress, style)
        assert len(written) == len(phones)
        assert all(written)


def test_every_entry_of_cmudict_is_read() -> None:
    for variants in raw_cmudict().values():
        for phones in variants:
            sounds, stress = notation.parse_arpabet(" ".join(phones))
            assert len(sounds) == len(phones)
            assert "".join(p[-1] for p in phones if p[-1].isdigit()) == stress


@pytest.mark.parametrize("text", ["K AE T", "K1 AE1 T", "Q", "K AE3 T"])
def test_a_symbol_that_cmudict_lacks_is_refused(text: str) -> None:
    with pytest.raises(PhonodrillError, match="not a CMUdict phone"):
        notation.parse_arpabet(text)


@pytest.mark.source("keys of US dictionaries (macron, breve, digraph); ä â î before r from memory")
@pytest.mark.parametrize(
    ("phones", "marks", "ipa"),
    [
        ("S L OW1 P S", "slōps", "sloʊps"),
        ("HH AH1 T", "hŭt", "hʌt"),
        ("AH0 B AW1 T", "əbout", "əˈbaʊt"),
        ("B ER1 D", "bûrd", "bɝd"),
        ("B AH1 T ER0", "bŭtər", "ˈbʌtɚ"),
        ("K AA1 R", "kär", "kɑɹ"),
        ("S IH1 NG", "sĭng", "sɪŋ"),
        ("DH IY1 Z", "t͟hēz", "ðiz"),
        ("CH IY1 Z", "chēz", "tʃiz"),
        ("JH EH1 L IY0 Z", "jĕlēz", "ˈdʒɛliz"),
        ("K UH1 K", "ko͝ok", "kʊk"),
        ("EH1 K S T R AH0", "ĕkstrə", "ˈɛkstɹə"),
    ],
)
def test_words_in_marks_and_ipa(phones: str, marks: str, ipa: str) -> None:
    sounds, stress = notation.parse_arpabet(phones)
    assert notation.marks(sounds, stress) == marks
    assert notation.ipa(sounds, stress) == ipa


@pytest.mark.parametrize(
    ("text", "arpabet"),
    [("sh", "SH"), ("/ʃ/", "SH"), ("SH", "SH"), ("ā", "EY"), ("j", "JH"), ("y", "Y"), ("g", "G")],
)
def test_a_sound_is_found_however_it_is_written(text: str, arpabet: str) -> None:
    sounds, _ = notation.parse_arpabet(arpabet + "1" * (arpabet == "EY"))
    assert notation.parse_sound(text) == sounds


@pytest.mark.parametrize("text", ["", "qq", "//", "xyz", "1"])
def test_an_unknown_sound_is_refused(text: str) -> None:
    with pytest.raises(PhonodrillError, match="unknown sound"):
        notation.parse_sound(text)

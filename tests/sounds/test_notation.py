from __future__ import annotations

import unicodedata

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
    with pytest.raises(PhonodrillError) as error:
        notation.parse_arpabet(text)
    wrong = {"K AE T": "AE", "K1 AE1 T": "K1", "Q": "Q", "K AE3 T": "AE3"}[text]
    assert str(error.value) == f"{wrong!r} is not a CMUdict phone"
    assert error.value.hint == "write phones as in CMUdict, each vowel with a stress digit: K AE1 T"


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
        ("L AY1 T HH AW2 S", "līthous", "ˈlaɪtˌhaʊs"),
        ("HH EH1 R", "hâr", "hɛɹ"),
        ("F IH1 R", "fîr", "fɪɹ"),
        ("F AO1 R", "fôr", "fɔɹ"),
        ("R AE1 B AH0 T", "răbət", "ˈɹæbət"),
        ("P ER0 HH AE1 P S", "pərhăps", "pɚˈhæps"),
    ],
)
def test_words_in_marks_and_ipa(phones: str, marks: str, ipa: str) -> None:
    sounds, stress = notation.parse_arpabet(phones)
    assert notation.marks(sounds, stress) == marks
    assert notation.ipa(sounds, stress) == ipa
    assert [notation.write(sounds, stress, style) for style in Notation] == [ipa, marks, phones]


@pytest.mark.parametrize(
    ("text", "arpabet"),
    [("sh", "SH"), ("/ʃ/", "SH"), ("SH", "SH"), ("ā", "EY"), ("j", "JH"), ("y", "Y"), ("g", "G")],
)
def test_a_sound_is_found_however_it_is_written(text: str, arpabet: str) -> None:
    sounds, _ = notation.parse_arpabet(arpabet + "1" * (arpabet == "EY"))
    assert notation.parse_sound(text) == sounds


@pytest.mark.source("short and long vowels of US dictionaries; /i/ is the IPA's")
def test_every_sign_of_a_sound_is_read() -> None:
    for phoneme in PHONEMES:
        for sign in (phoneme.marks, f"/{phoneme.marks}/", phoneme.arpabet):
            assert notation.parse_sound(sign) == phoneme.code, sign
        # The IPA's j is the mark of another sound.
        expected = "ʤ" if phoneme.ipa == "j" else phoneme.code
        assert notation.parse_sound(f"/{phoneme.ipa}/") == expected
    for sign, code in zip("aeiou", "æɛɪɑʌ", strict=True):
        assert notation.parse_sound(sign) == notation.parse_sound(f"  {sign} ") == code
    for sign, code in (("/i/", "i"), ("ä", "ɑ"), ("â", "ɛ"), ("î", "ɪ"), ("r", "r"), ("/g/", "ɡ")):
        assert notation.parse_sound(sign) == code
        assert (
            notation.parse_sound(unicodedata.normalize("NFD", f" / {sign.strip('/')} / ")) == code
        )


NO_SOUND = "write it like s, sh, ā, /ʃ/ or SH"


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("", NO_SOUND),
        ("qq", NO_SOUND),
        ("//", NO_SOUND),
        ("1", NO_SOUND),
        ("xyz", "did you mean z, y, zh?"),
        ("SHH", "did you mean sh, s, h?"),
        ("aaa", "did you mean aʊ, aɪ?"),
    ],
)
def test_an_unknown_sound_is_refused(text: str, hint: str) -> None:
    with pytest.raises(PhonodrillError) as error:
        notation.parse_sound(text)
    assert (str(error.value), error.value.hint) == (f"unknown sound {text!r}", hint)

"""The pieces of a word: letters tied to sounds, ready for boxes."""

from __future__ import annotations

import pytest

from phonodrill import Gate, Lexicon, Notation, open_gate
from phonodrill.paper.page import Piece, Split
from phonodrill.paper.printed import print_words, split_word
from phonodrill.selection import fit_to_say, may_be_said
from phonodrill.sounds.units import RVowels, split_units
from tests.raw_cmudict import plain, raw_cmudict


def split(lexicon: Lexicon, word: str, r_vowels: RVowels = RVowels.TWO) -> Split:
    entry = lexicon.get(word)
    assert entry
    (printed,) = print_words(lexicon, open_gate(lexicon), [entry], Notation.MARKS, r_vowels)
    assert printed.split
    return printed.split


@pytest.mark.parametrize("r_vowels", RVowels)
def test_pieces_spell_the_word_and_say_its_sounds(
    lexicon: Lexicon, gate: Gate, r_vowels: RVowels
) -> None:
    checked = 0
    for entry in lexicon.entries(highest_band=3):
        if not may_be_said(entry, gate):
            continue
        said = entry.usable_pronunciations[0]
        chunks = lexicon.chunks(said.chunks)
        made = split_word(entry.word, said, chunks, Notation.ARPABET, r_vowels)
        assert "".join(piece.letters for piece in made.pieces) == entry.word
        signs = [sign for piece in made.pieces for sign in piece.sounds]
        assert "".join(signs) == said.spaced(Notation.ARPABET).replace(" ", "")
        assert made.sounds == len(split_units(said.sounds, r_vowels)), entry.word
        checked += 1
    assert checked > 11_000


def test_a_split_vowel_is_two_pieces(lexicon: Lexicon) -> None:
    assert split(lexicon, "ropes").pieces == (
        Piece("r", ("r",)),
        Piece("o", ("ō",)),
        Piece("p", ("p",)),
        Piece("e", (), closes=1),
        Piece("s", ("s",)),
    )
    assert split(lexicon, "ropes").chunks == ("r", "o_e", "p", "s")


def test_one_chunk_may_have_several_sounds(lexicon: Lexicon) -> None:
    assert split(lexicon, "fox").pieces[-1] == Piece("x", ("k", "s"))
    assert split(lexicon, "torches").pieces[-1] == Piece("es", ("ĭ", "z"))


def test_a_vowel_with_r_has_two_boxes_or_one(lexicon: Lexicon) -> None:
    assert split(lexicon, "harbor").sounds == 5
    assert split(lexicon, "harbor", RVowels.ONE).sounds == 4
    assert split(lexicon, "harbor", RVowels.ONE).pieces[1] == Piece("ar", ("är",))
    assert split(lexicon, "starred", RVowels.ONE).pieces[2] == Piece("arr", ("är",))


def test_the_odd_part_is_marked(lexicon: Lexicon) -> None:
    assert [piece.is_regular for piece in split(lexicon, "said").pieces] == [True, False, True]


def test_a_heteronym_has_all_its_readings(lexicon: Lexicon) -> None:
    entry = lexicon.get("tear")
    assert entry
    (printed,) = print_words(lexicon, open_gate(lexicon), [entry], Notation.IPA)
    assert set(printed.readings) == {"/t ɛ ɹ/", "/t ɪ ɹ/"}


@pytest.mark.source("National Reading Panel 2000, ch. 2: ship has three sounds, school four")
def test_boxes_are_sounds_not_letters(lexicon: Lexicon) -> None:
    assert split(lexicon, "ship").sounds == 3
    assert split(lexicon, "school").sounds == 4


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_as_many_boxes_as_the_dictionary_has_phones(lexicon: Lexicon) -> None:
    for word in [
        "ferries",
        "torches",
        "gulls",
        "crabs",
        "ropes",
        "lighthouses",
        "jellies",
        "finches",
        "hedges",
    ]:
        assert split(lexicon, word).sounds in {len(plain(way)) for way in raw_cmudict()[word]}


@pytest.mark.parametrize(
    ("word", "base", "ending", "signs"),
    [
        ("torches", "torch", "es", "/ĭz/"),
        ("ropes", "rope", "s", "/s/"),
        ("ferries", "ferry", "ies", "/ēz/"),
        ("skies", "sky", "ies", "/īz/"),
        ("gulls", "gull", "s", "/z/"),
        ("fox", "", "", ""),
    ],
)
def test_the_ending_as_printed(
    lexicon: Lexicon, word: str, base: str, ending: str, signs: str
) -> None:
    entry = lexicon.get(word)
    assert entry
    (printed,) = print_words(lexicon, open_gate(lexicon), [entry], Notation.MARKS)
    assert printed.ending_signs == signs
    assert printed.base == base
    assert (printed.ending.ending if printed.ending else "") == ending


def test_no_part_of_a_word_is_unfit(lexicon: Lexicon, gate: Gate) -> None:
    entries = [entry for entry in lexicon.entries(highest_band=3) if may_be_said(entry, gate)]
    is_fit = fit_to_say(lexicon, gate)
    without = 0
    for word in print_words(lexicon, gate, entries, Notation.MARKS):
        parts = [*word.syllables, *(word.split.chunks if word.split else ())]
        assert all(gate.allows(part, ()) for part in parts), word
        assert not word.base or is_fit(word.base)
        without += not word.syllables
    assert 50 < without < 120

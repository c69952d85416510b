from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from phonodrill import Gate, Lexicon, guess_reading
from phonodrill.errors import UnknownWordError
from phonodrill.graphemes.reader import ORDER
from phonodrill.graphemes.signs import EDGE
from phonodrill.guess import plain_letters
from phonodrill.lexicon.entry import GUESSED
from phonodrill.lexicon.reading_model import count_signs, interpolate, prune
from phonodrill.lexicon.store import Lexicon as Opened
from phonodrill.selection import may_show_guess
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import normal_form
from tests.held_out import (
    WithoutWords,
    choose,
    distance,
    normal_forms,
    score,
    with_their_forms,
)

WORDS = 200


@pytest.fixture(scope="module")
def hidden() -> list[str]:
    return choose("band BETWEEN 1 AND 3", WORDS, seed=3)


@pytest.fixture(scope="module")
def without(hidden: list[str]) -> Iterator[WithoutWords]:
    with WithoutWords(with_their_forms(hidden), highest_band=4) as lexicon:
        yield lexicon


def test_hidden_words_are_read(without: WithoutWords, hidden: list[str]) -> None:
    def read(word: str) -> str:
        assert without.get(word) is None
        return guess_reading(word, without).said.normal

    found = score(normal_forms(hidden), read)
    assert found.errors < 0.08
    assert found.whole > 0.65


def test_distance_counts_what_is_put_in_left_out_and_changed() -> None:
    assert [distance("kæt", other) for other in ("kæt", "kæts", "æt", "bɪt", "")] == [0, 1, 1, 2, 3]


@pytest.mark.parametrize(
    ("word", "arpabet"),
    [
        ("blorf", "B L AO1 R F"),
        ("snib", "S N IH1 B"),
        ("thrape", "TH R EY1 P"),
        ("gloke", "G L OW1 K"),
        ("sheem", "SH IY1 M"),
        ("plonked", "P L AA1 NG K T"),
        ("skiffing", "S K IH1 F IH0 NG"),
        ("crabfish", "K R AE1 B F IH2 SH"),
        ("harborlight", "HH AA1 R B ER0 L AY2 T"),
        ("ferries'", "F EH1 R IY0 Z"),
        ("jellies's", "JH EH1 L IY0 Z IH0 Z"),
    ],
)
def test_regular_spellings_are_read_as_any_teacher_would(
    lexicon: Lexicon, word: str, arpabet: str
) -> None:
    # Common practice, no source: short vowel in a closed syllable, long before a silent e.
    assert guess_reading(word, lexicon).said.arpabet == arpabet


def test_what_a_reading_is_made_from_is_told(lexicon: Lexicon) -> None:
    parts = {
        "clamshore": ("clam", "shore"),
        "skiffing": ("skiff", "-ing"),
        "zoe's": ("zoe", "'s"),
        "blorf": (),
    }
    assert {word: guess_reading(word, lexicon).parts for word in parts} == parts


@pytest.mark.parametrize("word", ["waging", "pined", "tiling", "planed"])
def test_a_base_that_would_double_is_not_the_base(word: str) -> None:
    # The dictionary has wag, pin, plan; hidden are wage, pine, tile, plane and their forms.
    with WithoutWords(with_their_forms([word]), highest_band=1) as lexicon:
        assert guess_reading(word, lexicon).parts == ()


def test_letters_overrule_parts(lexicon: Lexicon) -> None:
    # Cut into two known words these would be read wrong.
    assert guess_reading("pageant", lexicon).parts == ()
    assert guess_reading("carpet", lexicon).parts == ()


def test_a_guess_is_marked_and_not_usable(lexicon: Lexicon) -> None:
    for word in ("blorf", "clamshore", "zoe's"):
        said = guess_reading(word, lexicon).said
        assert said.origin == GUESSED
        assert not said.usable
        assert said.normal == normal_form(said.sounds, said.stress)


def test_known_words_read_alone_rhyme_as_the_lexicon_says(lexicon: Lexicon) -> None:
    for word in ("storm", "harbor", "gull", "rope"):
        entry = lexicon.get(word)
        assert entry
        found = guess_reading(word, lexicon).said
        assert (found.sounds, found.rhyme) == (
            entry.pronunciations[0].sounds,
            entry.pronunciations[0].rhyme,
        )


@settings(max_examples=150, deadline=None)
@given(st.text("abcdefghijklmnopqrstuvwxyz'-", min_size=1, max_size=14))
def test_any_letters_are_read_whole_or_refused(word: str) -> None:
    with Opened() as lexicon:
        try:
            found = guess_reading(word, lexicon)
        except UnknownWordError:
            return
        places = sorted(place for chunk in found.chunks for place in chunk.letters)
        heard = [place for chunk in found.chunks for place in chunk.sounds]
        assert places == list(range(len(found.word)))
        assert heard == list(range(len(found.said.sounds)))
        assert found.chunks == lexicon.chunks(found.said.chunks)
        assert found.said.stress.count("1") >= 1
        assert len(found.said.stress) == sum(char in VOWELS for char in found.said.sounds)
        assert guess_reading(word, lexicon) == found


@pytest.mark.parametrize("word", ["", " ", "zzz", "b4", "crab boat", "川", "a" * 46, "'", "-"])
def test_what_cannot_be_read_is_refused(lexicon: Lexicon, word: str) -> None:
    with pytest.raises(UnknownWordError):
        guess_reading(word, lexicon)


def test_accents_are_taken_off() -> None:
    assert [plain_letters(word) for word in ("Zoë", "José’s", "façade", "NAÏVE")] == [
        "zoe",
        "jose's",
        "facade",
        "naive",
    ]


@pytest.mark.parametrize("word", ["fuhk", "phuk", "shitt", "shytt", "kok", "dikk", "azz", "biche"])
def test_a_guess_that_sounds_unfit_is_refused(lexicon: Lexicon, gate: Gate, word: str) -> None:
    assert lexicon.get(word) is None or word == "kok"
    assert not may_show_guess(guess_reading(word, lexicon), lexicon, gate)


def test_no_barred_word_gets_past_by_a_guess(lexicon: Lexicon, gate: Gate) -> None:
    barred = {word for word, _, _, blocks in lexicon.never_say() if blocks == "sound"}
    assert len(barred) > 100
    for word in sorted(barred - {"lsd"})[::4]:
        for spelling in (word, f"harbor{word}", f"{word}boat"):
            guess = guess_reading(spelling, lexicon)
            assert not may_show_guess(guess, lexicon, gate), spelling


@pytest.mark.parametrize(
    "word", ["blorf", "ashita", "skalope", "tolani", "marisely", "crabfish", "gunk"]
)
def test_innocent_guesses_pass(lexicon: Lexicon, gate: Gate, word: str) -> None:
    assert may_show_guess(guess_reading(word, lexicon), lexicon, gate)


def test_the_model_gives_probabilities() -> None:
    words = [("abc", 1), ("abd", 2), ("bd", 1), ("cab", 4)] * 30
    mixed = interpolate(count_signs(words))
    assert len(mixed) == ORDER
    for table in mixed:
        for context, successors in table.items():
            assert sum(successors.values()) <= 1 + 1e-9, context
    assert sum(mixed[0][""].values()) == pytest.approx(1)


def test_pruning_keeps_the_shorter_contexts_of_what_it_keeps() -> None:
    words = [("abcde", 40), ("xbcdy", 40), ("fbc", 3), (f"q{'abcde' * 2}", 5)]
    counts = count_signs(words)
    kept = prune(counts, interpolate(counts))
    assert any(kept[1:])
    for length in range(2, ORDER):
        for context in kept[length]:
            assert context[:-1] in kept[length - 1]
    assert EDGE in kept[0][""]

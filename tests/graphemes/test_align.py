from __future__ import annotations

import pytest

from phonodrill.graphemes.align import align, set_ending_apart
from phonodrill.graphemes.chunk import Chunk, decode, encode
from phonodrill.graphemes.correspondence import Correspondence
from phonodrill.graphemes.inventory import Inventory, arrange
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.sounds.notation import parse_arpabet
from tests.case_files import CASES
from tests.conftest import WORDLISTS

GOLD = [
    line.split("\t")
    for line in (CASES / "alignments.tsv").read_text("utf-8").splitlines()
    if not line.startswith("#")
][1:]


@pytest.fixture(scope="module")
def correspondences() -> list[Correspondence]:
    return read_wordlists(WORDLISTS).correspondences


@pytest.fixture(scope="module")
def inventory(correspondences: list[Correspondence]) -> Inventory:
    return arrange(correspondences)


@pytest.fixture(scope="module")
def familiar(lexicon: Lexicon) -> list[Entry]:
    return list(lexicon.entries(highest_band=3))


def split(word: str, arpabet: str, chunks: tuple[Chunk, ...]) -> str:
    phones = arpabet.split()
    return " ".join(
        f"{chunk.written(word)}={'+'.join(phones[i] for i in chunk.sounds)}" for chunk in chunks
    )


@pytest.mark.source("400 words split by hand; our conventions, common practice, no source")
def test_the_hand_made_splits(lexicon: Lexicon) -> None:
    wrong = []
    for word, by_hand in GOLD:
        entry = lexicon.get(word)
        assert entry
        said = entry.usable_pronunciations[0]
        found = split(word, said.arpabet, lexicon.chunks(said.chunks))
        if found != by_hand.replace("!", ""):
            wrong.append((word, found, by_hand))
    assert len(GOLD) == 400
    assert len(wrong) <= 4, wrong


@pytest.mark.source("400 words split by hand; our conventions, common practice, no source")
def test_the_irregular_parts(lexicon: Lexicon) -> None:
    differ = []
    for word, by_hand in GOLD:
        entry = lexicon.get(word)
        assert entry
        chunks = lexicon.chunks(entry.usable_pronunciations[0].chunks)
        found = [chunk.written(word) for chunk in chunks if not chunk.is_regular]
        wanted = [part[1:].partition("=")[0] for part in by_hand.split() if part[0] == "!"]
        if found != wanted:
            differ.append((word, found, wanted))
    assert len(differ) <= 8, differ


def test_nearly_every_familiar_word_is_aligned(lexicon: Lexicon, familiar: list[Entry]) -> None:
    odd = [
        entry.word
        for entry in familiar
        for said in entry.usable_pronunciations[:1]
        if not said.chunks or any(c.correspondence is None for c in lexicon.chunks(said.chunks))
    ]
    assert len(odd) / len(familiar) < 0.005, odd


def test_chunks_spell_the_word_and_say_its_sounds(lexicon: Lexicon, familiar: list[Entry]) -> None:
    for entry in familiar:
        for said in entry.pronunciations:
            chunks = lexicon.chunks(said.chunks)
            letters = sorted(place for chunk in chunks for place in chunk.letters)
            sounds = [place for chunk in chunks for place in chunk.sounds]
            assert letters == list(range(len(entry.word))), entry.word
            assert sounds == list(range(len(said.sounds))), entry.word
            for chunk in chunks:
                if chunk.correspondence:
                    assert chunk.written(entry.word) == chunk.correspondence.spelling


def test_every_correspondence_is_in_its_example(
    lexicon: Lexicon, correspondences: list[Correspondence]
) -> None:
    for row in correspondences:
        entry = lexicon.get(row.example)
        assert entry, row
        found = {
            chunk.correspondence
            for said in entry.pronunciations
            for chunk in lexicon.chunks(said.chunks)
        }
        assert row in found, row


@pytest.mark.parametrize(
    ("word", "arpabet", "ending", "wanted"),
    [
        ("ropes", "R OW1 P S", "s", "r o_e p s"),
        ("roses", "R OW1 Z IH0 Z", "s", "r o s es"),
        ("hedges", "HH EH1 JH IH0 Z", "s", "h e dg es"),
        ("ferries", "F EH1 R IY0 Z", "ies", "f e rr ies"),
        ("pies", "P AY1 Z", "s", "p ie s"),
        ("skated", "S K EY1 T IH0 D", "ed", "s k a t ed"),
        ("taste", "T EY1 S T", "", "t a_e s t"),
        ("change", "CH EY1 N JH", "", "ch a n ge"),
        ("give", "G IH1 V", "", "g i ve"),
        ("story", "S T AO1 R IY0", "", "s t or y"),
        ("very", "V EH1 R IY0", "", "v e r y"),
        ("carrot", "K EH1 R AH0 T", "", "c a rr o t"),
        ("something", "S AH1 M TH IH0 NG", "", "s o_e m th i ng"),
        ("don't", "D OW1 N T", "", "d o n ' t"),
        ("qxz", "B AA1 T", "", "qx z"),
    ],
)
def test_conventions(
    inventory: Inventory, word: str, arpabet: str, ending: str, wanted: str
) -> None:
    sounds, stress = parse_arpabet(arpabet)
    prices = [5.0] * len(inventory.rows)
    chunks = align(inventory, prices, set_ending_apart(inventory, word, sounds, stress, ending))
    found = [chunk.written(word) for chunk in chunks]
    if word == "qxz":
        assert None in {chunk.correspondence for chunk in chunks}
        assert "".join(found) == word
    else:
        assert " ".join(found) == wanted


@pytest.mark.parametrize(
    ("word", "wanted"),
    [
        ("need", "n ee d"),
        ("seed", "s ee d"),
        ("hundred", "h u n d r e d"),
        ("bed", "b e d"),
        ("striped", "s t r i p ed"),
        ("unwashed", "u n w a sh ed"),
    ],
)
def test_what_only_looks_like_an_ending(lexicon: Lexicon, word: str, wanted: str) -> None:
    assert " ".join(c.written(word) for c in lexicon.chunks(lexicon.chunks_of(word))) == wanted


def test_an_abbreviation_is_not_aligned(inventory: Inventory) -> None:
    sounds, stress = parse_arpabet("AH0 M EH1 R IH0 K AH0 AO1 N L AY2 N")
    job = set_ending_apart(inventory, "aol", sounds, stress, "")
    assert align(inventory, [5.0] * len(inventory.rows), job) == ()


def test_stored_chunks_come_back(
    lexicon: Lexicon, familiar: list[Entry], correspondences: list[Correspondence]
) -> None:
    by_code = {row.code: row.correspondence for row in lexicon.correspondences()}
    code_of = {row: code for code, row in by_code.items()}
    assert set(code_of) == set(correspondences)
    for entry in familiar[::7]:
        for said in entry.pronunciations:
            assert encode(decode(said.chunks, by_code), code_of) == said.chunks

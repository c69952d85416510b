from __future__ import annotations

import pytest

from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.taught.steps import parse_steps
from phonodrill.taught.tokens import read_token
from tests.conftest import WORDLISTS
from tests.raw_cmudict import plain, raw_cmudict


@pytest.fixture(scope="module")
def first_steps(lexicon: Lexicon) -> Wanted:
    lines = ["s a t p i n m d", "c k ck", "sh", "a_e", "-s"]
    return Wanted(parse_steps(lines, lexicon.correspondences()).known())


def test_every_word_has_only_what_was_taught(lexicon: Lexicon, first_steps: Wanted) -> None:
    found = find_words(lexicon, open_gate(lexicon), first_steps, highest_band=3)
    assert 80 < len(found) < 400
    open_spellings = {"s", "a", "t", "p", "i", "n", "m", "d", "c", "k", "ck", "sh", "a_e"}
    for word in found:
        chunks = lexicon.chunks(word.chunks)
        assert {chunk.written(word.word) for chunk in chunks} <= open_spellings, word
        assert not word.endings


def test_forms_come_when_asked(lexicon: Lexicon, first_steps: Wanted) -> None:
    gate = open_gate(lexicon)
    found = find_words(lexicon, gate, first_steps._replace(endings=True), highest_band=2)
    words = {word.word for word in found}
    assert {"cats", "ships" if "ships" in words else "maps"} <= words
    assert not {"dishes", "mats'"} & words


def test_a_spelling_and_a_shape_can_be_asked_for(lexicon: Lexicon) -> None:
    gate = open_gate(lexicon)
    codes = frozenset(r.code for r in read_token("sh", lexicon.correspondences()))
    wanted = Wanted(codes=codes, patterns=frozenset({"CVC"}))
    found = [word.word for word in find_words(lexicon, gate, wanted, highest_band=2)]
    assert {"ship", "fish", "dish"} <= set(found)
    assert all("sh" in word for word in found)


def test_what_is_taught_only_adds_words(lexicon: Lexicon) -> None:
    gate = open_gate(lexicon)
    steps = ["s a t p i n", "m d g o", "c k ck", "e u r", "h b f l", "ll ff ss", "-s"]
    taught = parse_steps(steps, lexicon.correspondences())
    before: set[str] = set()
    for number in range(1, len(steps) + 1):
        wanted = Wanted(taught.known(number), endings=True)
        now = {w.word for w in find_words(lexicon, gate, wanted, highest_band=2)}
        assert before < now
        before = now


def test_no_word_sounds_like_one_that_is_never_said(lexicon: Lexicon) -> None:
    # Compared on raw CMUdict and the table's own sounds, not through the gate's code.
    raw = raw_cmudict()
    unfit: set[tuple[str, ...]] = set()
    for row in read_wordlists(WORDLISTS).never_say:
        if row.blocks != "spelling":
            listed = [tuple(phones.split()) for phones in row.phones] or raw.get(row.word, [])
            unfit |= set(map(plain, listed))
    # A mistaken variant in CMUdict (pronunciation_fixes.tsv drops it): it is how brass is said.
    unfit.discard(("B", "R", "AE", "S"))
    for word in find_words(lexicon, open_gate(lexicon), Wanted(endings=True), highest_band=3):
        assert not unfit & set(map(plain, raw.get(word.word, []))), word.word

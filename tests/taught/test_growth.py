from __future__ import annotations

from phonodrill import Gate, Lexicon
from phonodrill.reading.material import chunks_from, read_words, sentence_targets
from phonodrill.selection import spelled_of
from phonodrill.services.taught_steps import default_path
from phonodrill.taught.growth import NEVER, Target, first_taught, growth, word_target
from phonodrill.taught.steps import Taught, parse_steps
from phonodrill.taught.suggest import Material
from phonodrill.taught.tokens import ending_codes


def default(lexicon: Lexicon) -> Taught:
    lines = default_path().read_text("utf-8").splitlines()
    return parse_steps(lines, lexicon.correspondences())


def test_a_target_opens_when_known_reads_it(lexicon: Lexicon, gate: Gate) -> None:
    taught = default(lexicon)
    first = first_taught(taught)
    chunks_of = chunks_from(lexicon)
    endings = ending_codes(lexicon.correspondences())
    words = read_words(lexicon, gate, 3)[::5]
    opens = {word.word: word_target(word, chunks_of, endings).opens_at(first) for word in words}
    assert min(opens.values()) < 20
    assert max(opens.values()) == NEVER
    for steps in (0, 10, 20, 40, 80, len(taught.steps)):
        known = taught.known(steps)
        for word in words:
            assert known.reads(word, chunks_of) == (opens[word.word] <= steps), word


def test_growth_counts_what_is_open(lexicon: Lexicon) -> None:
    taught = parse_steps(["a", "t", "p", "word: said", "s"], lexicon.correspondences())
    entries = filter(None, map(lexicon.get, ["at", "tap", "pat", "said", "dog"]))
    chunks_of = chunks_from(lexicon)
    endings = ending_codes(lexicon.correspondences())
    targets = [word_target(spelled_of(entry), chunks_of, endings) for entry in entries]
    assert growth(targets, taught) == [0, 0, 1, 3, 4, 4]


def test_a_sentence_opens_with_its_last_word() -> None:
    early, late = frozenset({"a"}), frozenset({"b", "c"})
    target = Target("", ((early,), (late, frozenset({"d"}))))
    assert target.opens_at({"a": 1, "b": 2, "c": 5}) == 5
    assert target.opens_at({"a": 1, "b": 2, "c": 5, "d": 3}) == 3
    assert target.opens_at({"a": 1}) == NEVER


def test_more_steps_never_close_a_word(material: Material, lexicon: Lexicon) -> None:
    curve = growth(material.words, default(lexicon))
    assert curve == sorted(curve)


def test_most_sentences_open_in_the_end(lexicon: Lexicon, gate: Gate) -> None:
    targets = sentence_targets(lexicon, gate)
    curve = growth(targets, default(lexicon))
    assert len(targets) > 2700
    assert curve[0] == 0
    assert curve[-1] > 0.7 * len(targets)

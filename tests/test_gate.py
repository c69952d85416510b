"""The gate is neither leaky nor silly."""

from __future__ import annotations

import pytest

from phonodrill import TASKS, Gate, Item, Lexicon, Query, open_gate, select
from phonodrill.selection import may_be_said, may_be_shown, nearest_words
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet
from tests.conftest import WORDLISTS
from tests.raw_cmudict import raw_cmudict
from tests.soak.tables import is_unfit, never_say

FORMS = frozenset({"s", "es", "ies", "ed", "ing"})


@pytest.fixture(scope="module")
def items(lexicon: Lexicon, every_item: list[Item]) -> list[Item]:
    query = Query(band=3, endings=FORMS)
    task = TASKS["delete"]
    forms = [
        item for at in task.positions for item in task.candidates(select(lexicon, query), query, at)
    ]
    return every_item + forms


@pytest.fixture(scope="module")
def said(items: list[Item]) -> set[str]:
    """Every word that is said or shown in any item."""
    words = set()
    for item in items:
        words |= {item.stimulus, item.answer, *item.also, item.sound.word, item.new.word}
        words |= {choice.word for choice in item.choices} | {part.word for part in item.parts}
        words |= {item.foil.word} if item.foil else set()
    return words - {""}


def test_there_are_items_to_check(items: list[Item], said: set[str]) -> None:
    assert len(items) > 100_000
    assert len(said) > 5_000


def test_no_item_has_a_sound_that_is_never_said(said: set[str]) -> None:
    # Compared on raw CMUdict, not through the gate's own code.
    assert len(never_say().sounds) > 400
    assert not {word for word in said if is_unfit(word)}


def test_no_part_that_is_said_alone_sounds_unfit(gate: Gate, items: list[Item]) -> None:
    parts = {
        part.sounds for item in items for part in (item.sound, item.new, *item.parts) if part.stress
    }
    assert len(parts) > 500
    assert not parts & gate.alone


def test_no_word_of_an_item_is_unfit_by_its_band(lexicon: Lexicon, said: set[str]) -> None:
    for word in said:
        entry = lexicon.get(word)
        assert entry
        assert 1 <= entry.band <= 3, word


@pytest.mark.source("better-profanity 0.7.0, a general filter from PyPI")
def test_a_general_filter_finds_nothing(said: set[str]) -> None:
    from better_profanity import profanity

    profanity.load_censor_words()
    # Words that filter bars for a sense that no child's use has.
    innocent = {"hooked", "organ", "pawn", "pot", "slope", "strip", "stroke", "thrust", "weed"}
    assert {w for w in said if profanity.contains_profanity(w)} <= innocent


def test_sound_decides_whatever_the_spelling(gate: Gate) -> None:
    for phones in ("SH IH1 T", "D IH1 K", "D AE1 M", "K AO1 K"):
        assert not gate.allows("zzz", [normal_form(*parse_arpabet(phones))])


def test_a_word_that_only_sounds_unfit_alone_may_stand_in_a_sentence(
    gate: Gate, lexicon: Lexicon
) -> None:
    entry = lexicon.get("but")
    assert entry
    normals = [said.normal for said in entry.pronunciations]
    assert not gate.allows("but", normals)
    assert gate.allows("but", normals, alone=False)


@pytest.mark.parametrize(
    "word",
    [
        "assess",
        "classic",
        "class",
        "assistant",
        "grass",
        "pass",
        "glass",
        "bear",
        "pair",
        "duck",
        "truck",
        "shift",
        "sheet",
        "beach",
        "peach",
        "can't",
        "bass",
        "cocktail",
        "cockatoo",
        "title",
        "basement",
        "button",
        "buttercup",
        "document",
        "hello",
        "shell",
        "analysis",
        "essay",
        "country",
        "sick",
        "six",
        "sixteen",
        "snack",
        "fork",
        "folk",
        "feather",
        "finish",
        "pitch",
        "witch",
        "hat",
        "dish",
        "ship",
        "clock",
        "sock",
        "knock",
        "rock",
        "gas",
        "bell",
        "bull",
        "pool",
        "moose",
        "hippo",
        "titanic",
        "cucumber",
    ],
)
def test_innocent_words_pass(gate: Gate, lexicon: Lexicon, word: str) -> None:
    entry = lexicon.get(word)
    assert entry
    assert gate.allows(word, [said.normal for said in entry.pronunciations]), word


def test_a_hint_never_names_an_unfit_word(lexicon: Lexicon, gate: Gate) -> None:
    for typed in ("shti", "fuk", "dik", "bich", "asss", "kil", "gunn", "sexx", "slopez"):
        for word in nearest_words(lexicon, typed):
            entry = lexicon.get(word)
            assert entry
            assert may_be_said(entry, gate)


def test_an_unfit_word_is_not_shown(lexicon: Lexicon, gate: Gate) -> None:
    for word, _, _, blocks in lexicon.never_say():
        entry = lexicon.get(word)
        if entry and blocks == "sound":
            assert not may_be_shown(entry, gate), word


# CMUdict has the sounds of brass for bras and a wrong last one for tramps; ours are mended.
MENDED = {"bras", "tramps"}


def unfit_rows(blocks: str) -> list[tuple[str, set[str]]]:
    """The words of the table that bar so much, with how they sound: the table or raw CMUdict."""
    lines = (WORDLISTS / "never_say.tsv").read_text("utf-8").splitlines()
    rows = []
    for line in [line for line in lines if not line.startswith("#")][1:]:
        word, arpabet, _, what = line.split("\t")
        listed = map(" ".join, [] if word in MENDED else raw_cmudict().get(word, []))
        variants = arpabet.split(" / ") if arpabet else listed
        if what == blocks:
            rows.append((word, {normal_form(*parse_arpabet(v)) for v in variants}))
    assert len(rows) >= 15
    return rows


def test_a_sound_that_is_barred_is_barred_everywhere(gate: Gate) -> None:
    for word, normals in unfit_rows("sound"):
        assert not gate.allows(word, []), word
        for normal in normals:
            assert not gate.allows("zzz", [normal]), word
            assert not gate.allows("zzz", ["zzz", normal], alone=False), word
            assert not gate.allows_join([normal[:1]], ["zzz", normal[1:]]), word


def test_what_is_barred_alone_is_barred_by_sound_and_only_alone(gate: Gate) -> None:
    everywhere = {normal for _, normals in unfit_rows("sound") for normal in normals}
    for word, normals in unfit_rows("alone"):
        assert gate.allows(word, []), word
        for normal in normals:
            assert not gate.allows("zzz", [normal]), word
            assert gate.allows("zzz", [normal], alone=False) is (normal not in everywhere), word


def test_what_is_barred_by_spelling_may_be_said(gate: Gate) -> None:
    barred = {n for what in ("sound", "alone") for _, normals in unfit_rows(what) for n in normals}
    innocent = 0
    for word, normals in unfit_rows("spelling"):
        assert not gate.allows(word, []), word
        assert not gate.allows(word, [], alone=False), word
        innocent += sum(gate.allows("zzz", [normal]) for normal in normals - barred)
    assert innocent


def test_words_run_together_are_heard_in_their_order() -> None:
    gate = Gate(frozenset({"kræb"}), frozenset({"kræb", "ɡʌl"}), frozenset())
    assert not gate.allows_join(["snEl", "kr"], iter(["ɪŋ", "æb"]))
    assert not gate.allows_join(iter(["snEl", "kr"]), iter(["ɪŋ", "æb"]))
    assert gate.allows_join(["æb"], ["kr"])
    assert gate.allows_join(["ɡ"], ["ʌl"])
    assert gate.allows_join([], ["kræb"])


def test_own_words_are_blocked_with_what_sounds_like_them(lexicon: Lexicon, gate: Gate) -> None:
    tail = [normal_form(*parse_arpabet("T EY1 L"))]
    assert gate.allows("tail", tail)
    assert gate.allows("tale", tail)
    blocking = open_gate(lexicon, ["tale", "blorf"])
    assert not blocking.allows("tail", tail)
    assert not blocking.allows("tale", [])
    assert not blocking.allows("blorf", [])
    assert blocking.allows("tail", tail, alone=False)
    assert blocking.allows("torch", [])
    assert open_gate(lexicon, ["blorf", "tale"]) is blocking
    assert open_gate(lexicon) is gate

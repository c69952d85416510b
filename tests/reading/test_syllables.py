from __future__ import annotations

import pytest

from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.syllables import written_syllables


@pytest.mark.source(
    "maximal onset: Kahn (1976), Selkirk (1981); hammer, publicity, athlete as there"
)
@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("hammer", "ha mmer"),
        ("lighthouse", "light house"),
        ("athlete", "ath lete"),
        ("publicity", "pu bli ci ty"),
        ("table", "ta ble"),
        ("extra", "ex tra"),
        ("rope", "rope"),
        ("lonely", "lone ly"),
        ("torches", "tor ches"),
        ("hour", "hour"),
        # Two words, or a prefix and a word (common practice, no source).
        *(("bedroom", "bed room"), ("sidewalk", "side walk"), ("weekend", "week end")),
        *(("housekeeper", "house kee per"), ("unanswered", "un an swered")),
        *(("mistake", "mi stake"), ("keeper", "kee per"), ("napkin", "nap kin")),
        *(("quickly", "quick ly"), ("carelessness", "care less ness"), ("useless", "use less")),
        *(("policeman", "po lice man"), ("dishonest", "dis ho nest"), ("vehicle", "ve hi cle")),
    ],
)
def test_letters_of_each_syllable(lexicon: Lexicon, word: str, parts: str) -> None:
    entry = lexicon.get(word)
    assert entry
    said = entry.usable_pronunciations[0]
    chunks = lexicon.chunks(said.chunks)
    assert written_syllables(word, said.sounds, chunks, said.joint) == parts.split()


def test_the_letters_are_all_there(lexicon: Lexicon) -> None:
    for entry in lexicon.entries(highest_band=2):
        for said in entry.pronunciations:
            parts = written_syllables(
                entry.word, said.sounds, lexicon.chunks(said.chunks), said.joint
            )
            assert "".join(parts) == entry.word
            assert len(parts) <= max(said.syllables, 1)

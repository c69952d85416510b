from __future__ import annotations

import pytest

from phonodrill.lexicon.store import Lexicon
from phonodrill.web import long_open
from phonodrill.web.long_open import LongOpenLexicon


def test_words_looked_up_are_not_kept_for_ever(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(long_open, "MOST_LOOKED_UP", 50)
    with LongOpenLexicon() as lexicon:
        for number in range(200):
            assert lexicon.get(f"gull{number}") is None
        assert len(vars(lexicon)["_looked_up"]) <= 50
        assert lexicon.get("gull")


def test_it_knows_the_same_words(lexicon: Lexicon) -> None:
    with LongOpenLexicon() as long:
        for band in (1, 2):
            assert long.plain_words(band) == lexicon.plain_words(band)
            assert long.plain_words(band) is long.plain_words(band)
            assert long.spelled(highest_band=band) == lexicon.spelled(highest_band=band)
        endings = frozenset({"es"})
        for _ in range(2):
            one, two = (
                [
                    entry.word
                    for entry in each.matching(highest_band=2, endings=endings, keep=lambda _: True)
                ]
                for each in (long, lexicon)
            )
            assert one == two
            assert long.all_sentences() == lexicon.all_sentences()
        assert long.every_sound() == lexicon.every_sound()

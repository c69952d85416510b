"""Published word lists that the classroom vocabulary must agree with."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon

# Dolch, E. W. (1936). A basic sight vocabulary. Elementary School Journal 36(6), 456-460.
DOLCH = """
a and away big blue can come down find for funny go help here i in is it jump little look make me
my not one play red run said see the three to two up we where yellow you
all am are at ate be black brown but came did do eat four get good have he into like must new no now
on our out please pretty ran ride saw say she so soon that there they this too under want was well
went what white who will with yes
after again an any as ask by could every fly from give going had has her him his how just know let
live may of old once open over put round some stop take thank them then think walk were when
always around because been before best both buy call cold does don't fast first five found gave goes
green its made many off or pull read right sing sit sleep tell their these those upon us use very
wash which why wish work would write your
about better bring carry clean cut done draw drink eight fall far full got grow hold hot hurt if keep
kind laugh light long much myself never only own pick seven shall show six small start ten today
together try warm
""".split()


@pytest.mark.source("Dolch (1936), 220 service words")
def test_dolch_words_are_known_early(lexicon: Lexicon) -> None:
    assert len(set(DOLCH)) == 220
    late = []
    for word in DOLCH:
        entry = lexicon.get(word)
        if entry is None or entry.band not in (1, 2):
            late.append(word)
    assert late == []


@pytest.mark.source("textstat 0.7.13: the Dale-Chall list of words known to nine-year-olds (1995)")
def test_dale_chall_words_are_in_bands_one_to_three(lexicon: Lexicon) -> None:
    from importlib import resources

    path = resources.files("textstat").joinpath("resources/en/easy_words.txt")
    words = {w for w in path.read_text("utf-8").split() if w.isalpha() and w.islower()}
    entries = [entry for word in sorted(words) if (entry := lexicon.get(word))]
    judged = [entry for entry in entries if entry.reason not in ("name", "not reviewed")]
    left = [entry.word for entry in judged if not 1 <= entry.band <= 3]
    assert len(judged) > 2000
    assert len(left) / len(judged) <= 0.10, left

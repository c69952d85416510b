"""Which words go in which column."""

from __future__ import annotations

import random

import pytest

from phonodrill import By, Lexicon, Notation, PhonodrillError, Query, open_gate
from phonodrill.paper.draw import draw_words
from phonodrill.paper.mat import Columns, by_ending, by_headings, mat_of
from phonodrill.paper.page import Script, Text
from phonodrill.paper.printed import Printed, print_words
from phonodrill.paper.sheets import mat_key
from phonodrill.taught.steps import parse_steps


def printed(lexicon: Lexicon, words: str, notation: Notation = Notation.MARKS) -> list[Printed]:
    entries = [entry for word in words.split() if (entry := lexicon.get(word))]
    assert len(entries) == len(words.split())
    return list(print_words(lexicon, open_gate(lexicon), entries, notation))


def shown(columns: Columns) -> dict[str, tuple[str, ...]]:
    return {column.heading.text: column.words for column in columns.columns}


def test_by_what_the_ending_says(lexicon: Lexicon) -> None:
    words = printed(lexicon, "skies ladies torches hedges gulls ropes fox")
    columns = by_ending(words, By.SOUND)
    assert shown(columns) == {
        "/s/": ("ropes",),
        "/z/": ("gulls",),
        "/ĭz/": ("torches", "hedges"),
        "/ēz/": ("ladies",),
        "/īz/": ("skies",),
    }
    assert list(shown(columns)) == ["/s/", "/z/", "/ĭz/", "/ēz/", "/īz/"]
    assert columns.in_none == ("fox",)


def test_by_how_the_ending_is_spelled(lexicon: Lexicon) -> None:
    columns = by_ending(printed(lexicon, "skies torches hedges gulls"), By.SPELLING)
    assert shown(columns) == {
        "-s": ("hedges", "gulls"),
        "-es": ("torches",),
        "-ies": ("skies",),
    }


def test_by_the_rule(lexicon: Lexicon) -> None:
    columns = by_ending(printed(lexicon, "hopping hoping jumping running"), By.RULE)
    assert sorted(column.words for column in columns.columns) == [
        ("hoping",),
        ("hopping", "running"),
        ("jumping",),
    ]


@pytest.mark.parametrize("notation", Notation)
def test_by_own_headings(lexicon: Lexicon, notation: Notation) -> None:
    sound = {"marks": "/ī/", "ipa": "/aɪ/", "arpabet": "/AY/"}[notation]
    headings = [Text("sh"), Text("o_e"), Text(sound, Script.SOUNDS), Text("-es")]
    words = printed(lexicon, "ship fishes ropes light lights gulls", notation)
    columns = by_headings(words, headings)
    assert shown(columns) == {
        "sh": ("ship",),
        "o_e": ("ropes",),
        sound: ("light", "lights"),
        "-es": (),
    }
    assert columns.in_several == ("fishes",)
    assert columns.in_none == ("gulls",)


def test_every_word_is_in_the_key(lexicon: Lexicon) -> None:
    words = printed(lexicon, "ship fishes ropes light gulls")
    key = mat_key(by_headings(words, [Text("sh"), Text("-es")]), "Key")
    cells = [text.text for _, cell in key.rows for text in cell if text.text]
    listed = ", ".join(cells).split(", ")
    assert sorted(listed) == sorted(word.word for word in words)


def test_a_mat_has_the_headings_and_not_the_answers(lexicon: Lexicon) -> None:
    mat = mat_of("Sort", by_ending(printed(lexicon, "ropes gulls"), By.SOUND))
    assert mat.headings == ((Text("/s/", Script.SOUNDS),), (Text("/z/", Script.SOUNDS),))


def test_columns_that_do_not_fit(lexicon: Lexicon) -> None:
    with pytest.raises(PhonodrillError, match="no word here has an ending"):
        by_ending(printed(lexicon, "fox"), By.SOUND)
    with pytest.raises(PhonodrillError, match="a mat of 7 columns"):
        by_headings([], [Text(letter) for letter in "abcdefg"])


@pytest.mark.parametrize("by", [By.SPELLING, By.SOUND])
def test_words_are_drawn_evenly_and_no_base_twice(lexicon: Lexicon, by: By) -> None:
    query = Query(endings=frozenset({"s", "es", "ies"}))
    drawn = draw_words(lexicon, query, by, 30, random.Random(1))
    words = print_words(lexicon, open_gate(lexicon), drawn, Notation.MARKS)
    assert len({word.ending.base for word in words if word.ending}) == 30
    sizes = [len(column.words) for column in by_ending(words, by).columns]
    assert len(sizes) == (3 if by is By.SPELLING else 5)
    assert sum(sizes) == 30
    assert max(sizes) - min(sizes) <= 5
    assert drawn == draw_words(lexicon, query, by, 30, random.Random(1))
    assert drawn != draw_words(lexicon, query, by, 30, random.Random(2))


def test_the_forms_of_a_few_bases_are_drawn(lexicon: Lexicon) -> None:
    query = Query(endings=frozenset({"s", "ed", "ing"}))
    drawn = draw_words(lexicon, query, By.BASE, 24, random.Random(1))
    columns = by_ending(
        print_words(lexicon, open_gate(lexicon), drawn, Notation.MARKS), By.BASE
    ).columns
    assert len(columns) <= 6
    assert sum(len(column.words) for column in columns) == len(drawn) >= 12


def test_only_words_that_a_class_can_read_are_drawn(lexicon: Lexicon) -> None:
    known = parse_steps(["s a t p i n m d e r", "-s", "-er"], lexicon.correspondences()).known()
    query = Query(band=3, endings=frozenset({"s", "er"}), known=known)
    drawn = draw_words(lexicon, query, By.SPELLING, 20, random.Random(1))
    assert len(drawn) >= 10
    assert all(set(entry.word) <= set("satpinmder") for entry in drawn)

from __future__ import annotations

import csv
import io
import json
import random

import pytest

from phonodrill import TASKS, By, Lexicon, Notation, Position, Query, make_warmup, sort_vocabulary
from phonodrill.render import as_csv, as_json, as_markdown, as_terminal, as_text
from phonodrill.render.document import Document, Section, Table
from phonodrill.render.views import sort as sort_view
from phonodrill.render.views import warmup as warmup_view

ITEM_FIELDS = [
    *[
        "task",
        "at",
        "stimulus",
        "stimulus_arpabet",
        "stimulus_ipa",
        "sound",
        "answer",
        "answer_arpabet",
    ],
    *["answer_ipa", "also", "say", "answer_line", "band", "difficulty", "made_up"],
]
MORE_FIELDS = [
    *["new_sound", "parts", "choices", "choices_arpabet", "foil"],
    *["correction", "how_to_say", "note", "level"],
]
WORD_FIELDS = ["word", "base", "ending", "sound", "rule", "arpabet", "part_of_speech", "watch_out"]


@pytest.fixture(scope="module")
def warmup(lexicon: Lexicon) -> Document:
    made = make_warmup(lexicon, TASKS["delete"], Position.FIRST, Query(), count=8, seed=7)
    return warmup_view.document(made, None)


@pytest.fixture(scope="module")
def sort(lexicon: Lexicon) -> Document:
    query = Query(endings=frozenset({"s", "es", "ies"}))
    made = sort_vocabulary(lexicon, query, By.SOUND, 4, random.Random(7))
    return sort_view.document(made, None, 7)


def test_warmup_json_is_the_contract(warmup: Document) -> None:
    data = json.loads(as_json.render(warmup))
    assert data["phonodrill"]["schema"] == 1
    assert len(data["items"]) == 8
    assert all(list(item) == ITEM_FIELDS + MORE_FIELDS for item in data["items"])


def test_sort_json_is_the_contract(sort: Document) -> None:
    data = json.loads(as_json.render(sort))
    assert data["by"] == "sound"
    assert [group["sound"] for group in data["groups"]] == ["s", "z", "ɪz", "iz", "aɪz"]
    assert all(list(word) == WORD_FIELDS for group in data["groups"] for word in group["words"])


def test_csv_has_a_row_an_item(warmup: Document) -> None:
    rows = list(csv.DictReader(io.StringIO(as_csv.render(warmup))))
    assert [row["stimulus"] for row in rows] == [item["stimulus"] for item in warmup.records]


@pytest.mark.parametrize("renderer", [as_text, as_markdown])
def test_text_and_markdown_show_every_line(renderer: object, warmup: Document) -> None:
    text = renderer.render(warmup)  # type: ignore[attr-defined]
    for item in warmup.records:
        assert item["answer"] in text
        assert item["stimulus"] in text


def test_plain_text_is_plain_and_a_terminal_gets_weight(warmup: Document, sort: Document) -> None:
    for document in (warmup, sort):
        assert "\x1b" not in as_text.render(document)
        shown = as_terminal.render(document, 80)
        assert "\x1b[1m" in shown
        for record in document.records:
            assert str(record.get("stimulus", record.get("word"))) in shown


def test_no_color_is_used(warmup: Document) -> None:
    assert "\x1b[3" not in as_terminal.render(warmup, 80).replace("\x1b[3m", "")


def test_combining_marks_take_no_column() -> None:
    assert as_text.width("o͞o") == 2
    table = Table(("a", "b"), (("o͞o", "x"), ("sh", "y")))
    lines = as_text.render(Document("t", "", (Section("", table),), {}, ())).splitlines()
    assert [as_text.width(line) for line in lines[-2:]] == [5, 5]


@pytest.mark.parametrize(
    ("notation", "sign"), [(Notation.IPA, "tʃ"), (Notation.MARKS, "ch"), (Notation.ARPABET, "CH")]
)
def test_notations(lexicon: Lexicon, notation: Notation, sign: str) -> None:
    query = Query(sound="ʧ")
    made = make_warmup(lexicon, TASKS["delete"], Position.FIRST, query, count=2, seed=1)
    document = warmup_view.document(made, notation)
    assert {record["sound"] for record in document.records} == {sign}
    assert all(f"/{sign}/" in record["say"] for record in document.records)

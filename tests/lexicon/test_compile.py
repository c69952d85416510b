from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.compile import compile_lexicon
from phonodrill.lexicon.inflected import spelled_ending
from phonodrill.lexicon.pronunciations import mended
from phonodrill.lexicon.schema import LEXICON_PATH
from phonodrill.lexicon.wordlists import Fix
from tests.conftest import WORDLISTS


def dump(path: Path) -> list[str]:
    connection = sqlite3.connect(path)
    lines = list(connection.iterdump())
    connection.close()
    return lines


def test_two_compilations_have_the_same_content_and_a_fit_size(tmp_path: Path) -> None:
    again = tmp_path / "again.sqlite"
    compile_lexicon(WORDLISTS, again)
    assert dump(again) == dump(LEXICON_PATH)
    assert again.stat().st_size < 20 * 2**20


def test_a_broken_table_leaves_the_old_lexicon(tmp_path: Path) -> None:
    for path in WORDLISTS.glob("*.tsv"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    (tmp_path / "never_say.tsv").write_text("nothing\n")
    target = tmp_path / "lexicon.sqlite"
    target.write_bytes(b"old")
    with pytest.raises(PhonodrillError):
        compile_lexicon(tmp_path, target)
    assert target.read_bytes() == b"old"


def test_fixes_replace_add_and_drop() -> None:
    listed = ["K AE1 T", "K AH1 T"]
    assert mended(listed, [Fix("cat", "drop", "K AH1 T", "")]) == ["K AE1 T"]
    assert mended(listed, [Fix("cat", "say", "K IY1", "")]) == ["K IY1"]
    assert mended(listed, [Fix("cat", "add", "K IY1", "")]) == [*listed, "K IY1"]
    with pytest.raises(PhonodrillError, match="cat is not listed"):
        mended(listed, [Fix("cat", "drop", "K IY1", "")])


@pytest.mark.parametrize(
    ("form", "base", "inflection", "ending"),
    [
        ("torches", "torch", "plural", "es"),
        ("hedges", "hedge", "plural", "s"),
        ("ferries", "ferry", "plural", "ies"),
        ("pies", "pie", "plural", "ies"),
        ("shelves", "shelf", "plural", "ves"),
        ("knives", "knife", "plural", "ves"),
        ("quizzes", "quiz", "plural", "es"),
        ("hopped", "hop", "past", "ed"),
        ("hoped", "hope", "past", "ed"),
        ("cried", "cry", "past", "ed"),
        ("skating", "skate", "present participle", "ing"),
        ("lying", "lie", "present participle", "ing"),
        ("fed", "feed", "past", ""),
        ("men", "man", "plural", ""),
    ],
)
def test_how_an_ending_is_spelled(form: str, base: str, inflection: str, ending: str) -> None:
    assert spelled_ending(form, base, inflection) == ending

from __future__ import annotations

from pathlib import Path

import pytest

from phonodrill.errors import TableError
from phonodrill.lexicon.tables import FIRST_LINE, read_table
from phonodrill.lexicon.wordlists import read_wordlists
from tests.conftest import WORDLISTS

COLUMNS = ("word", "band")


def write(path: Path, text: str) -> Path:
    file = path / "words.tsv"
    file.write_bytes(text.encode())
    return file


def test_rows_carry_their_cells_and_place(tmp_path: Path) -> None:
    file = write(tmp_path, f"{FIRST_LINE}\n# note\nword\tband\ncrab\t1\ngull\t2\n")
    rows = list(read_table(file, COLUMNS, key=["word"]))
    assert [row["word"] for row in rows] == ["crab", "gull"]
    assert rows[1].place == "words.tsv:5"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("word\tband\n", "words.tsv:1: the first line must be"),
        (f"{FIRST_LINE}\nword\n", "words.tsv:2: the header must be"),
        (f"{FIRST_LINE}\n", "the header must be"),
        (f"{FIRST_LINE}\nword\tband\na\t1\t2\n", "words.tsv:3: 3 cells, 2 columns"),
        (f"{FIRST_LINE}\nword\tband\nb\t1\nb\t2\n", "words.tsv:4: repeated"),
        (f"{FIRST_LINE}\nword\tband\nb\t1\na\t2\n", "words.tsv:4: out of order"),
    ],
)
def test_a_broken_table_names_file_and_line(tmp_path: Path, text: str, message: str) -> None:
    with pytest.raises(TableError, match=message):
        list(read_table(write(tmp_path, text), COLUMNS, key=["word"]))


def test_a_table_that_is_not_utf8_is_named(tmp_path: Path) -> None:
    file = tmp_path / "words.tsv"
    file.write_bytes(b"\xff\xfe")
    with pytest.raises(TableError, match="not UTF-8"):
        list(read_table(file, COLUMNS, key=["word"]))


@pytest.mark.parametrize(
    ("table", "row", "message"),
    [
        ("vocabulary.tsv", "zz\t7\tnoun\tno", "band is '7'"),
        ("vocabulary.tsv", "zz\t0\tnoun\tno\trude", "reason is 'rude'"),
        ("vocabulary.tsv", "zz\t1\tnoun\tno\tadult", "only band 0 has a reason"),
        ("pronunciation_fixes.tsv", "zz\t1\tsay\tZ ZZ\twhy", "not a CMUdict phone"),
        ("pronunciation_fixes.tsv", "zz\t1\tsay\tZ UW1", "needs a reason"),
        ("never_say.tsv", "zz\tZ UW1\tinsult\tnever", "blocks is 'never'"),
    ],
)
def test_a_bad_row_is_named(tmp_path: Path, table: str, row: str, message: str) -> None:
    for path in WORDLISTS.glob("*.tsv"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    with (tmp_path / table).open("a", encoding="utf-8") as file:
        file.write(row + "\n")
    with pytest.raises(TableError, match=rf"{table}:\d+: .*{message}"):
        read_wordlists(tmp_path)

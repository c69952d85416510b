"""What a second, independent US dictionary lists, as its editors wrote it (install time only).

The table wordlists/second_dictionary.tsv holds, unchanged, the entries of
``us_gold.json`` of the text-to-speech package *misaki* (Apache 2.0) for the
words that we judge. It is kept here because that package refuses Python 3.13
and newer, where the lexicon has to be compiled, too.

``renew_second_dictionary.py`` prints the rows anew from the package.
"""

from __future__ import annotations

from pathlib import Path

from phonodrill.lexicon.tables import read_table

TABLE = "second_dictionary.tsv"
COLUMNS = ("word", "said")
VERSION = "0.9.4"
"""The version of misaki that the table was taken from."""


def read_listed(table: Path) -> dict[str, tuple[str, ...]]:
    """Read the table.

    Returns:
        Word -> its pronunciations in misaki's one-letter IPA.

    Raises:
        TableError: naming the file and line that cannot be used.
    """
    rows = read_table(table, COLUMNS, key=["word"])
    return {row["word"]: tuple(row["said"].split()) for row in rows}

"""What a second, independent US dictionary lists, as its editors wrote it (install time only).

The table wordlists/second_dictionary.tsv holds, unchanged, the entries of
``us_gold.json`` of the text-to-speech package *misaki* (Apache 2.0) for the
words that we judge. It is kept here because that package refuses Python 3.13
and newer, where the lexicon has to be compiled, too.

``python -m phonodrill.lexicon.second_dictionary`` prints the rows anew from
the package: needed when words that it lists are added to our tables.
"""

from __future__ import annotations

import json
from collections.abc import Container, Iterator
from importlib import resources
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


def renewed(words: Container[str]) -> Iterator[tuple[str, str]]:
    """Yield the rows of the table, taken from the package that is installed.

    Args:
        words: the words that are judged.
    """
    text = resources.files("misaki").joinpath("data/us_gold.json").read_text("utf-8")
    for word, listed in sorted(json.loads(text).items()):
        if word in words and word == word.lower():
            variants = [listed] if isinstance(listed, str) else list(listed.values())
            yield word, " ".join(dict.fromkeys(filter(None, variants)))


if __name__ == "__main__":
    from phonodrill.lexicon.pronunciations import read_pronunciations
    from phonodrill.lexicon.sources import read_cmudict
    from phonodrill.lexicon.wordlists import read_wordlists

    judged = read_pronunciations(read_cmudict(), read_wordlists(Path("wordlists")), {})
    for row in renewed(judged):
        print("\t".join(row))  # noqa: T201

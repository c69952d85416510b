"""The words most used in text for children's sentences: our own computation.

``python -m phonodrill.lexicon.high_frequency`` prints the rows of
wordlists/high_frequency.tsv anew: the 300 words of bands 1-2 with the highest
Zipf frequency (wordfreq), and the rest of Dolch's service words (1936), which
the table marks.
"""

from __future__ import annotations

from pathlib import Path

from phonodrill.lexicon.store import Lexicon
from phonodrill.lexicon.tables import read_table

COLUMNS = ("word", "place", "dolch")
HIGHEST_PLACE = 300


def ranked(lexicon: Lexicon) -> list[str]:
    """Return the words of bands 1-2, the most used first."""
    entries = [e for e in lexicon.entries(highest_band=2) if e.word.replace("'", "").isalpha()]
    return [e.word for e in sorted(entries, key=lambda entry: (-entry.zipf, entry.word))]


def renewed(lexicon: Lexicon, table: Path) -> list[tuple[str, ...]]:
    """Return the rows of the table with places computed anew.

    Args:
        lexicon: the open lexicon.
        table: wordlists/high_frequency.tsv, for the marks made by hand.
    """
    marks = {row["word"]: row for row in read_table(table, COLUMNS, key=["word"])}
    places = {word: place for place, word in enumerate(ranked(lexicon), 1)}
    dolch = {word for word, row in marks.items() if row["dolch"] == "yes"}
    wanted = {word for word, place in places.items() if place <= HIGHEST_PLACE} | dolch
    return [
        (
            word,
            str(places.get(word, "")),
            "yes" if word in dolch else "no",
        )
        for word in sorted(wanted)
    ]


if __name__ == "__main__":
    table = Path("wordlists") / "high_frequency.tsv"
    with Lexicon() as opened:
        for row in renewed(opened, table):
            print("\t".join(row))  # noqa: T201

"""Print the rows of the second dictionary anew from its package, beside the install.

``python -m phonodrill.lexicon.renew_second_dictionary``, in the folder of the
project: needed when words that the package lists are added to our tables.
"""

from __future__ import annotations

import json
from collections.abc import Container, Iterator
from importlib import resources
from pathlib import Path

from phonodrill.lexicon.pronunciations import read_pronunciations
from phonodrill.lexicon.sources import read_cmudict
from phonodrill.lexicon.wordlists import read_wordlists


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
    judged = read_pronunciations(read_cmudict(), read_wordlists(Path("wordlists")), {})
    for row in renewed(judged):
        print("\t".join(row))  # noqa: T201

"""Links between pages: the same file is read in the repository and on the site."""

from __future__ import annotations

import posixpath
import re

_LINK = re.compile(r"(?<!!)\[(?P<words>[^\]]+)\]\((?P<target>[^)\s]+)\)")
_PAGES = {"wordlists/README.md": "docs/reference/tables.md", "README.md": "docs/index.md"}
"""A file outside docs/ -> the page of the site that stands for it."""


def relink(text: str, page: str, home: str = "docs") -> str:
    """Point links at pages of the site; what is not on the site is only named.

    Args:
        text: Markdown.
        page: the page it is on, from docs/: ``reference/tables.md``.
        home: the folder in the repository from which its links are seen, where that is
            not the page's own.

    >>> relink("[words](../wordlists/README.md)", "letters.md")
    '[words](reference/tables.md)'
    >>> relink("[the splits](../tests/cases/alignments.tsv)", "letters.md")
    'the splits'
    >>> relink("[sounds](sounds.md#notations)", "tasks.md")
    '[sounds](sounds.md#notations)'
    """
    folder = posixpath.dirname(posixpath.join("docs", page))
    seen_from = folder if home == "docs" else home

    def relinked(match: re.Match[str]) -> str:
        path, sharp, anchor = match["target"].partition("#")
        if not path or "://" in path or path.startswith("mailto:"):
            return match[0]
        whole = posixpath.normpath(posixpath.join(seen_from, path))
        whole = _PAGES.get(whole, whole)
        if not whole.startswith("docs/"):
            return match["words"]
        return f"[{match['words']}]({posixpath.relpath(whole, folder)}{sharp}{anchor})"

    return _LINK.sub(relinked, text)

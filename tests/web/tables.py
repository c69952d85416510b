"""Read a table of a page."""

from __future__ import annotations

import re
from html import unescape

_ROW = re.compile(r"<tr>(.*?)</tr>", re.DOTALL)
_CELL = re.compile(r"<td>(.*?)</td>", re.DOTALL)


def rows_of(page: str, heading: str) -> list[list[str]]:
    """Return the rows of the first table behind a heading."""
    found = re.search(rf"<h\d>{re.escape(heading)}</h\d>", page)
    assert found, f"no heading {heading!r}"
    body = page[found.end() :].partition("<tbody>")[2].partition("</tbody>")[0]
    return [[unescape(cell) for cell in _CELL.findall(row)] for row in _ROW.findall(body)]

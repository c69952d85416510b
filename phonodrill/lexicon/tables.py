"""Read the word tables that people edit (install time only).

A table is UTF-8 text: a first line ``# phonodrill table 1``, comment lines
that begin with ``#``, one header line of column names, then rows, all parted
by tabs. Errors name the file and the line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from phonodrill.errors import TableError

FIRST_LINE = "# phonodrill table 1"


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table, and where it stands."""

    cells: dict[str, str]
    place: str

    def __getitem__(self, column: str) -> str:
        return self.cells[column]

    def error(self, message: str) -> TableError:
        """Make an error that names this row's file and line."""
        return TableError(f"{self.place}: {message}", "mend that line of the table")


def read_table(path: Path, columns: Sequence[str], *, key: Sequence[str]) -> Iterator[Row]:
    """Yield the rows of a table, checked.

    Args:
        path: the file.
        columns: the header it must have.
        key: columns that together may occur only once; rows must be in their order.

    Raises:
        TableError: wrong encoding, first line, header, number of cells, a
            repeated key, or a row out of order.
    """
    rows = _numbered_rows(path)
    place, header = next(rows, (path.name, []))
    if header != list(columns):
        raise TableError(f"{place}: the header must be: {' '.join(columns)}", "mend the header")
    previous: tuple[str, ...] = ()
    for place, cells in rows:
        if len(cells) > len(columns):
            raise TableError(f"{place}: {len(cells)} cells, {len(columns)} columns", "mend it")
        padded = cells + [""] * (len(columns) - len(cells))
        row = Row(dict(zip(columns, padded, strict=True)), place)
        this = tuple(row[column] for column in key)
        if this <= previous:
            raise row.error("repeated" if this == previous else "out of order (sort the rows)")
        previous = this
        yield row


def _numbered_rows(path: Path) -> Iterator[tuple[str, list[str]]]:
    try:
        lines = path.read_text("utf-8").split("\n")
    except UnicodeDecodeError as error:
        raise TableError(f"{path.name}: not UTF-8 text", "save the file as UTF-8") from error
    if lines[0] != FIRST_LINE:
        raise TableError(f"{path.name}:1: the first line must be {FIRST_LINE!r}", "add it")
    for number, line in enumerate(lines, 1):
        if line.strip() and not line.startswith("#"):
            yield f"{path.name}:{number}", [cell.strip() for cell in line.split("\t")]

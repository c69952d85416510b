"""Results of a check in a table: a line for each student and item."""

from __future__ import annotations

import csv
from collections.abc import Collection, Iterator

from phonodrill.errors import PhonodrillError
from phonodrill.records.kept import Result

HEADINGS = ("student", "item", "right")
_HINT = "the first line: student,item,right,said"
RIGHT = frozenset({"y", "yes", "1", "right", "true"})
WRONG = frozenset({"n", "no", "0", "wrong", "false", "not yet"})


def read_results(text: str, students: Collection[str], items: int) -> Iterator[Result]:
    r"""Read results; an empty cell in ``right`` is an item that was not asked.

    Args:
        text: CSV with the columns student, item (its number), right (``y`` or ``n``) and,
            if noted, said; parted by commas or semicolons.
        students: codes of the group.
        items: how many the check has.

    Raises:
        PhonodrillError: naming the line that cannot be read, not what it says of whom.

    >>> list(read_results("student,item,right\nA,2,y\nA,3,\n", ["A"], 8))
    [Result(position=2, student='A', right=True, said='', entry='')]
    """
    lines = text.splitlines()
    first = lines[0] if lines else ""
    reader = csv.DictReader(lines, delimiter=";" if first.count(";") > first.count(",") else ",")
    try:
        headings = {(name or "").strip().lower() for name in reader.fieldnames or ()}
        if not headings.issuperset(HEADINGS):
            raise PhonodrillError("the file has not the columns of results", _HINT)
        for row in reader:
            cells = {
                str(name).strip().lower(): value.strip()
                for name, value in row.items()
                if isinstance(value, str)
            }
            if cells.get("right"):
                yield _result(cells, reader.line_num, students, items)
    except csv.Error as error:
        raise PhonodrillError(f"line {reader.line_num}: {error}", _HINT) from error


def _result(cells: dict[str, str], line: int, students: Collection[str], items: int) -> Result:
    right = cells["right"].lower()
    number = cells.get("item", "").lstrip("0")
    problem = ""
    if cells.get("student", "") not in students:
        problem = "no such student in the group"
    elif number not in map(str, range(1, items + 1)):
        problem = f"the item is no number from 1 to {items}"
    elif right not in RIGHT | WRONG:
        problem = "right is neither y nor n"
    if problem:
        raise PhonodrillError(f"line {line}: {problem}", _HINT)
    return Result(int(number), cells["student"], right in RIGHT, cells.get("said", ""))

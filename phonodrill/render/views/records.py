"""How groups, checks and all that is kept of a student are shown."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from phonodrill.lesson import tree
from phonodrill.lesson.checking import SCRIPT
from phonodrill.lesson.plan import CHECK
from phonodrill.paper.page import Page, ScoreGrid, Sheet
from phonodrill.records.answer import Asked
from phonodrill.records.kept import Check, Counts, Group, Listed, Result, StudentRecord
from phonodrill.render.document import (
    Document,
    Mark,
    Marked,
    Questions,
    Section,
    Table,
    Words,
    counted,
)
from phonodrill.render.views import pack, student_pages

ROWS = 30
"""Students on one page of the grid."""


def in_words(counts: Counts) -> str:
    """Say how much is kept."""
    return (
        f"{counted(counts.groups, 'group')}, {counted(counts.students, 'student')}, "
        f"{counted(counts.checks, 'check')}, {counted(counts.results, 'result')}"
    )


def groups(
    found: Sequence[Group], students: Mapping[str, Sequence[str]] | None, place: str
) -> Document:
    """Show the groups.

    Args:
        found: the groups.
        students: the codes of each, if they are to be shown.
        place: where the records are kept.
    """
    records: list[dict[str, Any]] = []
    for group in found:
        codes = {"codes": list(students[group.name])} if students else {}
        records.append({"group": group.name, **group._asdict(), **codes})
        del records[-1]["name"]
    flat = [
        {**record, "codes": " ".join(record["codes"])} if students else record for record in records
    ]
    headings = ("group", "students", "checks", *(("codes",) if students else ()))
    rows = tuple(tuple(str(record[name]) for name in headings) for record in flat)
    about = f"{counted(len(found), 'group')}, kept in {place}"
    sections = (Section("", Table(headings, rows)),) if rows else ()
    return Document("Groups", about, sections, {"groups": records}, flat)


def checks(found: Sequence[Listed]) -> Document:
    """Show a list of checks."""
    records = [{"check": row.key, **row._asdict()} for row in found]
    for record in records:
        del record["key"]
    headings = ("check", "group", "focus", "date", "items", "results")
    rows = tuple(tuple(map(str, record.values())) for record in records)
    sections = (Section("", Table(headings, rows)),) if rows else ()
    about = f"{counted(len(found), 'check')}, the latest first"
    return Document("Checks", about, sections, {"checks": records}, records)


def check(made: Check, students: Sequence[str], results: Sequence[Result] = ()) -> Document:
    """Show a check with its answers, and what is entered.

    Args:
        made: the check.
        students: codes of its group.
        results: what is entered.
    """
    lines = tuple((item.ask, item.answer, f"({item.shows})") for item in made.items)
    sections = [Section("", _text(SCRIPT)), Section("", Questions(lines))]
    if results:
        sections.append(Section("Entered", _grid(made, students, results)))
    elif students:
        sections.append(Section("Students", Words(tuple(students))))
    numbered = [{"position": n, **_asked(item)} for n, item in enumerate(made.items, 1)]
    data = {
        "check": made.key,
        **{name: getattr(made, name) for name in ("group", "focus", "date", "band", "seed")},
        "items": numbered,
        "students": list(students),
        "results": [_result(result) for result in results],
    }
    flat = [{**item, "skills": _in_one_cell(item["skills"])} for item in numbered]
    return Document(f"Check {made.key}: {made.focus}", _about(made), tuple(sections), data, flat)


def check_pages(made: Check, students: Sequence[str]) -> list[Page]:
    """Make the sheet of a check: what to ask, words to show, a row for each student."""
    questions = tuple(tree.Question(*item[:5]) for item in made.items)
    title = f"Check {made.key}: {made.focus}"
    section = tree.Check(CHECK, 0, title, SCRIPT, questions)
    numbers = tuple(str(number) for number, _ in enumerate(questions, 1))
    pages: list[Page] = [Sheet(title, SCRIPT, tuple(pack.blocks_of(section)))]
    pages += student_pages.shown_words(section)
    for start in range(0, max(1, len(students)), ROWS):
        codes = tuple(students[start : start + ROWS])
        grid = ScoreGrid((*numbers, "sum"), ROWS, codes)
        about = f"{made.group}, {made.date}. {pack.SCORE_NOTE}"
        pages.append(Sheet(f"{title}: scores", about, (grid,)))
    return pages


def student(record: StudentRecord) -> Document:
    """Show all that is kept of a student."""
    records = [
        {
            "group": record.group,
            "student": record.code,
            **{name: getattr(row, name) for name in ("check", "focus", "date", "position")},
            **_asked(row.asked),
            "right": row.right,
            "said": row.said,
            "entered": row.at,
        }
        for row in record.entered
    ]
    headings = ("date", "focus", "word", "asked", "answer", "right", "said")
    rows = tuple(
        (r.date, r.focus, r.asked.word, r.asked.how, r.asked.answer, _yes(right=r.right), r.said)
        for r in record.entered
    )
    own = ("group", "student")
    data = {
        "group": record.group,
        "student": record.code,
        "results": [{k: v for k, v in row.items() if k not in own} for row in records],
    }
    flat = [
        {
            **row,
            "right": _yes(right=row["right"]),
            "skills": "; ".join(map(": ".join, row["skills"])),
        }
        for row in records
    ]
    sections = (Section("", Table(headings, rows)),) if rows else ()
    about = f"group {record.group}, {counted(len(records), 'result')}"
    return Document(f"Student {record.code}", about, sections, data, flat)


def _grid(made: Check, students: Sequence[str], results: Sequence[Result]) -> Table:
    marks = {(one.student, one.position): one for one in results}
    numbers = range(1, len(made.items) + 1)

    def cells(code: str) -> Iterator[str]:
        found = [marks.get((code, number)) for number in numbers]
        yield code
        yield from (" " if one is None else "✓" if one.right else one.said or "·" for one in found)
        there = [one for one in found if one]
        yield f"{sum(one.right for one in there)} of {len(there)}" if there else "-"

    headings = ("student", *map(str, numbers), "right")
    return Table(headings, tuple(tuple(cells(code)) for code in students))


def _about(made: Check) -> str:
    count = counted(len(made.items), "item")
    words = f"words of band {made.band} or lower, seed {made.seed}"
    return f"group {made.group}, {made.date}, {count}, {words}"


def _asked(item: Asked) -> dict[str, Any]:
    return {**item._asdict(), "skills": [[str(skill.kind), skill.name] for skill in item.skills]}


def _result(result: Result) -> dict[str, Any]:
    return {name: getattr(result, name) for name in ("position", "student", "right", "said")}


def _yes(*, right: bool) -> str:
    return "yes" if right else "no"


def _in_one_cell(skills: Sequence[Sequence[str]]) -> str:
    return "; ".join(map(": ".join, skills))


def _text(text: str) -> Marked:
    return Marked(((text, Mark.NONE),))

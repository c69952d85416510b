"""How a checked and a suggested teaching order are shown."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from phonodrill.render.document import Document, Section, Table, counted
from phonodrill.taught.check import EXAMPLES, Checked
from phonodrill.taught.suggest import Goal, Suggestion, write_lines

if TYPE_CHECKING:
    from phonodrill.render.fields import reading

MILESTONES = (10, 20, 40, 80)
WHAT = {Goal.DECODABLE: "words", Goal.SENTENCES: "sentences of the bank"}


def checked(name: str, band: int, steps: Sequence[Checked], problems: Sequence[str]) -> Document:
    """Show what each step of a taught file opens.

    Args:
        name: of the file.
        band: highest band of the words counted.
        steps: the checked steps.
        problems: lines that could not be read.
    """
    records = [_record(step) for step in steps]
    rows = tuple(
        (
            str(r["step"]),
            str(r["line"]),
            r["text"],
            "; ".join(r["understood"]),
            str(r["opens"]),
            str(r["total"]),
            ", ".join(r["examples"]),
        )
        for r in records
    )
    headings = ("step", "line", "taught", "understood as", "opens", "total", "such as")
    sections = [Section("", Table(headings, rows))]
    notes = tuple((f"step {step.number}", note) for step in steps for note in step.notes)
    if notes:
        sections.append(Section("Look again", Table(("where", "what"), notes)))
    if problems:
        sections.append(Section("Not read", Table(("line",), tuple((p,) for p in problems))))
    total = steps[-1].total if steps else 0
    about = f"{counted(len(steps), 'step')}, {counted(total, 'word')} of bands 1-{band} open"
    data: reading.TaughtCheck = {
        "file": name,
        "band": band,
        "steps": records,
        "problems": list(problems),
    }
    return Document(f"What {name} opens", about, tuple(sections), data, records)


def suggested(result: Suggestion, band: int) -> Document:
    """Show a teaching order; as text it is a taught file."""
    ours = next(iter(result.curves.values()))
    records: list[reading.SuggestedStep] = [
        {
            "step": number,
            "taught": line.text,
            "reason": line.reason,
            "total": ours[number],
            "is_new": number > result.started,
        }
        for number, line in enumerate(result.lines, 1)
    ]
    rows = tuple((str(r["step"]), r["taught"], r["reason"], str(r["total"])) for r in records)
    growth = _growth(result)
    what = WHAT[result.goal]
    title = f"A teaching order that opens the most {what} soonest"
    about = f"words of bands 1-{band}, seed {result.seed}"
    sections = (
        Section("", Table(("step", "taught", "why", "open"), rows)),
        Section(f"Growth: {what} open after so many steps", growth),
    )
    data: reading.TaughtSuggestion = {
        "goal": str(result.goal),
        "band": band,
        "seed": result.seed,
        "steps": records,
        "growth": {name: list(curve) for name, curve in result.curves.items()},
        "constraints_broken": dict(result.broken),
    }
    plain = _comment(title, about, what, growth) + write_lines(result.lines)
    return Document(title, about, sections, data, records, plain)


def following(result: Suggestion) -> Table:
    """Show only the steps that are new."""
    totals = next(iter(result.curves.values()))
    rows = tuple(
        (str(number), line.text, line.reason, f"{totals[number]:,}")
        for number, line in enumerate(result.lines, 1)
        if number > result.started
    )
    return Table(("step", "taught", "why", "open"), rows)


def _growth(result: Suggestion) -> Table:
    last = len(result.lines)
    marks = [mark for mark in MILESTONES if mark < last] + [last]
    rows = tuple(
        (name, *(f"{curve[mark]:,}" for mark in marks), str(result.broken[name]))
        for name, curve in result.curves.items()
    )
    return Table(("order", *map(str, marks), "constraints broken"), rows)


def _comment(title: str, about: str, what: str, growth: Table) -> str:
    from phonodrill.render.as_text import table

    lines = [f"{title}:", f"{about}.", "", f"{what} open after so many steps:", ""]
    lines += table(growth).splitlines()
    return "".join(f"# {line}".rstrip() + "\n" for line in lines) + "\n"


def _record(step: Checked) -> reading.CheckedStep:
    return {
        "step": step.number,
        "line": step.step.number,
        "text": step.step.text,
        "understood": list(step.understood),
        "opens": len(step.opens),
        "total": step.total,
        "examples": list(step.opens[:EXAMPLES]),
        "notes": list(step.notes),
    }

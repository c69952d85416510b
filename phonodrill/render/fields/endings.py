"""Fields of endings: sorted, added, taken off, the rule card, the traps."""

from __future__ import annotations

from typing import Annotated, NotRequired, TypedDict

from phonodrill.endings.lookalikes import Kind
from phonodrill.endings.sort import By
from phonodrill.endings.steps import Op
from phonodrill.render.fields.common import Band, Count, Share


class SortedWord(TypedDict):
    """A word with its ending.

    Attributes:
        word: the word.
        base: what it comes from.
        ending: how the ending is spelled.
        sound: what it says, in IPA; empty if nothing of its own.
        rule: name of the spelling rule.
        arpabet: how the word is said.
        part_of_speech: what it may be in a sentence, parted by commas.
        watch_out: what to warn of; may be empty.
    """

    word: str
    base: str
    ending: str
    sound: str
    rule: str
    arpabet: str
    part_of_speech: str
    watch_out: str


class SortGroup(TypedDict):
    """A group of a sort, named by what was sorted by.

    Attributes:
        sound: what the ending says; if sorted by sound.
        spelling: how it is spelled; if sorted by spelling.
        rule: name of the rule; if sorted by rule.
        base: the base word; if sorted by base.
        words: the words of the group.
    """

    sound: NotRequired[str]
    spelling: NotRequired[str]
    rule: NotRequired[str]
    base: NotRequired[str]
    words: list[SortedWord]


class LeftOut(TypedDict):
    """A word that is in no group.

    Attributes:
        word: the word.
        why: the reason.
    """

    word: str
    why: str


class Sort(TypedDict):
    """Words sorted by their ending; the groups are the answer key.

    Attributes:
        by: what they are sorted by.
        seed: makes the same choice again.
        groups: the groups with their words.
        left_out: words that are in no group.
    """

    by: Annotated[str, By]
    seed: int
    groups: list[SortGroup]
    left_out: list[LeftOut]


class Change(TypedDict):
    """One step from base to form.

    Attributes:
        op: what is done with the letters.
        letters: which.
        to: what they are changed to; only for change.
    """

    op: Annotated[str, Op]
    letters: str
    to: NotRequired[str]


class Form(TypedDict):
    """A form of a base.

    Attributes:
        form: how it is spelled.
        ending: spelled ending; empty where the form is irregular.
        rule: name of the rule.
        change: what is done with the letters, step by step.
        why: the rule in a teacher's words.
        sound: what the ending says, in IPA.
        arpabet: how the form is said; empty where that is not known.
        part_of_speech: what it may be in a sentence, parted by commas.
        reading: what it then means.
        syllables_before: of the base.
        syllables_after: of the form.
        share: share of the uses, where a base has two forms.
        based_on: what the sound is known from: a dictionary, or letters alone.
        watch_out: what to warn of; may be empty.
    """

    form: str
    ending: str
    rule: str
    change: list[Change]
    why: str
    sound: str
    arpabet: str
    part_of_speech: str
    reading: str
    syllables_before: Count
    syllables_after: Count
    share: Share
    based_on: str
    watch_out: str


class Added(TypedDict):
    """A word with an ending added.

    Attributes:
        base: the word.
        ending: the ending as it was asked for.
        note: why there is no form, or what else there is to say; may be empty.
        forms: the commoner first.
    """

    base: str
    ending: str
    note: str
    forms: list[Form]


class Origin(TypedDict):
    """A base that a form may come from.

    Attributes:
        base: the base.
        ending: the spelled ending.
        rule: name of the rule.
        part_of_speech: what the base is, parted by commas.
        inflection: what the form is of it, parted by commas.
        reason: why, in words.
        known: whether the base is in the lexicon.
        watch_out: what to warn of; may be empty.
    """

    base: str
    ending: str
    rule: str
    part_of_speech: str
    inflection: str
    reason: str
    known: bool
    watch_out: str


class Bases(TypedDict):
    """Where a form comes from.

    Attributes:
        form: the form.
        bases: the likeliest first; none if it only looks inflected.
        note: why it has none; may be empty.
    """

    form: str
    bases: list[Origin]
    note: str


class Example(TypedDict):
    """An example of a rule.

    Attributes:
        rule: name of the rule.
        base_ends_in: what the base ends in.
        base: the base.
        word: the word with the ending.
        sound: what the ending says, in IPA.
    """

    rule: str
    base_ends_in: str
    base: str
    word: str
    sound: str


class RuleRow(TypedDict):
    """A rule of the card.

    Attributes:
        rule: its name.
        when: what the base has to be.
        says: the rule in a teacher's words.
        source: who says so.
        examples: words of the band; may be none.
    """

    rule: str
    when: str
    says: str
    source: str
    examples: list[Example]


class WatchOut(TypedDict):
    """A word to warn of.

    Attributes:
        word: the word.
        base: what it comes from.
        why: what is odd about it.
    """

    word: str
    base: str
    why: str


class RuleCard(TypedDict):
    """The rule card of an ending.

    Attributes:
        ending: the ending.
        band: highest band of the examples.
        seed: makes the same choice again.
        rules: in order; the first that fits is the rule.
        watch_outs: words to warn of.
    """

    ending: str
    band: Band
    seed: int
    rules: list[RuleRow]
    watch_outs: list[WatchOut]


class Lookalike(TypedDict):
    """A word that looks as if it had the ending, or has it otherwise.

    Attributes:
        word: the word.
        kind: what sort of trap it is.
        why: the reason.
    """

    word: str
    kind: Annotated[str, Kind]
    why: str


class Lookalikes(TypedDict):
    """Traps to be ready for in a lesson on an ending.

    Attributes:
        focus: the endings.
        band: highest band of the words.
        seed: makes the same choice again.
        lookalikes: the words, by kind.
    """

    focus: str
    band: Band
    seed: int
    lookalikes: list[Lookalike]

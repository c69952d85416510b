"""The quick check: eight items, and what a right answer to each shows."""

from __future__ import annotations

from collections.abc import Callable
from itertools import cycle

from phonodrill.endings.sounds import written_sound
from phonodrill.endings.undo import find_bases
from phonodrill.lesson.candidates import Candidate, Vocabulary
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import CHECK, NEXT, QUICK_CHECK
from phonodrill.lesson.reasons import in_style
from phonodrill.lesson.request import Context
from phonodrill.lesson.rule_part import name_letters, row_for, sound_in
from phonodrill.lesson.task_part import BY_EAR
from phonodrill.lesson.tree import Advice, Check, Next, Question, WatchOut
from phonodrill.lesson.words import Words
from phonodrill.sounds.inventory import VOWELS

SCRIPT = "One student at a time, two minutes each; mark right or not yet. Give no help meanwhile."
NEXT_SCRIPT = "Count the right answers of the quick check (the limits are ours; no source)."
MOST_TRAPS = 2
SPELL, SAY, FIND, TRAP, READ, WRITE, HEAR = (
    "spell with the ending",
    "say the ending",
    "find the base",
    "ending or not",
    "read",
    "write",
    "say the sound",
)
_FOR_ENDINGS = (SPELL, SAY, FIND)
_FOR_LETTERS = (READ, WRITE, HEAR)
COUNT = BY_EAR
"""The name by which slides know items that are said, not shown."""


def compose_check(
    context: Context,
    vocabulary: Vocabulary,
    words: Words,
    traps: tuple[str, ...],
    minutes: int,
) -> Check:
    """Ask about words that were not sorted or dictated."""
    order = ways_to_ask(context.focus.kind)
    questions = [
        ask_about(how, vocabulary.words[word], context)
        for how, word in zip(cycle(order), words.check, strict=False)
    ]
    questions += [_trap(word, context) for word in traps]
    return Check(CHECK, minutes, "Quick check", SCRIPT, tuple(questions[:QUICK_CHECK]))


def ways_to_ask(kind: Kind) -> tuple[str, ...]:
    """Return how the words of a focus are asked about, in turn."""
    return _FOR_ENDINGS if kind is Kind.ENDINGS else _FOR_LETTERS


def ask_about(how: str, candidate: Candidate, context: Context) -> Question:
    """Make a question about a word, in one of the ways of :func:`ways_to_ask`."""
    return _WAYS[how](candidate, context)


def traps_among(watch_outs: tuple[WatchOut, ...], context: Context) -> tuple[str, ...]:
    """Return words that only look inflected, to end the check with."""
    bare = [watch.word for watch in watch_outs if watch.word.isalpha()]
    found = (find_bases(word, context.lexicon, context.gate) for word in bare)
    return tuple(undone.form for undone in found if not undone.origins)[:MOST_TRAPS]


def _spell(candidate: Candidate, context: Context) -> Question:
    row = row_for(candidate, context)
    rule = row.name if row else ""
    part = (candidate.parts_of_speech or ("",))[0]
    suffix = candidate.ending.suffix if candidate.ending else ""
    reading = _READINGS.get((part, suffix)) or _READINGS.get((part, ""), "with its ending")
    ask = f"Here is “{candidate.base}”. Write “{candidate.word}”, {reading}."
    return Question(SPELL, ask, candidate.word, candidate.word, f"uses the rule: {rule}")


_READINGS = {
    ("noun", "s"): "more than one",
    ("verb", "s"): "what he or she does",
    ("verb", "ed"): "what someone did",
    ("verb", "ing"): "what someone is doing",
    ("verb", ""): "someone or something that does it",
    ("adjective", "er"): "more so",
    ("adjective", "est"): "most of all",
    ("adjective", ""): "made from it",
    ("adverb", ""): "made from it",
    ("noun", ""): "made from it",
}
"""(how the base is used, ending) -> how the word is asked for; empty: any other ending."""


def _say(candidate: Candidate, context: Context) -> Question:
    sound = written_sound(candidate.sound, context.style)
    ask = f"Show “{candidate.word}”. Read it. What does the ending say?"
    shows = f"reads -{candidate.spelling} as {sound}"
    return Question(SAY, ask, candidate.word, sound, shows)


def _find(candidate: Candidate, _: Context) -> Question:
    ask = f"Show “{candidate.word}”. Which word does it come from? Spell it."
    shows = "takes the ending off and spells the base"
    return Question(FIND, ask, candidate.word, candidate.base, shows)


def _trap(word: str, context: Context) -> Question:
    why = in_style(find_bases(word, context.lexicon, context.gate).note, context.style)
    ask = f"Show “{word}”. Does it have an ending that was added?"
    return Question(TRAP, ask, word, "no", f"looks at the whole word: {why}")


def _read(candidate: Candidate, context: Context) -> Question:
    letters = f"{candidate.spelling} as {sound_in(candidate, context)}"
    ask = f"Show “{candidate.word}”. Read it."
    return Question(READ, ask, candidate.word, candidate.word, f"reads {letters}")


def _write(candidate: Candidate, context: Context) -> Question:
    letters = f"{sound_in(candidate, context)} as {candidate.spelling}"
    ask = f"Say “{candidate.word}”. Write it."
    return Question(WRITE, ask, candidate.word, candidate.word, f"spells {letters}")


def _hear(candidate: Candidate, context: Context) -> Question:
    kind = "vowel sound" if candidate.sound in VOWELS else "sound"
    letters = candidate.spelling
    does = "does" if len(letters) == 1 else "do"
    named = name_letters(letters)
    ask = f"Show “{candidate.word}”. Which {kind} {does} the {named} say here?"
    return Question(
        HEAR, ask, candidate.word, sound_in(candidate, context), f"knows what {letters} says"
    )


_WAYS: dict[str, Callable[[Candidate, Context], Question]] = {
    SPELL: _spell,
    SAY: _say,
    FIND: _find,
    READ: _read,
    WRITE: _write,
    HEAR: _hear,
}


def compose_next(context: Context, *, has_check: bool) -> Next:
    """Say what follows from the result."""
    focus = context.request.focus
    again = f"phonodrill lesson --focus {focus} --band {context.request.band} --seed"
    is_task = context.focus.kind is Kind.TASK
    too_few = (
        "show the task again and do the warm-up once more, before another lesson on it"
        if is_task
        else "teach the rule again with its examples, then build words"
    )
    advice: tuple[Advice, ...]
    if not has_check:
        advice = (
            Advice("most dictated words right", "go on to the next focus of your order"),
            Advice("otherwise", f"the same focus with other words: {again} {_other_seed(context)}"),
        )
    else:
        advice = (
            Advice("7 or 8 right", "go on to the next focus of your order; review it in a week"),
            Advice(
                "5 or 6 right", f"the same focus with other words: {again} {_other_seed(context)}"
            ),
            Advice("4 or fewer right", too_few),
            Advice("one kind of item wrong", "practice that part only: see what its answer shows"),
        )
    return Next(NEXT, 0, "What to do next", NEXT_SCRIPT if has_check else "", advice)


def _other_seed(context: Context) -> int:
    return context.request.seed + 1

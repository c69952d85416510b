"""What another program might do with phonodrill: checked by mypy --strict, and run.

It is checked against the installed package, not against the sources beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from phonodrill import (
    TASKS,
    By,
    Entry,
    Gate,
    Item,
    Lesson,
    Lexicon,
    Notation,
    PhonodrillError,
    Position,
    Query,
    Request,
    Sort,
    WarmUp,
    __version__,
    add_ending,
    classify,
    guess_reading,
    make_lesson,
    make_warmup,
    open_gate,
    parse_accents,
    select,
    shortest_chain,
    sort_vocabulary,
)


def lines_of(warmup: WarmUp) -> Iterator[str]:
    """Yield a line an item: what is said and the answer."""
    for item in warmup.items:
        yield f"{item.stimulus} -> {item.answer}"


def first_letters(items: Sequence[Item]) -> set[str]:
    """Return the letters that are taken off."""
    return {item.stimulus[:1] for item in items}


def at_the_harbor() -> list[str]:
    """Make some of everything for a class at the harbor."""
    said: list[str] = [__version__]
    with Lexicon() as lexicon:
        query = Query(band=2, accents=parse_accents("cot-caught"))
        warmup = make_warmup(lexicon, TASKS["delete"], Position.FIRST, query, count=3, seed=9)
        said += lines_of(warmup)
        said += sorted(first_letters(warmup.items))
        entry: Entry | None = lexicon.get("torches")
        if entry is not None:
            said.append(entry.pronunciations[0].arpabet)
            endings = classify(entry.word, lexicon, lexicon.ending_exceptions())
            said += [ending.base for ending in endings]
            gate: Gate = open_gate(lexicon)
            normals = [way.normal for way in entry.pronunciations]
            said.append(str(gate.allows(entry.word, normals)))
        sort: Sort = sort_vocabulary(lexicon, query, By.SOUND, 2, Random(9))
        said += [str(len(group.words)) for group in sort.groups]
        said += [form.form for form in add_ending("ferry", "s", lexicon).forms]
        lesson: Lesson = make_lesson(lexicon, Request("es,ies", minutes=25, notation=Notation.IPA))
        said.append(lesson.title)
        chain = shortest_chain(select(lexicon, query), query, "crab", "clam")
        said += [step.word for step in chain.steps]
    return said


def ask(word: str) -> str:
    """Return how a word may be said, or the one line that says why not."""
    try:
        with Lexicon() as lexicon:
            return guess_reading(word, lexicon).said.arpabet
    except PhonodrillError as error:
        return f"{error.message}: {error.hint}"


if __name__ == "__main__":
    print("\n".join([*at_the_harbor(), ask("skalope"), ask("zzz")]))

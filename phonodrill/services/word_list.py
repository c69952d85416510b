"""A teacher's own word list, and why some of its words cannot be used."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import NO_CAPITAL, may_be_said, may_be_shown, nearest_words, own_entries

if TYPE_CHECKING:
    from phonodrill.gate import Gate
    from phonodrill.lexicon.entry import Entry
    from phonodrill.lexicon.store import Lexicon

NOT_FOR_CLASS = "that is not a word for class"
MOST_SUGGESTED = 10
"""Words of a list for which others are suggested; to look for them takes long."""
LONGEST_NAMED = 40
"""Letters beyond which a word is not repeated in a note."""


class Line(NamedTuple):
    """One word of the list and the line it stands on."""

    number: int
    word: str


def typed_words(text: str) -> list[Line]:
    """Read words typed in, parted by spaces, commas or lines; the numbers count words.

    >>> typed_words("Gulls, ropes")
    [Line(number=1, word='gulls'), Line(number=2, word='ropes')]
    """
    words = text.replace(",", " ").replace(";", " ").lower().replace("’", "'").split()
    return [Line(number, word) for number, word in enumerate(words, 1)]


def named(word: str) -> str:
    """Write a word for a note, cut if it is very long.

    >>> named("gull"), named("x" * 50)[-3:]
    ("'gull'", "x…'")
    """
    return repr(word if len(word) <= LONGEST_NAMED else f"{word[:LONGEST_NAMED]}…")


def is_fit(word: str, lexicon: Lexicon, gate: Gate) -> bool:
    """Whether a word, known or not, may be shown to whoever asked for it."""
    entry = lexicon.get(word)
    return may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)


def why_unusable(
    lexicon: Lexicon,
    gate: Gate,
    own: Mapping[str, Entry] | None = None,
    may_be_used: Callable[[Entry, Gate], bool] = may_be_said,
) -> Callable[[str], str | None]:
    """Return a check that says why a word cannot be said, shown or printed, or None.

    Args:
        lexicon: the open lexicon.
        gate: the never-say check.
        own: entries that go before the lexicon's: words a teacher added.
        may_be_used: whether an entry may be used in the way that is asked for.
    """
    added = own or {}
    suggested = 0

    def why_not(word: str) -> str | None:
        nonlocal suggested
        entry = added.get(word) or lexicon.get(word)
        if entry:
            return _why_not(entry, gate, may_be_used, can_add=own is not None)
        if not gate.allows(word, [], alone=False):
            return "not a word for class"
        near = ""
        if suggested < MOST_SUGGESTED and len(word) <= LONGEST_NAMED:
            suggested += 1
            near = ", ".join(nearest_words(lexicon, word))
        return f"{named(word)} is not in the lexicon" + (f"; did you mean {near}?" if near else "")

    return why_not


def _why_not(
    entry: Entry, gate: Gate, may_be_used: Callable[[Entry, Gate], bool], *, can_add: bool
) -> str | None:
    """Say why a known word cannot be used, or None."""
    if may_be_used(entry, gate):
        return None
    to_add = can_add and entry.word.isalpha()
    hint = f"; to use it: phonodrill words add {entry.word}" if to_add else ""
    if may_be_shown(entry, gate) and entry.needs_capital:
        return f"{NO_CAPITAL.format(word=entry.word)}{hint}"
    if may_be_shown(entry, gate) and not entry.band:
        return f"{entry.word!r} is rare, or a name{hint}"
    return "not a word for class"


def problems_of(
    lines: Iterable[Line], why: Callable[[str], str | None], what: str = "line"
) -> tuple[list[str], list[str]]:
    """Part the words that can be used from those that cannot.

    Args:
        lines: the list.
        why: says why a word cannot be used, or None.
        what: what the numbers count.

    Returns:
        The usable words, and one note for each other line.
    """
    usable, problems = [], []
    for line in lines:
        reason = why(line.word)
        if reason:
            problems.append(f"{what} {line.number}: {reason}")
        else:
            usable.append(line.word)
    return usable, problems


def usable_words(
    lexicon: Lexicon,
    lines: Iterable[Line],
    overlay: Overlay = NO_OVERLAY,
    *,
    what: str = "line",
    name: str = "the list",
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the words of a list that can be used, and a note for each other one.

    Args:
        lexicon: the open lexicon.
        lines: the list.
        overlay: words the teacher added or blocked.
        what: what the numbers count.
        name: of the list, for the message.

    Raises:
        PhonodrillError: if no word can be used.
    """
    from phonodrill.gate import open_gate

    gate = open_gate(lexicon, overlay.words("block"))
    why = why_unusable(lexicon, gate, own_entries(lexicon, overlay))
    usable, problems = problems_of(lines, why, what)
    if not usable:
        first = problems[0] if problems else "there is none"
        raise PhonodrillError(f"no word of {name} can be used: {first}", "another list")
    return tuple(usable), tuple(problems)

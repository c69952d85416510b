"""Read a lesson that a teacher may have edited: compose it again and compare every answer.

Only what was chosen is taken from the file (words, items, sentences); what
follows from it is worked out anew. Where the file says something else than
that, the file is wrong, and one line says where. Wording may be changed freely.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lesson import plan
from phonodrill.lesson.checking import TRAP
from phonodrill.lesson.compose import Choice, Prepared, compose, for_request, prepare, with_words
from phonodrill.lesson.fit import check_text, check_words
from phonodrill.lesson.oral import Drawn, find_item
from phonodrill.lesson.plan import Part
from phonodrill.lesson.request import Request
from phonodrill.lesson.task_part import BY_EAR, TaskItems
from phonodrill.lesson.tree import Lesson, WatchOut
from phonodrill.lesson.words import Words
from phonodrill.lexicon.entry import Sentence
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.sounds.places import Position
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS

WORDING = frozenset(
    ("title", "script", "say", "answer_line", "correction", "ask", "shows", "result", "do", "notes")
) | {"caution", "how_to_say"}
"""Fields that a teacher may word otherwise; their words still pass the gate."""
FOUND_BY = ("stimulus", "sound", "new", "answer", "heard")
"""What tells an oral item from the others that its words give."""
ITEMS = {
    plan.REVIEW: "letters",
    plan.SENTENCES: "lines",
    plan.CHECK: "questions",
}
"""Where a section keeps its items, if not under ``words``."""


class Read(NamedTuple):
    """A lesson that was read, and what it was composed from."""

    lesson: Lesson
    ready: Prepared
    choice: Choice


def read_lessons(data: Any, lexicon: Lexicon, overlay: Overlay = NO_OVERLAY) -> list[Read]:
    """Read the lessons of a JSON file.

    Args:
        data: what was parsed: ``{"lesson": {...}}`` or ``{"lessons": [...]}``.
        lexicon: the open lexicon.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: naming the first thing that is not right.
    """
    if isinstance(data, dict) and "lesson" in data:
        listed = [data["lesson"]]
    elif isinstance(data, dict) and isinstance(data.get("lessons"), list) and data["lessons"]:
        listed = data["lessons"]
    else:
        raise PhonodrillError("there is no lesson in it", "a file that phonodrill lesson wrote")
    return [_read_one(one, lexicon, overlay) for one in listed]


def _read_one(data: Any, lexicon: Lexicon, overlay: Overlay) -> Read:
    request = _request(_get(data, "request", dict, "lesson"))
    ready = for_request(prepare(lexicon, request, overlay), request)
    sections: dict[str, Any] = {}
    for section in _get(data, "sections", list, "lesson"):
        name = _get(section, "name", str, "sections")
        if name not in plan.SECTIONS or name in sections:
            raise PhonodrillError(f"sections: {name!r} is unknown or there twice", "leave it out")
        sections[name] = section
    words = _words(sections)
    ready = with_words(ready, words.every)
    choice = _choice(ready, words, sections, data)
    lesson = _merge(compose(ready, choice), data, "lesson", ready)
    return Read(lesson, ready, choice)


def _request(data: dict[str, Any]) -> Request:
    kinds = {"band": int, "minutes": int, "seed": int, "day": int, "focus": str, "notation": str}
    fields = {name: _get(data, name, kind, "request") for name, kind in kinds.items()}
    taught = _texts(_get(data, "taught", list, "request"), "request, taught")
    # A file written before there were words to review has none.
    review = _texts(_get({"review": [], **data}, "review", list, "request"), "request, review")
    data["review"] = list(review)
    if fields["band"] not in (1, 2, 3):
        raise PhonodrillError(f"request: band is {fields['band']}", "1, 2 or 3")
    if fields["notation"] not in ("ipa", "marks", "arpabet"):
        raise PhonodrillError(f"request: notation is {fields['notation']!r}", "ipa, marks, arpabet")
    return Request(**fields, taught=taught, review=review)


def _choice(ready: Prepared, words: Words, sections: dict[str, Any], data: Any) -> Choice:
    check_words(ready, words)
    sentences = tuple(
        _sentence(ready, line, number)
        for number, line in enumerate(_items(sections, plan.SENTENCES), 1)
    )
    dictated = str(sections.get(plan.DICTATION, {}).get("sentence", ""))
    if dictated:
        check_text(ready, dictated, "dictation, sentence")
    parts = tuple(
        Part(name, _get(sections[name], "minutes", int, name), len(_items(sections, name)))
        for name in plan.SECTIONS
        if name in sections
    )
    return Choice(
        parts,
        words,
        _oral(ready, sections.get(plan.WARMUP, {}), plan.WARMUP),
        sentences,
        dictated,
        _watch_outs(ready, sections.get(plan.RULE, {})),
        tuple(
            _get(row, "word", str, "check")
            for row in _items(sections, plan.CHECK)
            if row.get("how") == TRAP
        ),
        _texts(_get(data, "notes", list, "lesson"), "notes"),
        TaskItems(
            *(_oral(ready, sections.get(name, {}), name) for name in (plan.RULE, plan.CHECK))
        ),
    )


def _words(sections: dict[str, Any]) -> Words:
    listed = _items(sections, plan.LIST)
    asked = [row for row in _items(sections, plan.CHECK) if row.get("how") not in (TRAP, BY_EAR)]
    rule = sections.get(plan.RULE, {})
    points = [] if rule.get("activities") else _list_of(rule, "points")
    return Words(
        _named(points, plan.RULE),
        _named(_items(sections, plan.BUILD), plan.BUILD),
        _named(listed, plan.LIST),
        _named([row for row in listed if row.get("review")], plan.LIST),
        _texts(_items(sections, plan.SORT), plan.SORT),
        _named(_items(sections, plan.BASES), plan.BASES),
        _named(_items(sections, plan.DICTATION), plan.DICTATION),
        _named(asked, plan.CHECK),
    )


def _items(sections: dict[str, Any], name: str) -> list[Any]:
    if name not in sections or name in (plan.WARMUP, plan.RULE, plan.NEXT):
        return []
    found: list[Any] = _get(sections[name], ITEMS.get(name, "words"), list, name)
    if name != plan.SORT and not all(isinstance(row, dict) for row in found):
        raise PhonodrillError(f"{name}: an item is no record", "the form that was written")
    return found


def _named(rows: Any, where: str) -> tuple[str, ...]:
    return tuple(_get(row, "word", str, where).lower() for row in rows)


def _oral(ready: Prepared, section: dict[str, Any], name: str) -> tuple[Drawn, ...]:
    drawn = []
    for activity in _list_of(section, "activities"):
        task, at = _get(activity, "task", str, name), _get(activity, "at", str, name)
        tasks = TASKS if name == plan.WARMUP else {*TASKS} & {ready.context.focus.task}
        if task not in tasks or at not in TASKS[task].positions:
            raise PhonodrillError(
                f"{name}: there is no task {task} at {at}", "one that was written"
            )
        items = tuple(
            _item(ready, (name, task, at), row, number)
            for number, row in enumerate(_get(activity, "items", list, name), 1)
        )
        drawn.append(Drawn(task, Position(at), items))
    return tuple(drawn)


def _item(ready: Prepared, kind: tuple[str, str, str], row: Any, number: int) -> Item:
    section, task, at = kind
    words = _texts(_get(row, "words", list, section), section)
    where = f"{section}, {task} {at}, item {number}"
    for word in words:
        check_text(ready, word, where)
    said = {name: _get(row, name, str, where) for name in FOUND_BY}
    item = find_item(ready.context, task, Position(at), words, said)
    if item is None:
        shown = said["answer"] or said["sound"]
        raise PhonodrillError(
            f"{where}: {said['stimulus'] or ', '.join(words)} does not give {shown!r}",
            "the item that was written, or leave it out",
        )
    return item


def _sentence(ready: Prepared, line: Any, number: int) -> Sentence:
    where = f"sentences, {number}"
    word, text = _get(line, "word", str, where), _get(line, "text", str, where)
    check_text(ready, text, where, must_have=word)
    return Sentence(word, _get(line, "part_of_speech", str, where), "", text)


def _watch_outs(ready: Prepared, section: dict[str, Any]) -> tuple[WatchOut, ...]:
    found = []
    for row in _list_of(section, "watch_outs"):
        watch = WatchOut(_get(row, "word", str, "rule"), _get(row, "why", str, "rule"))
        if watch not in ready.watch_outs:
            raise PhonodrillError(
                f"rule, watch out: {watch.word} is not known to be one", "leave it out"
            )
        found.append(watch)
    return tuple(found)


def _merge(node: Any, data: Any, where: str, ready: Prepared) -> Any:
    """Compare what was composed with what was written, and keep the teacher's wording.

    Raises:
        PhonodrillError: at the first difference.
    """
    if isinstance(node, tuple) and hasattr(node, "_fields"):
        return _merge_record(node, data, where, ready)
    if isinstance(node, tuple):
        if not isinstance(data, list) or len(data) != len(node):
            size = len(data) if isinstance(data, list) else "no list"
            raise PhonodrillError(
                f"{where}: {len(node)} expected, {size} there", "swap a word instead"
            )
        return tuple(
            _merge(own, other, f"{where} {number}", ready)
            for number, (own, other) in enumerate(zip(node, data, strict=True), 1)
        )
    if node != data or isinstance(node, bool) is not isinstance(data, bool):
        raise PhonodrillError(f"{where} is {data!r}", f"{node!r} is right")
    return node


def _merge_record(node: Any, data: Any, where: str, ready: Prepared) -> Any:
    if not isinstance(data, dict):
        raise PhonodrillError(f"{where} is no record", "the form that was written")
    where = data.get("name", where) if isinstance(data.get("name", ""), str) else where
    merged = {}
    for field, own in node._asdict().items():
        if field not in data:
            raise PhonodrillError(f"{where}: there is no {field}", "the form that was written")
        place = f"{where}, {field}"
        if field in WORDING:
            merged[field] = _wording(own, data[field], place, ready)
        else:
            merged[field] = _merge(own, data[field], place, ready)
    return type(node)(**merged)


def _wording(own: Any, written: Any, where: str, ready: Prepared) -> Any:
    """Take the teacher's words; what was changed passes the gate."""
    if isinstance(own, tuple):
        texts = _texts(written if isinstance(written, list) else [written], where)
        for text in set(texts) - {*own}:
            check_text(ready, text, where, known=False)
        return texts
    if not isinstance(written, str):
        raise PhonodrillError(f"{where} is no text", "text")
    if written != own:
        check_text(ready, written, where, known=False)
    return written


def _get(data: Any, name: str, kind: type, where: str) -> Any:
    value = data.get(name) if isinstance(data, dict) else None
    if not isinstance(value, kind) or (isinstance(value, bool) and kind is int):
        raise PhonodrillError(f"{where}: {name} is missing or wrong", "the form that was written")
    return value


def _list_of(section: dict[str, Any], name: str) -> list[Any]:
    """What a section lists under a name; not every section has one of that name."""
    if name not in section:
        return []
    listed: list[Any] = _get(section, name, list, section.get("name", "sections"))
    return listed


def _texts(values: Iterable[Any], where: str) -> tuple[str, ...]:
    listed = tuple(values)
    if not all(isinstance(value, str) for value in listed):
        raise PhonodrillError(f"{where}: something is no text", "text")
    return listed

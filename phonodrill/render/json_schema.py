"""JSON Schemas (draft 2020-12) of all JSON, made from the types of its fields.

No command needs this module: it is for tests, for the documentation, and for programs
that want to know what they get.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator
from enum import StrEnum
from types import UnionType
from typing import (
    Annotated,
    Any,
    Literal,
    NamedTuple,
    NotRequired,
    Union,
    get_args,
    get_origin,
    get_type_hints,
    is_typeddict,
)

from phonodrill.errors import PhonodrillError
from phonodrill.render.as_json import SCHEMA
from phonodrill.render.fields import common, endings, lesson, oral, reading, records, words

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_SIMPLE = {str: "string", bool: "boolean", int: "integer", float: "number", type(None): "null"}
_ROLE = re.compile(r":\w+:`~?(?:[\w.]+\.)?(\w+)`")


class Kind(NamedTuple):
    """A kind of JSON.

    Attributes:
        shapes: the types it may have, most often one.
        commands: those that write it, without ``phonodrill`` before them.
        is_line: whether it is one of many lines, which do not begin with the versions.
    """

    shapes: tuple[type, ...]
    commands: tuple[str, ...]
    is_line: bool = False


KINDS = {
    "warmup": Kind((oral.WarmUp,), ("warmup",)),
    "chain": Kind((oral.Chain,), ("chain",)),
    "lesson": Kind((lesson.OneLesson, lesson.DaysOfLessons), ("lesson", "lesson swap")),
    "bank-line": Kind((oral.Item,), ("bank",), is_line=True),
    "endings-sort": Kind((endings.Sort,), ("endings sort",)),
    "endings-add": Kind((endings.Added,), ("endings add",)),
    "endings-base": Kind((endings.Bases,), ("endings base",)),
    "endings-table": Kind((endings.RuleCard,), ("endings table",)),
    "endings-lookalikes": Kind((endings.Lookalikes,), ("endings lookalikes",)),
    "sentences": Kind((words.Sentences,), ("sentences",)),
    "words": Kind((words.OwnWords,), ("words list",)),
    "word": Kind((words.Word, words.GuessedWord), ("word",)),
    "spellings": Kind((reading.Spellings,), ("spellings",)),
    "decodable": Kind((reading.Decodable,), ("decodable",)),
    "pairs": Kind((reading.Pairs,), ("pairs",)),
    "passage": Kind((reading.Passage,), ("passage",)),
    "taught-check": Kind((reading.TaughtCheck,), ("taught check",)),
    "taught-suggest": Kind((reading.TaughtSuggestion,), ("taught suggest",)),
    "print-cards": Kind((words.Cards,), ("print cards",)),
    "print-mat": Kind((words.Mat,), ("print mat",)),
    "print-boxes": Kind((words.Boxes,), ("print boxes",)),
    "print-list": Kind((words.PrintedList,), ("print list",)),
    "groups": Kind((records.Groups,), ("group list",)),
    "check": Kind((records.Check,), ("check make", "check show")),
    "checks": Kind((records.Checks,), ("check list",)),
    "student": Kind((records.Student,), ("records export",)),
    "progress": Kind((records.Progress,), ("progress",)),
    "next": Kind((records.Next,), ("next",)),
    "lexicon": Kind((words.Sources,), ("lexicon",)),
}
"""Name of a kind -> its types and the commands that write it."""


def json_schema(kind: str) -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of what a command writes as JSON.

    Args:
        kind: a key of ``KINDS``: the command with a hyphen for a space, as
            ``endings-sort``; ``bank-line`` for a line of ``phonodrill bank``.

    Raises:
        PhonodrillError: if there is no such kind.

    >>> json_schema("words")["required"]
    ['phonodrill', 'words']
    """
    if kind not in KINDS:
        raise PhonodrillError(f"no JSON is of the kind {kind!r}", ", ".join(KINDS))
    wanted = KINDS[kind]
    defined: dict[str, Any] = {}
    shapes = [_object(shape, defined, versions=not wanted.is_line) for shape in wanted.shapes]
    whole = shapes[0] if len(shapes) == 1 else {"oneOf": shapes}
    writers = ", ".join(f"phonodrill {command}" for command in wanted.commands)
    about = {"title": f"phonodrill {kind}", "$comment": f"Written by {writers}."}
    schema = {"$schema": DIALECT, **about, **whole}
    return schema | ({"$defs": dict(sorted(defined.items()))} if defined else {})


def described(record: type) -> tuple[str, dict[str, str]]:
    """Return what the docstring says of a record, and of each of its fields.

    Args:
        record: a TypedDict or a NamedTuple; of the latter some fields of the lesson's
            tree are described in :mod:`phonodrill.render.fields.lesson`.

    >>> described(common.Versions)[1]["version"]
    'Of the program.'
    """
    text = _ROLE.sub(r"\1", inspect.cleandoc(record.__doc__ or "").replace("``", ""))
    summary, _, rest = text.partition("\n\n")
    fields = dict(_read_fields(rest.partition("Attributes:\n")[2]))
    said_by_name = {
        name: text for (owner, name), text in lesson.SAID_BY_NAME.items() if owner is record
    }
    if {"name", "minutes", "title", "script"} <= set(record.__annotations__):
        said_by_name |= lesson.OF_EVERY_SECTION
    return " ".join(summary.split()), said_by_name | fields


def _read_fields(block: str) -> Iterator[tuple[str, str]]:
    for entry in re.split(r"\n(?=    \S)", block.partition("\n\n")[0]):
        names, _, text = entry.strip().partition(": ")
        line = " ".join(text.split())
        for name in names.split(", "):
            yield name, line[:1].upper() + line[1:]


def _object(record: type, defined: dict[str, Any], *, versions: bool = False) -> dict[str, Any]:
    """Return the schema of a record; what it has in it goes into ``defined``."""
    summary, said = described(record)
    properties: dict[str, Any] = {"phonodrill": _of_versions()} if versions else {}
    optional = []
    for name, hint in get_type_hints(record, include_extras=True).items():
        about = said.get(name) or _summary_within(hint)
        properties[name] = {"description": about, **_schema_of(hint, defined)}
        # Of annotations kept as text, __optional_keys__ knows nothing.
        if get_origin(hint) is NotRequired:
            optional.append(name)
    return {
        "description": summary,
        "type": "object",
        "properties": properties,
        "required": [name for name in properties if name not in optional],
        "additionalProperties": False,
    }


def _of_versions() -> dict[str, Any]:
    schema = _object(common.Versions, {})
    schema["properties"]["schema"]["const"] = SCHEMA
    return schema


def _summary_within(hint: Any) -> str:
    """Return what the records in a list are, for a field whose name says enough."""
    found = [described(inner)[0] for inner in get_args(hint) if _is_record(inner)]
    if not found:
        raise TypeError(f"a field of the type {hint} is not described")
    return found[0]


def _is_record(hint: Any) -> bool:
    return is_typeddict(hint) or (isinstance(hint, type) and hasattr(hint, "_fields"))


def _schema_of(hint: Any, defined: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of any type that stands in a record."""
    if isinstance(hint, type) and hint in _SIMPLE:
        return {"type": _SIMPLE[hint]}
    if _is_record(hint):
        return _reference(hint, defined)
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return {"type": "string", "enum": [str(value) for value in hint]}
    parts = get_args(hint)
    return _OF_ORIGIN[get_origin(hint)](parts, defined)


def _reference(record: type, defined: dict[str, Any]) -> dict[str, Any]:
    name = record.__name__
    if name not in defined:
        defined[name] = _object(record, defined)
    return {"$ref": f"#/$defs/{name}"}


def _annotated(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    schema = _schema_of(parts[0], defined)
    for more in parts[1:]:
        is_keyword = isinstance(more, common.Keyword)
        schema |= {more.name: more.value} if is_keyword else _schema_of(more, defined)
    return schema


def _list(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    return {"type": "array", "items": _schema_of(parts[0], defined)}


def _tuple(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    if parts[-1] is ...:
        return _list(parts, defined)
    places = [_schema_of(part, defined) for part in parts]
    return {"type": "array", "prefixItems": places, "items": False, "minItems": len(places)}


def _mapping(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    return {"type": "object", "additionalProperties": _schema_of(parts[1], defined)}


def _choice(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    return {"anyOf": [_schema_of(part, defined) for part in parts]}


def _literal(parts: tuple[Any, ...], _: dict[str, Any]) -> dict[str, Any]:
    return {"enum": list(parts)}


def _within(parts: tuple[Any, ...], defined: dict[str, Any]) -> dict[str, Any]:
    return _schema_of(parts[0], defined)


_OF_ORIGIN: dict[Any, Callable[[tuple[Any, ...], dict[str, Any]], dict[str, Any]]] = {
    Annotated: _annotated,
    Literal: _literal,
    NotRequired: _within,
    Union: _choice,
    UnionType: _choice,
    dict: _mapping,
    list: _list,
    tuple: _tuple,
}

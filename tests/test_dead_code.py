"""No function, class, record or field of the package is there for nothing, tests apart."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from vulture import Vulture

import phonodrill
from tests.conftest import ROOT

CALLED_BY_DECORATORS = [
    "@app.*",
    "@page.*",
    "@api.*",
    "@*.command",
    "@*.callback",
    "@model_validator*",
]
CALLED_BY_NAME = {
    "typer": ["list_commands", "ctx"],
    "hatchling": ["LexiconBuildHook", "initialize", "build_data"],
    "pydantic": ["model_config", "cls"],
    "uvicorn": ["should_exit"],
    "mkdocs": ["on_*", "Docstrings"],
    "the interpreter": ["__getattr__", "__dir__", "__doc__"],
    "the values of an enumeration, read from a table": ["TRIGRAPH", "FOUR_LETTER", "SILENT_LETTER"],
    "the table of docs/taught.md": ["CONSTRAINTS"],
    "columns of a table, inserted as a row": ["license", "credit", "used_for"],
    "what a student answers, in a lesson as data": ["answer_arpabet"],
    "the button of a form": ["REMOVE"],
    "the tests that go the way of the tutorial": ["SHOTS"],
}
FIELDS_OF_JSON = ROOT / "phonodrill" / "render" / "fields"
READ_ELSEWHERE = [
    path for kind in ("*.html", "*.typ", "*.js") for path in (ROOT / "phonodrill").rglob(kind)
]


def unused(folder: Path) -> list[str]:
    ignored = [name for names in CALLED_BY_NAME.values() for name in names]
    looked_at = Vulture(
        ignore_names=[*ignored, *phonodrill.__all__], ignore_decorators=CALLED_BY_DECORATORS
    )
    looked_at.scavenge([folder, ROOT / "docs"], exclude=["*/migrations/*"])
    elsewhere = set(re.findall(r"\w+", " ".join(p.read_text("utf-8") for p in READ_ELSEWHERE)))
    return [
        f"{item.filename}: {item.typ} {item.name}"
        for item in looked_at.get_unused_code(min_confidence=60)
        # What is set on an object of a library is read there; fields of JSON are read by others.
        if item.typ != "attribute"
        and item.name not in elsewhere
        and FIELDS_OF_JSON not in item.filename.parents
    ]


@pytest.mark.source("vulture: code that nothing uses")
def test_nothing_is_there_for_nothing() -> None:
    assert unused(ROOT / "phonodrill") == []


def test_dead_code_is_found(tmp_path: Path) -> None:
    (tmp_path / "dead.py").write_text("def never_called(): ...\n")
    assert [one.rpartition(" ")[2] for one in unused(tmp_path) if "dead.py" in one] == [
        "never_called"
    ]

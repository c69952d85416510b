"""What each command writes as JSON has the fields that its schema says, and no others."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError

from docs.made.commands import walk
from docs.made.schemas import FOLDER, schema_files
from phonodrill import PhonodrillError, json_schema
from phonodrill.cli.main import app
from phonodrill.render.json_schema import KINDS

TEXT = "The ferries sat in the harbor. A skalope wandered by, 12 of them. Many gulls saw it."
RUNS: tuple[tuple[str, str], ...] = (
    ("warmup", "warmup --task delete --band 1 --count 4"),
    ("warmup", "warmup --task segment --count 3 --notation arpabet"),
    ("warmup", "warmup --task identify --count 3 --band 1"),
    ("warmup", "warmup --task blend --made-up --count 3"),
    ("chain", "chain crab clam"),
    ("chain", "chain gull --steps 4"),
    ("lesson", "lesson --focus es,ies --seed 1 --out lesson.json"),
    ("lesson", "lesson --focus delete"),
    ("lesson", "lesson --focus sh --days 2"),
    ("lesson", "lesson swap lesson.json WORD"),
    ("endings-sort", "endings sort --by sound --band 1"),
    ("endings-sort", "endings sort --by spelling --words words.txt"),
    ("endings-sort", "endings sort --by rule --words words.txt"),
    ("endings-sort", "endings sort --by base --band 1 --ending ing"),
    ("endings-add", "endings add ferry --ending s"),
    ("endings-add", "endings add run --ending ed"),
    ("endings-base", "endings base leaves"),
    ("endings-base", "endings base news"),
    ("endings-table", "endings table --ending ed"),
    ("endings-lookalikes", "endings lookalikes --ending es,ies"),
    ("sentences", "sentences ferries"),
    ("words", "words list"),
    ("word", "word ferries"),
    ("word", "word skalope --guess"),
    ("spellings", "spellings /f/ --one-syllable"),
    ("decodable", "decodable --taught default:40"),
    ("pairs", "pairs --sounds i:e"),
    ("pairs", "pairs --kind spelling"),
    ("passage", "passage passage.txt --taught default:40"),
    ("taught-check", "taught check steps.txt --band 1"),
    ("taught-suggest", "taught suggest --start default:120 --band 1"),
    ("print-cards", "print cards torches ropes gulls"),
    ("print-cards", "print cards --ending es --count 4"),
    ("print-mat", "print mat --words words.txt"),
    ("print-boxes", "print boxes ropes crabs said"),
    ("print-list", "print list torches skies"),
    ("print-list", "print list torches --no-key"),
    ("groups", "group list"),
    ("groups", "group list --students"),
    ("check", "check make --group harbor-2 --focus es,ies --seed 1"),
    ("check", "check show CHECK"),
    ("checks", "check list"),
    ("student", "records export A --group harbor-2"),
    ("progress", "progress --group harbor-2"),
    ("progress", "progress --student A --group harbor-2"),
    ("next", "next --group harbor-2"),
    ("next", "next --group harbor-3"),
    ("lexicon", "lexicon --disagreements"),
)


class Written:
    """What the commands wrote, each as the kind it is of."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.check = ""
        self.word = ""

    def ask(self, line: str) -> Any:
        """Run a command in this process and read its JSON."""
        out = self.folder / "out.json"
        words = line.replace("CHECK", self.check).replace("WORD", self.word).split()
        if "--out" in words:
            out = self.folder / words[-1]
            words = words[:-2]
        words = [str(self.folder / w) if (self.folder / w).is_file() else w for w in words]
        app([*words, "--out", str(out)], standalone_mode=False)
        data = json.loads(out.read_text("utf-8"))
        if "--seed 1 --out" in line:
            listed = next(s for s in data["lesson"]["sections"] if s["name"] == "list")
            self.word = next(word["word"] for word in listed["words"] if not word["review"])
        return data

    def keep_checks(self, group: str, focus: str, days: int) -> None:
        """Keep a group with checks; A says no ending right, and nobody leaves off a sound."""
        app(["group", "add", group, "--students", "A,B"], standalone_mode=False)
        for day in range(1, days + 1):
            made = self.ask(
                f"check make --group {group} --focus {focus} --date 2026-11-0{day} --seed 3"
            )
            self.check = made["check"]
            table = self.folder / "results.csv"
            table.write_text("\n".join(_results(made["items"])), "utf-8")
            app(["check", "enter", self.check, "--from", str(table)], standalone_mode=False)


def _results(items: list[dict[str, Any]]) -> Iterator[str]:
    yield "student,item,right,said"
    for number, item in enumerate(items, 1):
        is_hard = "Leave off" in item["ask"]
        yield f"A,{number},{'n,s' if is_hard or item['how'] == 'say the ending' else 'y,'}"
        yield f"B,{number},{'n,' if is_hard else 'y,'}"


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Any]]:
    """Run all commands once, in a home of their own."""
    folder = tmp_path_factory.mktemp("written")
    (folder / "words.txt").write_text("torches\nropes\nskies\nnews\nlighthouse\n", "utf-8")
    (folder / "passage.txt").write_text(TEXT, "utf-8")
    (folder / "steps.txt").write_text("s\na\nt\nm\n", "utf-8")
    asked = Written(folder)
    found: dict[str, list[Any]] = {kind: [] for kind in KINDS}
    with pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
            patch.setenv(name, str(folder))
        patch.setenv("PHONODRILL_DATABASE", str(folder / "records.sqlite"))
        app(["words", "add", "harbor"], standalone_mode=False)
        app(["words", "block", "storm"], standalone_mode=False)
        asked.keep_checks("harbor-2", "es,ies", 2)
        asked.keep_checks("harbor-3", "delete", 1)
        for kind, line in RUNS:
            found[kind].append(asked.ask(line))
        bank = folder / "bank.jsonl"
        app(["bank", "--task", "reverse", "--band", "1", "--out", str(bank)], standalone_mode=False)
        found["bank-line"] = [json.loads(line) for line in bank.read_text("utf-8").splitlines()]
    return found


@pytest.mark.source("JSON Schema, draft 2020-12, as the package jsonschema reads it")
@pytest.mark.parametrize("kind", KINDS)
def test_what_is_written_has_these_fields_and_no_others(
    kind: str, written: dict[str, list[Any]]
) -> None:
    schema = json_schema(kind)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    for data in written[kind]:
        validator.validate(data)
    first = written[kind][0]
    for wrong in (first | {"new_field": 1}, dict(list(first.items())[:-1])):
        with pytest.raises(ValidationError):
            validator.validate(wrong)


@pytest.mark.parametrize("kind", KINDS)
def test_every_record_of_a_schema_is_among_what_was_written(
    kind: str, written: dict[str, list[Any]]
) -> None:
    schema = json_schema(kind)
    met = {name for data in written[kind] for name in _records_in(schema, schema, data)}
    assert met == set(schema.get("$defs", {}))


def _records_in(schema: dict[str, Any], whole: dict[str, Any], data: Any) -> Iterator[str]:
    """Name the records that are there, by the schema."""
    for choice in (*schema.get("oneOf", ()), *schema.get("anyOf", ())):
        if Draft202012Validator({**choice, "$defs": whole.get("$defs", {})}).is_valid(data):
            yield from _records_in(choice, whole, data)
    if "$ref" in schema:
        name = schema["$ref"].removeprefix("#/$defs/")
        yield name
        yield from _records_in(whole["$defs"][name], whole, data)
    if isinstance(data, list):
        for value in data:
            yield from _records_in(schema.get("items") or {}, whole, value)
    elif isinstance(data, dict):
        for name, value in data.items():
            yield from _records_in(schema.get("properties", {}).get(name, {}), whole, value)


def test_every_command_that_writes_json_has_its_schema() -> None:
    writers = {
        name
        for name, command in walk()
        for option in command.params
        if option.name == "format_" and {"json", "jsonl"} & set(option.type.choices)
    }
    # It writes nothing but JSON.
    writers |= {"lesson swap"}
    assert writers == {command for kind in KINDS.values() for command in kind.commands}


def test_the_files_are_those_of_the_types() -> None:
    """One that differs is old: python -m docs.made.schemas."""
    made = schema_files()
    assert set(FOLDER.glob("*")) == set(made)
    for path, text in made.items():
        assert path.read_text("utf-8") == text, path.name


def test_every_field_of_every_record_is_described() -> None:
    for kind in KINDS:
        schema = json_schema(kind)
        shapes = [*schema.get("oneOf", [schema]), *schema.get("$defs", {}).values()]
        for shape in shapes:
            assert shape["description"]
            for name, field in shape["properties"].items():
                assert field["description"].endswith("."), (kind, name)


def test_a_kind_that_there_is_not() -> None:
    with pytest.raises(PhonodrillError, match="'lessons'"):
        json_schema("lessons")

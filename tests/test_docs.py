"""The examples of the documentation print what is shown, and every command in it can be run."""

from __future__ import annotations

import contextlib
import io
import re
import shutil
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient
from typer.main import get_command

import phonodrill
from phonodrill.cli.main import COMMANDS
from phonodrill.web.app import make_app
from phonodrill.web.pages import MENU
from phonodrill.web.records.join import MENU as RECORDS_MENU
from phonodrill.web.settings import Settings
from tests import documented, harbor
from tests.conftest import ROOT

README_LINES = 100
"""Two screens."""
PLACEHOLDERS = {
    "CHECK": str(harbor.KEY),
    "COMMAND": "warmup",
    "FILE": "taught.txt",
    "WORD": "skiff",
    "BACKUP": "kept.sqlite",
}
"""What a reader puts there."""
INSTEAD = {
    "lesson --out lesson.json": "lesson --focus sh --out lesson.json",
    "lesson --out NAME.pptx": "lesson --focus es,ies --out lesson.pptx",
    "warmup --task NAME --at PLACE": "warmup --task delete --at last",
    "records backup FILE": "records backup new.sqlite",
    "taught suggest --out": "taught suggest --out order.txt",
}
"""Commands of which a page shows a part only."""
GOES_ON = "it goes on until it is stopped; tests/web/ and tests/browser/ start it"
READ_ONLY = {
    "serve": GOES_ON,
    "taught suggest": "a search of seconds; tests/cli/test_taught.py runs it with each option",
    "bank --band 3": "300,000 items, half a minute; tests/external/ derives all of them again",
}
"""Begin so: only read, not run, and why."""
TIMED = "docs/performance.md"
"""Its commands are only read, too: the benchmarks run them, and time them."""
EMPTY = {"group add": "the group is there already"}
"""Begin so: at a school without records, and why."""
ASKS = {
    "group remove": "--yes",
    "records erase": "--yes",
    "check remove": "--yes",
}
"""Begin so: ask at a terminal whether one is sure, which a test cannot answer."""
TYPED = {
    "check enter": "yynq",
    "records passphrase": "harbor lights and blue boats\n" * 2,
}
"""What is typed into those that begin so."""
OTHERS = {
    "python -m pytest": "it is what runs this test",
    "python -m pip install": "the first two are run in CI; the rest differ in what is in brackets",
    "python -m venv": "CI does the same",
    ". ": "CI does the same",
    ".ci/run": "it is what runs this test",
    "python docs/pictures/": "tests/test_pictures.py draws what they draw",
    "python -m docs.": "the tests of what is made from the code call it",
    "python -m tests.": "a script for contributors, each with its test or its measured result",
    "curl ": "test_every_address_answers asks for the same",
    "~/drills/bin/python -m pip": "a new environment; CI does the same in another folder",
    "cd ": "a folder of the reader's own",
    "py -m ": "Windows' name for python",
    "python3 -m ": "macOS' name for python",
    "mkdocs ": "the tests of the site build it",
    "NO_MKDOCS_2_WARNING=1 mkdocs ": "the same",
}
"""Begin so: no commands of phonodrill, and why they are not run here."""
PAGED = "On the page:"
ADDRESS = re.compile(r"http://127\.0\.0\.1:8000(/api[^\s\"`]+)")
EXAMPLES = [*documented.examples()]
NAMES = [
    ["records", "backup"],
    ["print", "cards"],
    ["print", "mat"],
    ["print", "boxes"],
    ["print", "list"],
    ["words", "add"],
    ["words", "block"],
    ["words", "remove"],
    ["check", "enter"],
    ["taught", "check"],
    ["warmup", "--task"],
]
"""Of two words; they are followed by what they are about."""


def completed(line: str) -> str:
    """Fill in what the reader fills in; of a command that is only named, ask for its help."""
    line = INSTEAD.get(line, line)
    words = [PLACEHOLDERS.get(word, word) for word in line.split()]
    if is_name(words):
        return " ".join([*words, "--help"])
    return " ".join([*words, *filter(None, [begins(line, ASKS)])])


def is_name(words: list[str]) -> bool:
    """Whether these words only name a command that needs more, or that draws by chance."""
    return not words or (len(words) == 1 and words[0] in COMMANDS) or words in NAMES


def begins(line: str, table: dict[str, str]) -> str | None:
    """Return what a table says of a line."""
    return next((said for start, said in table.items() if f"{line} ".startswith(f"{start} ")), None)


def _last_to_be_run(session: documented.Session) -> tuple[bool, int]:
    return session.page == TIMED, -len(session.lines)


def sessions() -> dict[tuple[str, ...], str]:
    """Return what is to be run, with the page; nothing that is run anyway."""
    found: dict[tuple[str, ...], str] = {}
    done = {example.line for example in EXAMPLES}
    for page, lines in sorted(documented.sessions(), key=_last_to_be_run):
        whole = tuple(completed(line) for line in lines)
        if not done.issuperset(whole):
            found[whole] = page
            done.update(whole)
    return found


SESSIONS = sessions()


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("docs") / "school"
    harbor.build(folder)
    return folder


@pytest.fixture
def folder(school: Path, tmp_path: Path) -> Path:
    return shutil.copytree(school, tmp_path / "school")


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda one: f"{one.page}: {one.line}")
def test_examples_are_what_is_printed(example: documented.Example, folder: Path) -> None:
    """An example that differs is old: python -m tests.documented."""
    ran = harbor.run(folder, documented.arguments_of(example.line))
    assert ran.returncode == 0, ran.stderr
    assert example.shown.splitlines() == documented.lines_of(ran.stdout, example.first)


@pytest.mark.parametrize("lines", SESSIONS, ids="; ".join)
def test_every_command_can_be_run(lines: tuple[str, ...], folder: Path) -> None:
    if any(begins(line, EMPTY) for line in lines):
        shutil.rmtree(folder / harbor.HOME)
        (folder / harbor.HOME).mkdir()
    for line in lines:
        asked = documented.arguments_of(line)
        if "--help" not in asked and (begins(line, READ_ONLY) or SESSIONS[lines] == TIMED):
            read(asked)
        else:
            ran = harbor.run(folder, asked, begins(line, TYPED) or "")
            assert ran.returncode == 0, f"{SESSIONS[lines]}: {line}: {ran.stderr}"


def read(arguments: list[str]) -> None:
    """Take a command apart as it would before it runs; what it does not know is an error."""
    name, *rest = arguments
    command: Any = get_command(import_module(COMMANDS[name]).app)
    while rest and rest[0] in getattr(command, "commands", {}):
        name, *rest = rest
        command = command.commands[name]
    command.make_context(name, rest)


@pytest.mark.parametrize("line", ["serve --harbor", "taught suggest --harbor"])
def test_a_command_that_is_only_read_must_be_right(line: str) -> None:
    with pytest.raises(Exception, match="No such option"):
        read(line.split())


def test_whatever_else_is_typed_is_accounted_for() -> None:
    for page in documented.PAGES:
        for _, language, block in documented.FENCE.findall(page.read_text("utf-8")):
            if language == "sh":
                for part in documented.shell_parts(block):
                    known = part.startswith((f"{documented.PROGRAM} ", *OTHERS))
                    assert known, f"{page.name}: {part}"


@pytest.mark.parametrize("program", [*documented.programs()], ids=lambda one: str(one)[:20])
def test_every_program_runs(program: tuple[str, str], folder: Path) -> None:
    page, code = program
    (folder / "records.sqlite").unlink(missing_ok=True)
    printed = io.StringIO()
    with harbor.at(folder), contextlib.redirect_stdout(printed):
        exec(compile(code, page, "exec"), {"__name__": "__main__"})
    if page == "README.md":
        assert len(printed.getvalue().splitlines()) == 8


def test_what_was_taught_can_be_copied_from_the_pages(folder: Path) -> None:
    found = [
        block
        for page in documented.PAGES
        for _, _, block in documented.FENCE.findall(page.read_text("utf-8"))
        if "word: said was" in block
    ]
    assert len(found) >= 2
    for block in found:
        (folder / "copied.txt").write_text(block, "utf-8")
        ran = harbor.run(folder, ["taught", "check", "copied.txt"])
        assert (ran.returncode, ran.stderr) == (0, "")
        assert re.findall(r"(\w+), taught whole", ran.stdout) == ["said", "was"]


def test_every_address_answers(tmp_path: Path) -> None:
    found = {
        address for page in documented.PAGES for address in ADDRESS.findall(page.read_text("utf-8"))
    }
    assert len(found) >= 3
    settings = Settings(words_file=tmp_path / "words.txt", taught_folder=tmp_path / "taught")
    with TestClient(make_app(settings), base_url="http://127.0.0.1") as client:
        for address in found:
            assert client.get(address).status_code == 200, address


def test_what_is_said_to_be_on_the_page_is_there() -> None:
    """Behind the words "On the page:" its pages are named **so**, buttons and fields *so*."""
    web = ROOT / "phonodrill" / "web"
    shown = "\n".join(
        path.read_text("utf-8") for path in (*web.rglob("*.html"), *web.rglob("*.py"))
    )
    pages = {page.name for page in (*MENU, *RECORDS_MENU)}
    told = 0
    for page in documented.PAGES:
        paragraphs = (" ".join(one.split()) for one in page.read_text("utf-8").split("\n\n"))
        for where in (one.partition(PAGED)[2] for one in paragraphs if PAGED in one):
            told += 1
            named = re.findall(r"\*\*([^*]+)\*\*", where)
            assert set(named) <= pages, f"{page.name}: {where}"
            for part in re.findall(r"(?<!\*)\*([^*]+)\*(?!\*)", where):
                assert part in shown, f"{page.name}: {part}"
    assert told > 30


def test_every_option_that_is_named_is_one() -> None:
    known = {"--upgrade", "--user", "--now", "--benchmark-only", "--strict"}
    known |= {"--sbom", "--show", "--sample", "--again"}  # of programs for contributors
    for name in COMMANDS:
        command: Any = get_command(import_module(COMMANDS[name]).app)
        for each in (command, *walk(command)):
            known |= {option for param in each.params for option in options_of(param)}
    for page in documented.PAGES:
        for inline in re.findall(r"`([^`]*)`", documented.FENCE.sub("", page.read_text("utf-8"))):
            if inline.startswith((f"{documented.PROGRAM} ", "--")):
                for option in re.findall(r"(?<![\w-])--[a-z][a-z-]+", inline):
                    assert option in known, f"{page.name}: {inline}"


def walk(command: Any) -> list[Any]:
    parts = [*getattr(command, "commands", {}).values()]
    return [*parts, *(deeper for part in parts for deeper in walk(part))]


def options_of(param: Any) -> list[str]:
    return [*param.opts, *param.secondary_opts, "--help", "--version"]


def test_the_readme_fits_two_screens() -> None:
    text = (ROOT / "README.md").read_text("utf-8")
    assert len(text.splitlines()) <= README_LINES
    assert len([one for one in EXAMPLES if one.page == "README.md"]) >= 1


def test_every_page_is_linked() -> None:
    """From the README, from the menu of the site, or from a page that one of them links."""
    link = re.compile(r"\]\(([^)#:]+\.md)[^)]*\)")
    menu = re.findall(r": (\S+\.md)$", (ROOT / ".mkdocs.yml").read_text("utf-8"), re.MULTILINE)
    reached: set[Path] = set()
    todo = [ROOT / "README.md", *filter(Path.exists, (ROOT / "docs" / name for name in menu))]
    while todo:
        page = todo.pop()
        reached.add(page)
        links = link.findall(page.read_text("utf-8"))
        # Pages of the reference are made from the code, when the site is built.
        found = {(page.parent / name).resolve() for name in links if "reference/" not in name}
        assert all(one.exists() for one in found), page
        todo += found - reached
    assert set(documented.PAGES) <= reached


def test_every_public_name_is_there() -> None:
    for name in phonodrill.__all__:
        assert getattr(phonodrill, name) is not None
    assert set(dir(phonodrill)) == set(phonodrill.__all__)
    with pytest.raises(AttributeError):
        _ = phonodrill.nothing  # type: ignore[attr-defined]


def test_every_table_is_described() -> None:
    described = (ROOT / "wordlists" / "README.md").read_text("utf-8")
    for path in (ROOT / "wordlists").glob("*.tsv"):
        assert f"`{path.name}`" in described, path.name

"""The page of all commands and their options, from the commands themselves."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

from typer.main import get_command

from phonodrill.cli.main import COMMANDS, app

DOCS = Path(__file__).parents[1]
MOST_EXAMPLES = 3
_CODE = re.compile(
    r"`(phonodrill [^`]+)`|^(phonodrill .*)$|<!-- example: (phonodrill .*?) -->", re.MULTILINE
)
_STANDS_FOR = re.compile(r"\b(BACKUP|CHECK|FILE|NAME|PLACE|WORD)\b|…|--help")
"""What a line has in it that shows a form, or asks for help, and is no example."""
HEAD = """# Commands

Every command and option, with the words of its own `--help`. In an example, names such as
`lesson.json` or `mine.txt` are files of yours.

## What every command has in common

`phonodrill --version`
:   Show the version.

`-h`, `--help`
:   After any command: show its options.

### Exit status

`0`
:   Done. What was left out, or could not be met in full, is told in lines that begin with
    `note:`.

`2`
:   Not done, for a reason that you can mend. It is told in one line that begins with `error:`,
    often with a line after it that begins with `try:`. A file that was to be written is as it was
    before.

`130`
:   Stopped by Ctrl-C, or a question was not answered with yes.

Any other status, or a traceback, is a fault of phonodrill.

### Environment variables

`PHONODRILL_DATABASE`
:   Where the records of checks are: a file, or the address of a PostgreSQL database
    ([more](../records.md#somewhere-else)).

`XDG_CONFIG_HOME`, `XDG_DATA_HOME`
:   On Linux, the folders in which `phonodrill` makes one of its own, for your words and lists of
    steps, and for series and records. Other systems have their own places.

`NO_COLOR`, `COLUMNS`
:   On a terminal: set nothing off by bold type or color; how wide lines may be.
"""


def make_page() -> str:
    """Write the page."""
    examples = find_examples()
    return "\n".join([HEAD, *(_section(name, command, examples) for name, command in walk())])


def walk() -> Iterator[tuple[str, Any]]:
    """Yield each command that can be given, with its whole name: ``endings sort``."""
    for name, module in COMMANDS.items():
        yield from _walk(name, get_command(import_module(module).app))


def _walk(name: str, command: Any) -> Iterator[tuple[str, Any]]:
    inner = getattr(command, "commands", {})
    if not inner or command.params:
        yield name, command
    for part, sub in inner.items():
        yield from _walk(f"{name} {part}", sub)


def find_examples() -> dict[str, list[str]]:
    """Return the commands that README.md and docs/ show: name -> whole lines, in order."""
    names = [name for name, _ in walk()]
    found: dict[str, list[str]] = {name: [] for name in names}
    for page in (DOCS.parent / "README.md", *sorted(DOCS.glob("*.md"))):
        for parts in _CODE.findall(page.read_text("utf-8")):
            line = " ".join("".join(parts).split())
            fitting = [name for name in names if f"{line} ".startswith(f"phonodrill {name} ")]
            name = max(fitting, key=len, default="")
            if name and line != f"phonodrill {name}" and not _STANDS_FOR.search(line):
                found[name].append(line)
    return found


def root() -> Any:
    """Return the command that all others belong to."""
    return get_command(app)


def _section(name: str, command: Any, examples: dict[str, list[str]]) -> str:
    words = name.split()
    text = "\n\n".join(" ".join(part.split()) for part in (command.help or "").split("\n\n"))
    shown = [param for param in command.params if not getattr(param, "hidden", False)]
    arguments = " ".join(_metavar(p) for p in shown if p.param_type_name == "argument")
    usage = " ".join(filter(None, ["phonodrill", name, "[OPTIONS]", arguments]))
    parts = [f"## phonodrill {name} {{ #{'-'.join(words)} }}", text, f"```text\n{usage}\n```"]
    if lines := list(dict.fromkeys(examples[name]))[:MOST_EXAMPLES]:
        parts.append("For example:\n\n```sh\n" + "\n".join(lines) + "\n```")
    parts += [_described(param) for param in shown]
    return "\n\n".join(filter(None, parts)) + "\n"


def _metavar(param: Any) -> str:
    name = param.name.upper().rstrip("_")
    return name + "..." * (param.nargs == -1) if param.required else f"[{name}]"


def _described(param: Any) -> str:
    """Write one option or argument, its values and its default as a definition."""
    about = " ".join((getattr(param, "help", "") or "").split())
    more = [about and f"{about.rstrip('.')}.", _values(param), _default(param)]
    return f"{_names(param)}\n:   {' '.join(filter(None, more))}"


def _names(param: Any) -> str:
    if param.param_type_name == "argument":
        return f"`{param.name.upper().rstrip('_')}`"
    value = "" if param.is_flag else f" {_kind(param)}"
    return ", ".join(f"`{option}{value}`" for option in (*param.opts, *param.secondary_opts))


def _kind(param: Any) -> str:
    if hasattr(param.type, "choices"):
        return "CHOICE"
    names = {"text": "TEXT", "path": "FILE", "file": "FILE", "integer": "N", "float": "NUMBER"}
    return names.get(param.type.name.removesuffix(" range"), "TEXT")


def _values(param: Any) -> str:
    choices = [
        str(getattr(choice, "value", choice)) for choice in getattr(param.type, "choices", ())
    ]
    if choices:
        return f"One of: {', '.join(f'`{choice}`' for choice in choices)}."
    low, high = getattr(param.type, "min", None), getattr(param.type, "max", None)
    if low is not None and high is not None:
        return f"From {low:,} to {high:,}."
    return f"{low:,} or more." if low is not None else ""


def _default(param: Any) -> str:
    if param.required:
        return "Must be given." if param.param_type_name == "option" else ""
    default = param.default
    if callable(default) or default in (None, "", False, ()):
        return ""
    if default is True:
        return f"By default `{param.opts[0]}`."
    return f"By default `{getattr(default, 'value', default)}`."

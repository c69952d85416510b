"""The page of all commands and their options, from the commands themselves."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from typing import Any

from typer.main import get_command

from phonodrill.cli.main import COMMANDS

HEAD = """# Commands

Every command and option, as `--help` has them. `phonodrill COMMAND --help` shows the same.
"""


def make_page() -> str:
    """Write the page."""
    parts = [HEAD]
    for name, command in walk():
        parts.append(_section(name, command))
    return "\n".join(parts)


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


def _section(name: str, command: Any) -> str:
    rows = "\n".join(
        f"| {_names(param)} | {_cell(getattr(param, 'help', '') or '')} | {_default(param)} |"
        for param in command.params
        if param.name != "help" and not getattr(param, "hidden", False)
    )
    text = "\n\n".join(line.strip() for line in (command.help or "").split("\n\n"))
    table = (
        f"\n| argument or option | what it is | by default |\n|---|---|---|\n{rows}\n"
        if rows
        else ""
    )
    return f"## phonodrill {name}\n\n{text}\n{table}"


def _names(param: Any) -> str:
    choices = list(getattr(param.type, "choices", ()))
    shown = "<br>".join(str(getattr(choice, "value", choice)) for choice in choices)
    if param.param_type_name == "argument":
        name = f"`{param.name.upper().rstrip('_')}`"
    else:
        name = " ".join(f"`{option}`" for option in (*param.opts, *param.secondary_opts))
    return f"{name}<br>{shown}" if shown else name


def _default(param: Any) -> str:
    if param.required:
        return "must be given"
    default = param.default
    if callable(default) or default in (None, "", False, ()):
        return ""
    return f"`{getattr(default, 'value', default)}`"


def _cell(text: str) -> str:
    return " ".join(text.replace("|", "\\|").split())

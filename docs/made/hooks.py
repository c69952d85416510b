"""Hooks of mkdocs: add the pages that are made from the code, and mend links that leave docs/."""

from __future__ import annotations

import sys
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

ROOT = Path(__file__).parents[2]
# mkdocs reads this file by itself, not as a module of the package beside it.
sys.path.insert(0, str(ROOT))


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add what is made."""
    from docs.made import checked, commands, json_fields, python, rooms, tables

    pages = {
        "reference/commands.md": commands.make_page(),
        "reference/json.md": json_fields.make_page(),
        "reference/python.md": python.make_page(),
        "reference/rooms.md": rooms.make_page(),
        "reference/tables.md": tables.make_page(),
        "reference/checked.md": checked.make_page(),
    }
    for uri, content in pages.items():
        files.append(File.generated(config, uri, content=content))
    return files


def on_page_markdown(markdown: str, page: Page, config: MkDocsConfig, files: Files) -> str:  # noqa: ARG001
    """Point links to what lies outside docs/ at the page made of it."""
    from docs.made.links import relink

    return relink(markdown, page.file.src_uri)

"""Write a document to the screen or to a file, whole or not at all."""

from __future__ import annotations

import sys
from collections.abc import Callable
from enum import StrEnum
from importlib import import_module
from pathlib import Path

from phonodrill.cli.options import Format
from phonodrill.errors import PhonodrillError
from phonodrill.render.document import Document
from phonodrill.whole_file import write_whole

_BY_SUFFIX = {
    ".txt": Format.TEXT,
    ".md": Format.MARKDOWN,
    ".csv": Format.CSV,
    ".json": Format.JSON,
    ".html": Format.HTML,
}
_RENDERERS = {
    Format.TEXT: "phonodrill.render.as_text",
    Format.MARKDOWN: "phonodrill.render.as_markdown",
    Format.CSV: "phonodrill.render.as_csv",
    Format.JSON: "phonodrill.render.as_json",
    Format.HTML: "phonodrill.render.as_html",
}


def deliver(
    document: Document,
    chosen: Format | None,
    out: Path | None,
    *,
    slides: Callable[[], bytes] | None = None,
) -> None:
    """Render a document and write it.

    Args:
        document: what to write.
        chosen: the format asked for; by default from the ending of ``out``, else text.
        out: the file to write; standard output if None.
        slides: makes the same as slides, where a command can.

    Raises:
        PhonodrillError: if the file cannot be written, or is to be a PDF, or slides
            which are not made of this; what was there stays.
    """
    if out is None:
        _write_to_screen(document, chosen or Format.TEXT)
        return
    if is_named(out, chosen, ".pdf"):
        raise PhonodrillError(
            "this is not made as PDF", "--out NAME.html, or phonodrill print for cards and lists"
        )
    if is_named(out, chosen, ".docx"):
        from phonodrill.render import as_docx

        write_whole(out, as_docx.render(document))
        return
    if is_named(out, chosen, ".pptx"):
        if not slides:
            raise PhonodrillError("this is not made as slides", "--out NAME.docx, or NAME.html")
        write_whole(out, slides())
        return
    kind = chosen or _BY_SUFFIX.get(out.suffix.lower(), Format.TEXT)
    write_whole(out, render(document, kind).encode(_encoding(kind)))


def is_named(out: Path | None, chosen: StrEnum | None, *endings: str) -> bool:
    """Whether the file's name, and no --format, asks for a kind of file.

    Args:
        out: the file; None for the screen.
        chosen: the format asked for.
        endings: of the name, lower case with their dot.
    """
    return out is not None and chosen is None and out.suffix.lower() in endings


def _encoding(kind: Format) -> str:
    if kind is not Format.CSV:
        return "utf-8"
    from phonodrill.render.as_csv import ENCODING

    return ENCODING


def render(document: Document, kind: Format) -> str:
    """Render a document in one of the plain formats."""
    renderer = import_module(_RENDERERS[kind])
    text: str = renderer.render(document)
    return text


def _write_to_screen(document: Document, kind: Format) -> None:
    if kind is Format.TEXT and sys.stdout.isatty() and not document.plain:
        import shutil

        from phonodrill.render import as_terminal

        text = as_terminal.render(document, shutil.get_terminal_size().columns)
    else:
        text = render(document, kind)
    if hasattr(sys.stdout, "reconfigure"):
        # IPA must get through whatever the locale says.
        sys.stdout.reconfigure(encoding="utf-8")
    sys.stdout.write(text)
    sys.stdout.flush()

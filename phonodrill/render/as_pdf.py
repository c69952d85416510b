"""PDF, for paper: pages drawn by typst from templates beside this module.

Words reach the templates as data, never as markup, so no character of a word
or title means anything to typst. The file follows PDF/UA-1 (ISO 14289-1), which
typst checks: title, language, tags, and no text without a glyph.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from phonodrill.errors import PhonodrillError
from phonodrill.paper.page import Page, Paper
from phonodrill.render.extra import import_extra, install_hint

TEMPLATES = Path(__file__).parent / "typst"
FONT_PACKAGES = ("fontpkg_abeezee", "fontpkg_noto_sans")
STANDARD = "ua-1"
LANGUAGE = "en"
CREATED = 1_767_225_600
"""The moment written into every file (2026-01-01 UTC), so that equal pages are equal files."""


def render(
    pages: Sequence[Page], *, title: str, paper: Paper = Paper.LETTER, footer: str = ""
) -> bytes:
    """Draw pages, in their order, as one PDF.

    Args:
        pages: of any kinds.
        title: title of the file.
        paper: size of the sheet.
        footer: small line at the foot of all pages but the backs of cards.

    Returns:
        The file; the same for the same pages.

    Raises:
        PhonodrillError: if a package of the extra ``print`` or its font is missing, or a
            character has no glyph.
    """
    typst = import_extra("typst", "PDF")
    fonts = [_font_folder(name) for name in FONT_PACKAGES]
    job = {
        "title": title,
        "language": LANGUAGE,
        "paper": str(paper),
        "footer": footer,
        "pages": [_plain(page) for page in pages],
    }
    try:
        compiler = typst.Compiler(
            str(TEMPLATES / "main.typ"),
            root=str(TEMPLATES),
            font_paths=fonts,
            ignore_system_fonts=True,
            sys_inputs={"job": json.dumps(job)},
        )
        content: bytes = compiler.compile(format="pdf", pdf_standards=[STANDARD], timestamp=CREATED)
    except typst.TypstError as error:
        raise PhonodrillError(
            f"the pages cannot be drawn: {error.message}", "another title, or other words"
        ) from error
    return content


def _font_folder(package: str) -> str:
    folder: Path = import_extra(package, "PDF").ROOT / "files"
    # Without this, typst would quietly set the words in a font of its own.
    if not any(folder.glob("*.ttf")):
        raise PhonodrillError(
            f"the font of {package.replace('_', '-')} is not there", install_hint()
        )
    return str(folder)


def _plain(value: Any) -> Any:
    """Turn named tuples into what JSON has, each with its kind."""
    if hasattr(value, "_asdict"):
        parts = {name: _plain(part) for name, part in value._asdict().items()}
        return {"kind": type(value).__name__, **parts}
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    return value

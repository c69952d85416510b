"""The pictures in README and docs: there, small, described, and what the script makes."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from PIL import Image, ImageChops, ImageStat

from docs.pictures import page
from phonodrill import Lexicon
from phonodrill.lesson.compose import make_lesson
from tests.conftest import ROOT

PICTURE = re.compile(r"!\[(.*?)\]\((.*?\.png)\)")
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md"))]
SHOWN = [(text, *found) for text in PAGES for found in PICTURE.findall(text.read_text("utf-8"))]
FOLDER = ROOT / "docs" / "pictures"
MOST_BYTES = 80_000
OF_WORDS = ("cards", "mat", "boxes")
"""Pictures of given words: those of a lesson change with the words chosen for it."""


@pytest.fixture(scope="module")
def script() -> ModuleType:
    spec = importlib.util.spec_from_file_location("make_pictures", FOLDER / "make.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def made(script: ModuleType, lexicon: Lexicon) -> dict[str, Any]:
    return dict(script.paper_pictures(lexicon, make_lesson(lexicon, script.LESSON)))


@pytest.mark.parametrize(("text", "said", "name"), SHOWN, ids=str)
def test_a_picture_is_there_small_gray_and_said_in_words(text: Path, said: str, name: str) -> None:
    path = text.parent / name
    assert path.parent == FOLDER
    assert path.stat().st_size < MOST_BYTES
    assert len(said.split()) >= 10
    with Image.open(path) as picture:
        assert picture.format == "PNG"
        red, green, blue = picture.convert("RGB").split()
    assert red.tobytes() == green.tobytes() == blue.tobytes()


def test_readme_has_one_and_every_picture_is_shown() -> None:
    assert [name for text, _, name in SHOWN if text.name == "README.md"] == [
        "docs/pictures/lesson.png"
    ]
    shown = {Path(name).name for _, _, name in SHOWN}
    assert shown == {path.name for path in FOLDER.glob("*.png")}


def test_the_scripts_make_all_pictures(made: dict[str, Any]) -> None:
    of_pages = {f"{shot.name}.png" for shot in page.SHOTS}
    assert {f"{name}.png" for name in made} | of_pages | {"slides.png"} == {
        path.name for path in FOLDER.glob("*.png")
    }
    for name, picture in made.items():
        with Image.open(FOLDER / f"{name}.png") as old:
            assert picture.size == old.size, name
        dark = picture.convert("L").histogram()[:100]
        assert sum(dark) > 500, name


def test_a_page_is_pictured_in_its_own_size() -> None:
    """They are drawn in tests/browser/test_pictures_of_pages.py."""
    for shot in page.SHOTS:
        with Image.open(FOLDER / f"{shot.name}.png") as picture:
            assert picture.size == (shot.width + 2, shot.height + 2), shot.name


@pytest.mark.parametrize("name", OF_WORDS)
def test_pictures_of_given_words_are_those_that_are_shown(name: str, made: dict[str, Any]) -> None:
    """A picture that differs is old: python docs/pictures/make.py."""
    with Image.open(FOLDER / f"{name}.png") as old:
        difference = ImageChops.difference(old.convert("L"), made[name].convert("L"))
    # Another release of the typesetter may round edges otherwise.
    assert ImageStat.Stat(difference).mean[0] < 0.5


def test_the_script_says_where_slides_cannot_be_drawn(
    script: ModuleType,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(script, "FOLDER", tmp_path)
    monkeypatch.setattr(script.shutil, "which", lambda _: None)
    script.main()
    said = capsys.readouterr()
    assert said.err == "no LibreOffice here: slides.png stays as it is\n"
    assert len(list(tmp_path.iterdir())) == len(said.out.splitlines()) == 6

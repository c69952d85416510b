"""PDF: complete, inside the page, aligned on both sides, the same every time."""

from __future__ import annotations

import io
import random
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from phonodrill import By, Gate, Lexicon, Notation, PhonodrillError, open_gate
from phonodrill.paper.cards import GRIDS, Back, Size, card_of, lay_out
from phonodrill.paper.mat import by_ending, mat_of
from phonodrill.paper.page import Card, Duplex, Key, Page, Paper, Script, Text
from phonodrill.paper.printed import Printed, print_words
from phonodrill.paper.sheets import (
    boxes_of,
    chunk_lines_of,
    mat_key,
    word_key,
    word_list_of,
)
from phonodrill.render import as_pdf
from phonodrill.selection import may_be_said
from phonodrill.sounds.inventory import PHONEMES
from phonodrill.sounds.notation import symbols

HARBOR = [
    "torches",
    "ropes",
    "lighthouses",
    "ferries",
    "grandmothers",
    "gulls",
    "crabs",
    "jellies",
    "skies",
    "finches",
    "hedges",
    "ladies",
    "ponies",
    "stitches",
    "patches",
    "skates",
    "slopes",
    "snails",
    "clams",
    "fox",
    "lamb",
    "said",
    "queen",
    "harbor",
    "tear",
]
INCH = 72
TENTH_OF_MM = 0.1 / 25.4 * INCH
SIZES = {Paper.LETTER: (8.5 * INCH, 11 * INCH), Paper.A4: (210 / 25.4 * INCH, 297 / 25.4 * INCH)}


def words_of(lexicon: Lexicon, spellings: Sequence[str], notation: Notation) -> list[Printed]:
    entries = [entry for word in spellings if (entry := lexicon.get(word))]
    return list(print_words(lexicon, open_gate(lexicon), entries, notation))


@pytest.fixture(scope="module")
def harbor(lexicon: Lexicon) -> list[Printed]:
    return words_of(lexicon, HARBOR, Notation.MARKS)


@pytest.fixture(scope="module")
def longest(lexicon: Lexicon, gate: Gate) -> list[Printed]:
    """The longest words and those with most sounds, which are the hardest to fit."""
    fit = [entry for entry in lexicon.entries(highest_band=3) if may_be_said(entry, gate)]
    by_letters = sorted(fit, key=lambda entry: -len(entry.word))[:60]
    by_sounds = sorted(fit, key=lambda entry: -len(entry.pronunciations[0].sounds))[:60]
    spellings = dict.fromkeys(entry.word for entry in (*by_letters, *by_sounds))
    return words_of(lexicon, list(spellings), Notation.ARPABET)


def all_kinds(words: Sequence[Printed]) -> list[Page]:
    in_s = [word for word in words if word.ending and word.ending.suffix == "s"]
    columns = by_ending(in_s, By.SOUND)
    return [
        *(
            lay_out("Cards", [card_of(word, back) for word in words], GRIDS[size])
            for size, back in zip(Size, (Back.SOUNDS, Back.CHUNKS, Back.ENDING), strict=True)
        ),
        mat_of("Mat", columns, "Sort."),
        lay_out("Blank cards", [Card()] * 18, GRIDS[Size.MEDIUM]),
        mat_key(columns, "Key of the mat"),
        boxes_of(words, filled=False),
        boxes_of(words, filled=True),
        chunk_lines_of(words),
        word_list_of(words, "List"),
        word_key(words, "Key of the list"),
    ]


def opened(pages: Sequence[Page], **options: Any) -> Any:
    return pdfplumber.open(io.BytesIO(as_pdf.render(pages, title="Try", **options)))


def text_of(pages: Sequence[Page]) -> str:
    with opened(pages) as pdf:
        return "\n".join(page.extract_text() for page in pdf.pages)


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("which", ["harbor", "longest"])
def test_nothing_is_outside_the_page_and_every_glyph_is_there(
    which: str, paper: Paper, request: pytest.FixtureRequest
) -> None:
    words = request.getfixturevalue(which)
    with opened(all_kinds(words), paper=paper, footer="seed 7") as pdf:
        assert len(pdf.pages) > 20
        for page in pdf.pages:
            assert sorted((page.width, page.height)) == pytest.approx(SIZES[paper], abs=0.1)
            assert all(c["x0"] >= 4 and c["x1"] <= page.width - 4 for c in page.chars)
            assert all(c["top"] >= 4 and c["bottom"] <= page.height - 4 for c in page.chars)
            for line in (*page.lines, *page.rects, *page.curves):
                assert -0.1 <= line["x0"] <= line["x1"] <= page.width + 0.1
                assert -0.1 <= line["top"] <= line["bottom"] <= page.height + 0.1
            assert not any("cid:" in c["text"] or c["text"] == "\ufffd" for c in page.chars)


@pytest.mark.parametrize("which", ["harbor", "longest"])
def test_no_text_is_set_over_another(which: str, request: pytest.FixtureRequest) -> None:
    words = request.getfixturevalue(which)
    with opened(all_kinds(words)) as pdf:
        for page in pdf.pages:
            boxes = [
                (w["x0"], w["x1"], w["top"], w["bottom"]) for w in page.extract_words(x_tolerance=1)
            ]
            for i, (a0, a1, a2, a3) in enumerate(boxes):
                for b0, b1, b2, b3 in boxes[i + 1 :]:
                    across = min(a1, b1) - max(a0, b0)
                    down = min(a3, b3) - max(a2, b2)
                    assert across < 1 or down < 0.35 * min(a3 - a2, b3 - b2), page.page_number


def test_every_word_is_on_every_kind_of_page(harbor: list[Printed]) -> None:
    for page in all_kinds(harbor):
        kind = type(page).__name__
        shown = text_of([page])
        if kind == "Mat" or "Blank" in page.title or (kind, page.title) == ("Boxes", "Sound boxes"):
            assert kind == "Boxes" or not any(word.word in shown for word in harbor)
        else:
            expected = [word for word in harbor if word.ending or "mat" not in page.title]
            missing = [word.word for word in expected if word.word not in shown]
            assert not missing, (kind, missing)


def test_empty_boxes_hold_no_answer_and_are_as_many_as_the_sounds(harbor: list[Printed]) -> None:
    page = boxes_of(harbor[:6], filled=False)
    with opened([page]) as pdf:
        text = "".join(one.extract_text() for one in pdf.pages)
        assert not any(word.word in text for word in harbor)
        drawn = sum(len(one.rects) + len(one.curves) for one in pdf.pages)
    assert drawn == sum(row.sounds for row in page.rows)


def lines_of(page: Any) -> tuple[list[float], list[float]]:
    across = sorted({line["x0"] for line in page.lines if line["height"] > 100})
    down = sorted({line["top"] for line in page.lines if line["width"] > 100})
    return across, down


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("size", Size)
def test_the_grid_stands_in_the_middle_of_the_sheet(size: Size, paper: Paper) -> None:
    with opened([lay_out("Cards", [Card()], GRIDS[size])], paper=paper) as pdf:
        (page,) = pdf.pages
        across, down = lines_of(page)
    for places, length in ((across, page.width), (down, page.height)):
        for one, other in zip(places, places[::-1], strict=True):
            assert one + other == pytest.approx(float(length), abs=TENTH_OF_MM)


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("size", Size)
def test_a_word_stays_within_its_cut_lines(
    longest: list[Printed], size: Size, paper: Paper
) -> None:
    cards = [card_of(word, Back.NONE) for word in longest]
    with opened([lay_out("Cards", cards, GRIDS[size])], paper=paper) as pdf:
        seen = []
        for page in pdf.pages:
            across, down = lines_of(page)
            assert (len(across), len(down)) == (GRIDS[size].columns + 1, GRIDS[size].rows + 1)
            for word in page.extract_words():
                if word["top"] < down[0] - 10:
                    continue
                left = max(x for x in across if x < word["x0"])
                right = min(x for x in across if x > word["x0"])
                assert left + 6 < word["x0"] < word["x1"] < right - 6, word
                above = max(y for y in down if y < word["top"])
                assert word["bottom"] < min(y for y in down if y > above) - 6
                assert word["bottom"] - word["top"] >= 10
                seen.append(word["text"])
    assert seen == [word.word for word in longest]


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("duplex", [Duplex.LONG, Duplex.SHORT])
def test_backs_are_behind_their_fronts_on_paper(duplex: Duplex, size: Size, paper: Paper) -> None:
    fronts = [f"front{n}" for n in range(2 * GRIDS[size].cards - 3)]
    cards = [Card((Text(text),), (Text(text.replace("front", "back")),)) for text in fronts]
    found = 0
    with opened([lay_out("Cards", cards, GRIDS[size], duplex)], paper=paper) as pdf:
        for front, back in zip(pdf.pages[::2], pdf.pages[1::2], strict=True):
            behind = {word["text"]: word for word in back.extract_words()}
            for word in front.extract_words():
                if word["text"] not in fronts:
                    continue
                found += 1
                other = behind[word["text"].replace("front", "back")]
                x, y = middle(other)
                if duplex is Duplex.LONG:
                    x = float(front.width) - x
                else:
                    y = float(front.height) - y
                assert x == pytest.approx(middle(word)[0], abs=TENTH_OF_MM)
                # Letters are not in the middle of their line, and fronts are larger than backs.
                card = float(front.height) / GRIDS[size].rows
                assert y == pytest.approx(middle(word)[1], abs=card / 8)
    assert found == len(fronts)


def middle(word: dict[str, Any]) -> tuple[float, float]:
    return (word["x0"] + word["x1"]) / 2, (word["top"] + word["bottom"]) / 2


@pytest.mark.parametrize("notation", Notation)
def test_every_sign_for_a_sound_is_in_the_font_of_the_sounds(notation: Notation) -> None:
    signs: dict[str, None] = {}
    for phoneme in PHONEMES:
        for stress in ("1", "2", "0") if phoneme.is_vowel else ("",):
            for after in ("", "r"):
                signs.update(dict.fromkeys(symbols(phoneme.code + after, stress, notation)))
    rows = tuple((((Text(sign, Script.SOUNDS)),),) for sign in signs)
    with opened([Key("Signs", "", ("sign",), (1,), rows)]) as pdf:
        drawn = {c["text"] for page in pdf.pages for c in page.chars if "NotoSans" in c["fontname"]}
        fonts = {c["fontname"].partition("+")[2] for page in pdf.pages for c in page.chars}
    assert all(font.startswith(("NotoSans", "ABeeZee")) for font in fonts)
    assert set("".join(signs)) <= set("".join(drawn))
    assert len(signs) >= 39


def test_words_and_sounds_have_their_own_embedded_fonts(harbor: list[Printed]) -> None:
    content = as_pdf.render(all_kinds(harbor), title="Try")
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        fonts = {c["fontname"] for page in pdf.pages for c in page.chars}
        cards = pdf.pages[0]
        letters = {c["fontname"].partition("+")[2] for c in cards.chars if c["text"].isalpha()}
        sounds = [c for c in pdf.pages[1].chars if c["text"] in "ĭîâôōz/"]
    # A subset embedded in the file has a tag before its name (ISO 32000-1, 9.6.4).
    assert all(len(font.partition("+")[0]) == 6 and font[6] == "+" for font in fonts), fonts
    assert content.count(b"/FontFile") >= 2
    assert letters == {"ABeeZee-Regular"}
    assert sounds
    assert {c["fontname"].partition("+")[2][:8] for c in sounds} == {"NotoSans"}


@pytest.mark.source("ISO 14289-1:2014 (PDF/UA-1), 5, 7.1 and 7.2: identification, title, language")
def test_the_file_is_accessible(harbor: list[Printed]) -> None:
    content = as_pdf.render(all_kinds(harbor), title="Words of the harbor")
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        assert pdf.metadata["Title"] == "Words of the harbor"
        catalog = pdf.doc.catalog
        assert catalog["Lang"] in (b"en", b"en-US")
        # Poppler's pdfinfo (22.12) calls any false Suspects "wrong type"; UA-1 asks for it.
        assert catalog["MarkInfo"] == {"Marked": True, "Suspects": False}
        assert catalog["ViewerPreferences"]["DisplayDocTitle"] is True
        assert "StructTreeRoot" in catalog
        metadata = catalog["Metadata"].resolve().get_data()
    assert b"<pdfuaid:part>1</pdfuaid:part>" in metadata


def test_equal_pages_are_equal_files(harbor: list[Printed]) -> None:
    first = as_pdf.render(all_kinds(harbor), title="Try")
    assert first == as_pdf.render(all_kinds(harbor), title="Try")
    assert first != as_pdf.render(all_kinds(harbor[1:]), title="Try")


def test_pages_come_in_the_order_given(harbor: list[Printed]) -> None:
    pages = [word_list_of(harbor[:3], f"List {n}") for n in "bca"]
    with opened(pages) as pdf:
        assert [page.extract_text().split("\n")[0] for page in pdf.pages] == [
            "List b",
            "List c",
            "List a",
        ]


@pytest.mark.parametrize(
    "text",
    [
        "#panic()",
        "$x$",
        "*b* _i_ `c`",
        "<label> @ref",
        "//x /*y*/",
        '"]}#',
        "= a",
        "\\",
        "--- ~ ...",
    ],
)
def test_no_character_means_anything_to_the_typesetter(text: str) -> None:
    card = Card((Text(text),), (Text(text),))
    shown = text_of([lay_out(text, [card], GRIDS[Size.LARGE]), word_list_of((), text, text)])
    assert shown.replace("\n", " ").count(text) >= 4, shown


def test_a_sign_without_glyph_is_one_clear_line() -> None:
    with pytest.raises(PhonodrillError, match="cannot be drawn"):
        as_pdf.render([word_list_of((), "漢字")], title="Try")


def test_a_missing_font_is_one_clear_line(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    import fontpkg_abeezee

    monkeypatch.setattr(fontpkg_abeezee, "ROOT", tmp_path)
    with pytest.raises(PhonodrillError, match="the font of fontpkg-abeezee is not there"):
        as_pdf.render([word_list_of((), "List")], title="Try")


def test_a_random_hundred_words_fit(lexicon: Lexicon, gate: Gate) -> None:
    fit = [entry for entry in lexicon.entries(highest_band=3) if may_be_said(entry, gate)]
    words = print_words(
        lexicon, open_gate(lexicon), random.Random(5).sample(fit, 100), Notation.IPA
    )
    shown = text_of([lay_out("", [card_of(w, Back.SOUNDS) for w in words], GRIDS[Size.SMALL])])
    assert all(word.word in shown for word in words)

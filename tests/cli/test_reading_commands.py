from __future__ import annotations

import csv
import json
from pathlib import Path

import pytest

from tests.running import fails, run, works

STEPS = """s a t p i n   # first letters
m d g o c=k k ck
e u r h b f l
th=/ð/, sh
a_e
zz9
-s
word: said was
"""


@pytest.fixture
def taught(tmp_path: Path) -> str:
    path = tmp_path / "taught.txt"
    path.write_text(STEPS, "utf-8")
    return str(path)


@pytest.fixture
def passage(tmp_path: Path) -> str:
    path = tmp_path / "passage.txt"
    path.write_text("The ships sat in the harbor at 10.\n“Look!” said the lads.\n", "utf-8")
    return str(path)


def test_word_shows_chunks() -> None:
    data = json.loads(works("word", "brushes", "--format", "json"))
    said = data["pronunciations"][0]
    assert [chunk["letters"] for chunk in said["chunks"]] == ["b", "r", "u", "sh", "es"]
    assert said["chunks"][3] == {
        "letters": "sh",
        "at": [3, 4],
        "arpabet": ["SH"],
        "irregular": False,
    }
    assert said["syllable_letters"] == ["bru", "shes"]
    split = json.loads(works("word", "cake", "--format", "json"))["pronunciations"][0]["chunks"]
    assert (split[1]["letters"], split[1]["at"]) == ("a_e", [1, 3])


def test_word_marks_the_irregular_part() -> None:
    text = works("word", "people")
    assert "irregular" in text
    data = json.loads(works("word", "said", "--format", "json"))
    assert [c["irregular"] for c in data["pronunciations"][0]["chunks"]] == [False, True, False]
    assert data["correspondences"][0]["spelling"] == "ai"


def test_an_unfit_part_of_a_good_word_is_not_shown() -> None:
    for word in ("cucumber", "peacock"):
        data = json.loads(works("word", word, "--format", "json"))
        assert data["pronunciations"][0]["syllable_letters"] == []
        assert data["pronunciations"][0]["syllables"] >= 2


def test_decodable(taught: str) -> None:
    done = run("decodable", "--taught", taught, "--seed", "1", "--format", "json")
    assert "line 6 passed over" in done.stderr
    data = json.loads(done.stdout)
    assert len(data["words"]) == 60
    assert data["fit"] > 200
    taught_spellings = {*"satpinmdgockeurhbfl", "ck", "th", "sh", "a_e"}
    assert all(set(word["chunks"]) <= taught_spellings for word in data["words"])
    again = run("decodable", "--taught", taught, "--seed", "1", "--format", "json")
    assert again.stdout == done.stdout


def test_decodable_by_shape_and_spelling() -> None:
    text = works("decodable", "--pattern", "CVCe", "--with", "a_e", "--format", "csv")
    rows = list(csv.DictReader(text.splitlines()))
    assert {row["pattern"] for row in rows} == {"CVCe"}
    assert all("a_e" in row["chunks"] for row in rows)


def test_pairs(taught: str) -> None:
    data = json.loads(
        run("pairs", "--sounds", "i:e", "--taught", taught, "--format", "json").stdout
    )
    assert data["kind"] == "minimal"
    for pair in data["pairs"]:
        assert (pair["a_sound"], pair["b_sound"], pair["at"]) == ("IH", "EH", "vowel")
    stop = works("pairs", "--kind", "deletion", "--at", "first", "--count", "200")
    assert "stop" in stop
    assert "same" in works("pairs", "--kind", "spelling")


def test_drills_keep_to_what_was_taught(taught: str) -> None:
    def chunks(word: str) -> set[str]:
        said = json.loads(works("word", word, "--format", "json"))["pronunciations"][0]
        return {chunk["letters"] for chunk in said["chunks"]}

    allowed = {*"satpinmdgockeurhbfl", "ck", "th", "sh", "a_e"}
    command = ["endings", "sort", "--ending", "s", "--count", "3", "--taught", taught]
    groups = json.loads(run(*command, "--format", "json").stdout)["groups"]
    bases = {word["base"] for group in groups for word in group["words"]}
    warmup = json.loads(
        run("warmup", "--taught", taught, "--count", "4", "--format", "json").stdout
    )
    items = {item[name] for item in warmup["items"] for name in ("stimulus", "answer")}
    chain = json.loads(
        run("chain", "cat", "--steps", "4", "--taught", taught, "--format", "json").stdout
    )
    steps = {step["word"] for step in chain["steps"]}
    assert len(bases) == 6
    assert len(items) >= 7
    assert len(steps) == 5
    for word in bases | items | steps:
        assert chunks(word) <= allowed, word


def test_passage(taught: str, passage: str) -> None:
    done = run("passage", passage, "--taught", taught, "--format", "json")
    data = json.loads(done.stdout)
    assert (data["words"], data["numbers"], data["taught_whole"]) == (11, 1, 1)
    assert data["not_yet"] == [
        {"word": "harbor", "count": 1, "needs": ["ar", "or=ûr"], "guess": False},
        {"word": "look", "count": 1, "needs": ["oo=o͝o"], "guess": False},
    ]
    assert data["decodable"] == 8
    assert data["share"] == pytest.approx(9 / 11, abs=1e-4)
    assert data["next_step"] == "oo=o͝o"
    text = run("passage", passage, "--taught", taught).stdout
    assert "“[Look]!” {said} the lads." in text


def test_passage_as_a_page(taught: str, passage: str, tmp_path: Path) -> None:
    out = tmp_path / "report.html"
    assert run("passage", passage, "--taught", taught, "--out", str(out)).returncode == 0
    page = out.read_text("utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert '<mark class="missing">harbor</mark>' in page
    assert "http" not in page
    assert "<script" not in page


def test_spellings() -> None:
    data = json.loads(works("spellings", "/f/", "--format", "json"))
    assert data["sound"] == "F"
    assert data["shares"][0]["spelling"] == "f"
    assert "/ĕ/" in works("spellings", "--spelling", "ea")
    every = json.loads(works("spellings", "--format", "json"))["shares"]
    assert len({share["arpabet"] for share in every}) == 40
    assert "about" in works("spellings", "AX")


def test_where_spellings_stand() -> None:
    shares = json.loads(works("spellings", "/ch/", "--format", "json"))["shares"]
    (tch,) = [share for share in shares if share["spelling"] == "tch"]
    assert tch["place"].startswith("at the end")
    assert (tch["otherwise"], tch["instead"]) == (["watch"], ["which", "much", "such", "rich"])
    assert {share["place"] for share in shares if share["spelling"] != "tch"} == {""}
    shown = works("spellings", "/s/", "--band", "1")
    assert "bus" in shown
    # Of a higher band.
    assert "gross" not in shown
    every = works("spellings").partition("In words of one syllable")[2].splitlines()
    assert len(every) == len({*every})


@pytest.mark.parametrize("kind", ["text", "md", "csv", "json", "html"])
@pytest.mark.parametrize("command", [["decodable"], ["pairs"], ["spellings", "sh"]])
def test_every_command_in_every_format(command: list[str], kind: str) -> None:
    assert works(*command, "--format", kind)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["decodable", "--pattern", "XYZ"], "cannot read the pattern 'XYZ'"),
        (["decodable", "--with", "qz"], "no correspondence is spelled 'qz'"),
        (["decodable", "--taught", "no/such.txt"], "cannot read no/such.txt"),
        (["decodable", "--pattern", "CCCCCCC"], "no word of bands 1-2 fits"),
        (["pairs", "--sounds", "i"], "two sounds parted by a colon"),
        (["pairs", "--sounds", "i:qq"], "unknown sound 'qq'"),
        (["pairs", "--sounds", "i:i"], "names one sound twice"),
        (["pairs", "--kind", "deletion", "--sounds", "i:e"], "--kind minimal"),
        (["pairs", "--kind", "deletion", "--at", "vowel"], "a vowel is not left off"),
        (["pairs", "--kind", "spelling", "--at", "first"], "leave out --at"),
        (["pairs", "--sounds", "zh:h"], "no pair of words fits"),
        (["spellings", "/f/", "--spelling", "f"], "not both"),
        (["spellings", "--spelling", "qqq"], "has 'qqq'"),
        (["passage", "no/such.txt"], "--taught FILE"),
        (["passage", "no/such.txt", "--taught", "no/such.txt"], "cannot read"),
    ],
)
def test_bad_input_is_one_clear_line(arguments: list[str], message: str) -> None:
    assert message in fails(*arguments)


def test_files_that_cannot_be_used(tmp_path: Path, taught: str) -> None:
    empty = tmp_path / "empty.txt"
    empty.write_text("# nothing\n")
    assert "has no step in it" in fails("decodable", "--taught", str(empty))
    latin = tmp_path / "latin.txt"
    latin.write_bytes(b"caf\xe9")
    assert "is not UTF-8 text" in run("passage", str(latin), "--taught", taught).stderr
    blank = tmp_path / "blank.txt"
    blank.write_text("... 12 !\n")
    assert "has no word in it" in run("passage", str(blank), "--taught", taught).stderr


def test_a_passage_never_echoes_an_unfit_word(tmp_path: Path, taught: str) -> None:
    path = tmp_path / "rude.txt"
    path.write_text("the damn ship sat\n")
    for kind in ("text", "md", "csv", "json", "html"):
        done = run("passage", str(path), "--taught", taught, "--format", kind)
        assert done.returncode == 0
        assert "damn" not in done.stdout + done.stderr

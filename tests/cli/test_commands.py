from __future__ import annotations

import csv
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.running import PLAINEST_LOCALE, fails, run, works


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "words.txt").write_text("stop\nblorf  # not a word\n\nplate\n", "utf-8")
    (tmp_path / "empty.txt").write_text("\n# nothing\n")
    (tmp_path / "latin.txt").write_bytes(b"caf\xe9\n")
    (tmp_path / "long.txt").write_text("stop\n" * 1_000_000)
    (tmp_path / "windows.txt").write_bytes("\ufeffstop\r\nplate\r\n".encode())
    return tmp_path


def test_the_first_readme_command_in_a_process_apart_under_the_plainest_locale() -> None:
    words = ("warmup", "--drop", "first", "--ending", "es", "--seed", "1")
    done = subprocess.run(
        [sys.executable, "-m", "phonodrill", *words],
        capture_output=True,
        check=True,
        encoding="utf-8",
        env=os.environ | PLAINEST_LOCALE,
    )
    assert done.stdout.startswith("Oral warm-up: leave off the first sound")
    assert done.stdout == works(*words)
    assert "→" in done.stdout


def test_output_is_the_same_for_a_seed_and_not_without() -> None:
    assert works("warmup", "--seed", "5") == works("warmup", "--seed", "5")
    assert len({works("warmup", "--format", "csv") for _ in range(3)}) == 3


@pytest.mark.parametrize(
    "command",
    [["table", "--ending", "ed"], ["lookalikes", "--ending", "er,y"], ["sort", "--by", "base"]],
)
def test_the_seed_makes_the_same_choice_of_endings(command: list[str]) -> None:
    assert works("endings", *command, "--seed", "5") == works("endings", *command, "--seed", "5")
    seeds = {works("endings", *command, "--seed", seed).partition("seed")[2] for seed in "123"}
    assert len(seeds) == 3


def test_json_is_read_back() -> None:
    data = json.loads(works("warmup", "--drop", "last", "--count", "3", "--format", "json"))
    assert len(data["items"]) == 3
    assert {item["at"] for item in data["items"]} == {"last"}


@pytest.mark.parametrize("kind", ["text", "md", "csv", "json"])
@pytest.mark.parametrize(
    "command",
    [
        ["warmup"],
        ["warmup", "--task", "categorize"],
        ["warmup", "--task", "segment", "--made-up"],
        ["chain", "crab", "clam"],
        ["endings", "sort"],
        ["endings", "sort", "--by", "base", "--ending", "s,ed,ing"],
        ["endings", "add", "ferry"],
        ["endings", "add", "gutch", "--ending", "ed"],
        ["endings", "base", "axes"],
        ["endings", "base", "bus"],
        ["endings", "table", "--ending", "'s"],
        ["endings", "lookalikes"],
        ["word", "slopes"],
        ["lexicon"],
        ["sentences", "gulls"],
        ["words", "list"],
    ],
)
def test_every_command_in_every_format(command: list[str], kind: str) -> None:
    assert works(*command, "--format", kind)


def test_the_format_follows_the_file_name(tmp_path: Path) -> None:
    out = tmp_path / "list.csv"
    works("endings", "sort", "--out", str(out))
    assert out.read_bytes().startswith(b"\xef\xbb\xbfword,base")
    out = tmp_path / "list.json"
    works("endings", "sort", "--out", str(out))
    assert json.loads(out.read_text("utf-8"))["groups"]


def test_own_words(folder: Path) -> None:
    done = run("warmup", "--words", str(folder / "words.txt"), "--count", "2")
    assert done.returncode == 0
    assert "line 2: 'blorf' is not in the lexicon" in done.stderr
    assert "“stop”" in done.stdout
    assert "“plate”" in done.stdout
    assert "“stop”" in works("warmup", "--words", str(folder / "windows.txt"), "--count", "2")


def test_own_lists_count_at_once() -> None:
    added = works("words", "add", "Fiona", "harbor", "--band", "2")
    assert added == "added to band 2: fiona, harbor\n"
    assert works("words", "block", "boat") == "never used from now on: boat\n"
    text = works("words", "list")
    assert "fiona" in text
    assert "boat" in text
    assert json.loads(works("words", "list", "--format", "json"))["words"][0]["word"] == "boat"
    assert json.loads(works("word", "boat", "--format", "json"))["in_class"] == "no"
    assert works("words", "remove", "boat") == "taken out of your lists: boat\n"
    assert json.loads(works("word", "boat", "--format", "json"))["in_class"] == "yes"


def test_own_lists_hold_for_the_words_of_a_file(tmp_path: Path) -> None:
    path = tmp_path / "words.txt"
    path.write_text("june\nboat\n")
    command = ["warmup", "--words", str(path), "--task", "segment", "--count", "2"]
    done = run(*command)
    assert "line 1: 'june' would stand without its capital" in done.stderr
    assert "“june”" not in done.stdout
    works("words", "add", "June")
    works("words", "block", "boat")
    done = run(*command)
    assert "“june”" in done.stdout
    assert "line 2: not a word for class" in done.stderr
    assert "boat" not in done.stdout


def test_a_broken_line_of_the_own_list_is_reported() -> None:
    works("words", "block", "boat")
    path = Path(os.environ["XDG_CONFIG_HOME"]) / "phonodrill" / "words.txt"
    path.write_text(path.read_text() + "what is this\n")
    assert "words.txt, line 2: cannot be read" in run("warmup").stderr


def test_sentences_and_gaps() -> None:
    assert "Three gulls rest on the old boat." in works("sentences", "gulls")
    text = works("sentences", "Gulls", "--cloze")
    assert "Three ____ rest on the old boat." in text
    data = json.loads(works("sentences", "ferries", "--format", "json"))
    assert {s["part_of_speech"] for s in data["sentences"]} == {"plural noun", "verb"}


def test_a_guess_is_marked_everywhere() -> None:
    assert "a guess" in works("word", "blorf", "--guess").splitlines()[2]
    assert "/b l ô r f/ (a guess)" in works("word", "blorf", "--guess")
    data = json.loads(works("word", "Clamshore", "--guess", "--format", "json"))
    assert data["guess"] is True
    assert data["guessed_from"] == ["clam", "shore"]
    assert data["pronunciations"][0]["origin"] == "guess"
    assert "True" in works("word", "blorf", "--guess", "--format", "csv")
    assert "a guess" in works("word", "blorf", "--guess", "--format", "md")
    assert "guess" not in json.loads(works("word", "slopes", "--guess", "--format", "json"))


def test_es_is_the_ending_s_as_a_rule_spells_it() -> None:
    assert works("endings", "add", "pony", "--ending", "es") == works("endings", "add", "pony")
    card = ("endings", "table", "--seed", "1", "--ending")
    assert works(*card, "ies") == works(*card, "s")


def test_adding_an_ending_in_json() -> None:
    data = json.loads(works("endings", "add", "pony", "--ending", "s", "--format", "json"))
    assert data["base"] == "pony"
    (form,) = data["forms"]
    assert form["form"] == "ponies"
    assert form["change"] == [
        {"op": "keep", "letters": "pon"},
        {"op": "change", "letters": "y", "to": "i"},
        {"op": "add", "letters": "es"},
    ]
    assert (form["ending"], form["rule"], form["sound"]) == ("ies", "y to i, add es", "iz")
    assert form["arpabet"] == "P OW1 N IY0 Z"
    assert (form["syllables_before"], form["syllables_after"]) == (2, 2)


def test_a_made_up_base_by_sound() -> None:
    arguments = ["endings", "add", "blorch", "--sounds", "B L AO1 R K", "--format", "json"]
    form = json.loads(works(*arguments))["forms"][0]
    assert (form["form"], form["sound"], form["arpabet"]) == ("blorchs", "s", "B L AO1 R K S")
    form = json.loads(works("endings", "add", "blorch", "--format", "json"))["forms"][0]
    assert (form["form"], form["sound"], form["based_on"]) == (
        "blorches",
        "ɪz",
        "rule: letters alone",
    )


def test_undoing_an_ending_in_json() -> None:
    data = json.loads(works("endings", "base", "leaves", "--format", "json"))
    assert [base["base"] for base in data["bases"]] == ["leaf", "leave"]
    assert data["bases"][0]["rule"] == "f to v, add es"
    data = json.loads(works("endings", "base", "bus", "--format", "json"))
    assert data["bases"] == []
    assert "bu is left" in data["note"]


def test_the_rule_card_and_the_traps_in_json() -> None:
    card = json.loads(works("endings", "table", "--ending", "ed", "--format", "json"))
    assert "double, add ed" in [rule["rule"] for rule in card["rules"]]
    assert all(rule["source"] for rule in card["rules"])
    traps = json.loads(works("endings", "lookalikes", "--ending", "es", "--format", "json"))
    assert {"word", "kind", "why"} == set(traps["lookalikes"][0])


def test_an_unfit_form_is_not_shown() -> None:
    assert "not a word for class" in fails("endings", "add", "traffic", "--ending", "ing")
    assert "not a word for class" in fails("endings", "base", "hells")


def test_a_series_keeps_its_words_and_brings_them_back() -> None:
    command = ["warmup", "--series", "monday-group", "--band", "1", "--rest", "1"]
    seen: list[set[str]] = []
    for seed in range(4):
        data = json.loads(works(*command, "--seed", str(seed), "--format", "json"))
        words = {item["stimulus"] for item in data["items"]}
        assert not seen or not words & seen[-1]
        before = set().union(*seen[:-1]) if seen else set()
        assert words & before <= set(data["review"])
        seen.append(words)
    path = Path(os.environ["XDG_DATA_HOME"]) / "phonodrill" / "series" / "monday-group.txt"
    lines = path.read_text("utf-8").splitlines()
    assert len(lines) == 5
    assert " delete first: " in lines[1]
    assert [p.name for p in path.parent.iterdir()] == ["monday-group.txt"]


def test_after_a_list_of_words(tmp_path: Path) -> None:
    path = tmp_path / "done.txt"
    path.write_text("stop top\n")
    words = tmp_path / "words.txt"
    words.write_text("stop\nplate\nhair\n")
    text = works("warmup", "--after", str(path), "--words", str(words), "--count", "2")
    assert "“stop”" not in text
    assert "“plate”" in text
    assert "stop top\n" in path.read_text()
    assert len(path.read_text().splitlines()) == 2


def test_a_series_is_not_touched_by_a_set_that_fails(tmp_path: Path) -> None:
    path = tmp_path / "done.txt"
    path.write_text("stop top\n")
    fails("warmup", "--after", str(path), "--sound", "zh", "--ending", "ies")
    fails("warmup", "--after", str(path), "--out", "no/such/folder/x.txt")
    assert path.read_text() == "stop top\n"
    path.write_bytes(b"caf\xe9\n")
    assert "not UTF-8" in fails("warmup", "--after", str(path))


def test_levels_and_accents_on_the_command_line() -> None:
    for level in ("easy", "middle", "hard"):
        data = json.loads(works("warmup", "--level", level, "--count", "3", "--format", "json"))
        assert {item["level"] for item in data["items"]} == {level}
    command = ["warmup", "--task", "isolate", "--at", "vowel", "--sound", "AO"]
    assert "only 0 of 8" in fails(*command)
    assert "/ô/" in works(*command, "--accent", "dictionary")


def test_the_fields_of_an_item() -> None:
    item = json.loads(works("warmup", "--task", "segment", "--count", "1", "--format", "json"))
    fields = item["items"][0]
    assert isinstance(fields["answer"], list)
    assert fields["answer"] == fields["parts"]
    odd = json.loads(works("warmup", "--task", "categorize", "--count", "1", "--format", "json"))
    assert odd["items"][0]["answer"] in odd["items"][0]["choices"]
    assert len(odd["items"][0]["choices_arpabet"]) == 3
    made = json.loads(works("warmup", "--task", "blend", "--made-up", "--format", "json"))
    assert all(item["made_up"] for item in made["items"])
    for name in ("say", "answer_line", "correction", "how_to_say", "difficulty", "level"):
        assert fields[name]


def test_a_chain_is_read_back() -> None:
    data = json.loads(works("chain", "gull", "--steps", "5", "--seed", "1", "--format", "json"))
    assert data["start"] == "gull"
    assert data["steps"][0]["at"] == "start"
    assert len(data["steps"]) == 6
    assert works("chain", "gull", "--seed", "1") == works("chain", "gull", "--seed", "1")


def test_the_bank_streams_rows(tmp_path: Path) -> None:
    done = run("bank", "--task", "delete", "--at", "onset2")
    assert done.returncode == 0
    rows = list(csv.DictReader(done.stdout.splitlines()))
    assert f"note: {len(rows)} items" in done.stderr
    assert {row["at"] for row in rows} == {"onset2"}
    out = tmp_path / "bank.jsonl"
    works("bank", "--task", "delete,add", "--at", "onset2", "--out", str(out))
    lines = [json.loads(line) for line in out.read_text("utf-8").splitlines()]
    assert {line["task"] for line in lines} == {"delete", "add"}
    table = tmp_path / "bank.csv"
    works("bank", "--task", "delete", "--at", "onset2", "--out", str(table))
    assert table.read_bytes().startswith(b"\xef\xbb\xbftask,at")
    script = f"{sys.executable} -m phonodrill bank --task delete | head -1"
    piped = subprocess.run(["bash", "-c", script], capture_output=True, check=False)
    assert piped.stderr == b""


def test_version_and_help() -> None:
    assert works("--version").startswith("phonodrill ")
    endings = [["endings", name] for name in ("add", "base", "table", "lookalikes", "sort")]
    plain = ([name] for name in ("warmup", "chain", "bank", "endings", "word", "lexicon"))
    for command in ([], *plain, *endings):
        assert "Usage" in works(*command, "--help")
    assert "warmup" in works()


def test_completion_is_offered() -> None:
    done = run("--show-completion")
    assert done.returncode in (0, 1)
    assert "--install-completion" in works("--help")


def test_sources_are_shown() -> None:
    text = works("lexicon")
    for name in ("CMUdict", "wordfreq", "LemmInflect", "misaki", "CC-BY-SA-4.0"):
        assert name in text
    assert "babysitting" in works("lexicon", "--disagreements")


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["word", "slopez"], "try: phonodrill word slope"),
        (["word", ""], "error: '' is not in the lexicon"),
        (["word", "slopez"], "phonodrill word slopez --guess"),
        (["word", "", "--guess"], "'' cannot be sounded out"),
        (["word", "b4", "--guess"], "'b4' cannot be sounded out"),
        (["word", "zzz", "--guess"], "cannot be said as a word"),
        (["word", "Zoë", "--guess"], "try: phonodrill word zoe"),
        (["word", "shytt", "--guess"], "not a word for class"),
        (["warmup", "--ending", "xs"], "unknown ending 'xs'"),
        (["warmup", "--ending", "ves"], "try: --ending"),
        (["warmup", "--sound", "qq"], "unknown sound 'qq'"),
        (["warmup", "--count", "0"], "--count is 0"),
        (["warmup", "--count", "10000"], "a number from 1 to 200"),
        (["warmup", "--count", "many"], "many"),
        (["warmup", "--band", "7"], "7"),
        (["warmup", "--drop", "middle"], "middle"),
        (["warmup", "--drop", "first", "--at", "last"], "disagree"),
        (["warmup", "--drop", "first", "--task", "blend"], "--drop goes with --task delete"),
        (["warmup", "--task", "delete", "--at", "rime"], "--task delete has no --at rime"),
        (["warmup", "--task", "rhyme"], "rhyme"),
        (["warmup", "--level", "harder"], "harder"),
        (["warmup", "--accent", "pinpen"], "try: --accent pin-pen"),
        (["warmup", "--accent", "dictionary,wh-w"], "stands alone"),
        (["warmup", "--made-up"], "--task delete takes no made-up words"),
        (["warmup", "--task", "blend", "--made-up", "--at", "syllable"], "one syllable"),
        (["warmup", "--task", "blend", "--made-up", "--ending", "es"], "--made-up goes without"),
        (["warmup", "--series", "../monday"], "is no name for a series"),
        (["warmup", "--series", "monday", "--after", "x.txt"], "both name a file"),
        (["warmup", "--after", "no/such/folder/x.txt"], "cannot write"),
        (["warmup", "--after", "."], "cannot read"),
        (["warmup", "--rest", "-1"], "-1"),
        (["chain"], "missing argument 'start'"),
        (["chain", "crabz"], "'crabz' is not in the lexicon"),
        (["chain", "crab", "crab"], "begin and end with 'crab'"),
        (["chain", "ponies"], "words of one syllable can"),
        (["chain", "damn"], "cannot be in a chain"),
        (["chain", "crab", "--steps", "0"], "0"),
        (["chain", "rope", "horse"], "no chain leads"),
        (["bank", "--task", "delte"], "try: --task delete"),
        (["bank", "--task", "delete", "--at", "rime"], "has no such items"),
        (["bank", "--task", "delete", "--made-up"], "has no such items"),
        (["bank", "--format", "xls"], "xls"),
        (["bank", "--task", "delete", "--out", "no/such/folder/b.csv"], "cannot write"),
        (["bank", "--task", "delete", "--at", "coda1", "--sound", "zh"], "no item holds"),
        (["warmup", "--cuont", "3"], "--count"),
        (["warmpu"], "warmup"),
        (["sentences", "gulling"], "no sentence with 'gulling'"),
        (["endings", "add", "ferry", "--ending", "en"], "try: phonodrill endings add --help"),
        (["endings", "add", "ferry", "--ending"], "try: phonodrill endings add --help"),
        (["warmup", "--words"], "try: phonodrill warmup --help"),
        (["lesson", "--focus", "es,", "ies"], "try: phonodrill lesson --help"),
        (["--nothing"], "try: phonodrill --help"),
        (["words", "add", "blorf"], "is not in the lexicon"),
        (["words", "add", "hell"], "not a word for class"),
        (["words", "remove", "crab"], "phonodrill words list"),
        (["words", "ad", "crab"], "ad"),
        (["warmup", "--format", "xls"], "xls"),
        (["warmup", "--seed", "-1"], "-1"),
        (["warmup", "--sound", "zh", "--ending", "ies"], "for class"),
        (["endings", "sort", "--by", "color"], "color"),
        (["endings", "sort", "--ending", "xs"], "unknown ending 'xs'"),
        (["endings", "add", "ferry", "--ending", "ful"], "ful"),
        (["endings", "add", "two words"], "is not a word of letters"),
        (["endings", "add", ""], "is not a word of letters"),
        (["endings", "add", "123"], "is not a word of letters"),
        (["endings", "add", "'s"], "is not a word of letters"),
        (["endings", "add", "a" * 41], "at most 40 letters"),
        (["endings", "add", "hell"], "not a word for class"),
        (["endings", "add", "blorf", "--sounds", "B L X"], "not a CMUdict phone"),
        (["endings", "add", "blorf", "--sounds", "B L"], "no vowel"),
        (["endings", "base", "naïves"], "is not a word of letters"),
        (["endings", "table", "--count", "0"], "--count is 0"),
        (["endings", "table", "--band", "4"], "4"),
        (["endings", "lookalikes", "--ending", "q"], "unknown ending 'q'"),
        (["endings", "bse", "ferries"], "bse"),
        (["warmup", "--words", "no/such/file.txt"], "cannot read no/such/file.txt"),
        (["warmup", "--out", "no/such/folder/list.txt"], "cannot write"),
        (["lexicon", "--out", "."], "cannot write"),
    ],
)
def test_bad_input_is_one_clear_line(arguments: list[str], message: str) -> None:
    if message == "for class":
        message = "only 0 of 8"
    assert message in fails(*arguments)


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("empty.txt", "has no word in it"),
        ("latin.txt", "is not UTF-8 text"),
        ("long.txt", "more than 20,000 lines"),
    ],
)
def test_bad_files_are_one_clear_line(folder: Path, name: str, message: str) -> None:
    assert message in fails("warmup", "--words", str(folder / name))
    assert message in fails("endings", "sort", "--words", str(folder / name))


def test_a_file_is_replaced_only_when_its_new_content_is_complete(tmp_path: Path) -> None:
    out = tmp_path / "list.txt"
    out.write_text("old")
    fails("warmup", "--sound", "zh", "--out", str(out))
    assert out.read_text() == "old"
    works("warmup", "--out", str(out))
    assert out.read_text("utf-8").startswith("Oral warm-up")
    assert [path.name for path in tmp_path.iterdir()] == ["list.txt"]


def test_an_unfit_word_is_not_echoed() -> None:
    message = fails("word", "damn")
    assert "damn" not in message


def test_a_closed_pipe_is_no_error() -> None:
    script = f"{sys.executable} -m phonodrill lexicon --disagreements | head -1"
    done = subprocess.run(["bash", "-c", script], capture_output=True, check=False, text=True)
    assert done.stderr == ""


def test_nothing_heavy_is_imported_for_a_warmup() -> None:
    code = (
        "import sys; from phonodrill.cli.main import main; sys.argv = ['phonodrill', 'warmup']\n"
        "try: main()\nexcept SystemExit: pass\n"
        "print(sorted({'numpy', 'nltk', 'wordfreq', 'lemminflect', 'cmudict', 'misaki', 'rich'}"
        " & set(sys.modules)), file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert done.stderr.splitlines()[-1] == "[]"

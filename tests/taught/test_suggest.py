from __future__ import annotations

import pytest

from phonodrill import Gate, Lexicon
from phonodrill.render import as_text
from phonodrill.render.views import taught as view
from phonodrill.services.taught_steps import default_path
from phonodrill.taught.constraints import apart
from phonodrill.taught.steps import Taught, parse_steps
from phonodrill.taught.suggest import OURS, Goal, Material, Suggestion, suggest, write_lines
from phonodrill.taught.units import find_units
from tests.conftest import WORDLISTS

SHIPPED = WORDLISTS / "taught_default.txt"


def tokens(result: Suggestion) -> list[str]:
    return [line.text for line in result.lines if not line.text.startswith("word:")]


def test_the_shipped_order_is_what_the_code_gives(shipped: Suggestion) -> None:
    assert as_text.render(view.suggested(shipped, 2)) == SHIPPED.read_text("utf-8")
    assert default_path().read_bytes() == SHIPPED.read_bytes()


def test_the_shipped_order_is_read_whole(shipped: Suggestion, lexicon: Lexicon) -> None:
    taught = parse_steps(SHIPPED.read_text("utf-8").splitlines(), lexicon.correspondences())
    assert not taught.problems
    assert [step.text for step in taught.steps] == [line.text for line in shipped.lines]


@pytest.mark.source("Common Core RF.K.3, RF.1.3: letters, digraphs, final e, teams, endings")
def test_the_shipped_order_has_what_a_class_needs(shipped: Suggestion) -> None:
    named = {token for text in tokens(shipped) for token in text.split(", ")}
    assert set("abcdefghijklmnoprstuvwxyz") <= named
    assert {"sh", "ch", "th", "wh", "ck", "ng", "qu"} <= named
    assert {"a_e", "i_e", "o_e", "u_e", "e_e", "ai", "ay", "ee", "ea", "oa", "ow", "igh"} <= named
    assert {"ar", "er", "ir", "or", "ur", "oi", "oy", "ou", "au", "aw", "oo"} <= named
    assert {"-s", "-es", "-ies", "-ed", "-ing"} <= named
    assert 90 <= len(shipped.lines) <= 135


def test_the_shipped_order_breaks_no_constraint(shipped: Suggestion, material: Material) -> None:
    assert shipped.broken[OURS] == 0
    units = {unit.token: unit for unit in find_units(material.inventory, material.words)}
    order = [units[token] for token in tokens(shipped)]
    for place, unit in enumerate(order):
        for later, other in enumerate(order[place + 1 :], place + 1):
            assert later - place >= apart(unit, other), (unit.token, other.token)
    places = {unit.token: place for place, unit in enumerate(order)}
    assert max(places[vowel] for vowel in "aeiou") < 20
    assert places["h"] < places["sh"]
    assert places["a"] < places["a_e"] < places["ai"]
    assert places["-s"] < places["-es"] < places["-ies"]


def test_the_shipped_order_grows_faster_than_others(shipped: Suggestion) -> None:
    curves = shipped.curves
    areas = {name: sum(curve) for name, curve in curves.items()}
    assert areas[OURS] > 1.015 * areas["by frequency, constraints kept"]
    assert areas[OURS] > 1.3 * areas["by alphabet"]
    # Without constraints frequency is no worse: what they cost is small.
    assert areas[OURS] > 0.97 * areas["by frequency"]
    assert {curve[-1] for curve in curves.values()} == {curves[OURS][-1]}


def test_every_example_passes_the_gate(shipped: Suggestion, lexicon: Lexicon, gate: Gate) -> None:
    shown = [
        word
        for line in shipped.lines
        for word in [*line.reason.partition(": ")[2].split(", "), *line.text[5:].split(" ")]
        if line.text.startswith("word:") or ": " in line.reason
    ]
    entries = list(filter(None, map(lexicon.get, shown)))
    assert len(entries) > 250
    for entry in entries:
        normals = [said.normal for said in entry.pronunciations]
        assert gate.allows(entry.word, normals), entry.word


def test_words_taught_whole_are_much_used_and_far_off(shipped: Suggestion) -> None:
    lines = [line.text for line in shipped.lines]
    whole = [word for text in lines if text.startswith("word:") for word in text.split()[1:]]
    assert len(whole) == len(set(whole))
    assert {"the", "was", "said", "they", "of", "come"} <= set(whole)
    assert not {"cat", "and", "it", "up"} & set(whole)


def test_an_order_goes_on_from_what_is_taught(material: Material) -> None:
    start = parse_steps(["m s", "a", "word: the"], material.inventory)
    result = suggest(material, Goal.DECODABLE, 1, start, 12)
    texts = [line.text for line in result.lines]
    assert texts[:3] == ["m s", "a", "word: the"]
    assert len(texts) == 15
    assert not {"m", "s", "a"} & set(texts[3:])
    assert texts[3] not in ("n", "z")
    assert all("the" not in text.split() for text in texts[3:])
    again = parse_steps(write_lines(result.lines).splitlines(), material.inventory)
    assert [step.text for step in again.steps] == texts


def test_sentences_as_a_goal(
    lexicon: Lexicon, gate: Gate, material: Material, nothing: Taught, shipped: Suggestion
) -> None:
    from phonodrill.reading.material import sentence_targets

    both = material._replace(sentences=sentence_targets(lexicon, gate))
    found = suggest(both, Goal.SENTENCES, 1, nothing)
    from phonodrill.taught.growth import growth

    lines = [line.text for line in shipped.lines]
    by_words = growth(both.sentences, parse_steps(lines, material.inventory))
    assert found.broken[OURS] == 0
    assert sum(found.curves[OURS]) > sum(by_words)

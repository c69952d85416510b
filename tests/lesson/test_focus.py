from __future__ import annotations

import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.lesson.focus import Kind, parse_focus


@pytest.mark.parametrize(
    ("text", "kind", "plain"),
    [
        ("ies, es", Kind.ENDINGS, "es,ies"),
        ("-es  -ies", Kind.ENDINGS, "es,ies"),
        ("sh ch", Kind.SPELLING, "sh,ch"),
        ("-ed", Kind.ENDINGS, "ed"),
        ("er", Kind.ENDINGS, "er"),
        ("sh", Kind.SPELLING, "sh"),
        ("a_e", Kind.SPELLING, "a_e"),
        ("c=s", Kind.SPELLING, "c=s"),
        ("/k/", Kind.SOUND, "/k/"),
        ("i:e", Kind.CONTRAST, "i:e"),
        ("delete", Kind.TASK, "delete"),
    ],
)
def test_what_may_be_a_focus(lexicon: Lexicon, text: str, kind: Kind, plain: str) -> None:
    focus = parse_focus(text, lexicon)
    assert (focus.kind, focus.text) == (kind, plain)


@pytest.mark.source("the commonest spellings of /k/: see tests/external/test_spellings.py")
def test_the_spellings_of_a_sound(lexicon: Lexicon) -> None:
    rows = parse_focus("/k/", lexicon).rows
    assert [row.correspondence.spelling for row in rows] == ["c", "k", "ck"]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no focus"),
        ("es,,ies", "no focus"),
        ("zzq", "no correspondence is spelled 'zzq'"),
        ("c=m", "c does not say that"),
        ("i:", "--focus is 'i:'"),
        ("i:i", "names one sound twice"),
        ("i:p", "a vowel and a consonant"),
        ("/qq/", "unknown sound"),
        ("'s", "no lesson on 's"),
        ("delte", "did you mean delete?"),
    ],
)
def test_no_focus(lexicon: Lexicon, text: str, says: str) -> None:
    with pytest.raises(PhonodrillError) as caught:
        parse_focus(text, lexicon)
    assert says in f"{caught.value.message} {caught.value.hint}"

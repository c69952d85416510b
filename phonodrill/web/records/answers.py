"""What the API answers about records, field by field; see :mod:`phonodrill.web.answers`."""

from __future__ import annotations

from phonodrill.web.answers import Answer

RECORDS_ANSWERS = {
    "/records/groups": Answer(
        "The groups, with the codes of their students.",
        {},
        fields={
            "groups": "Each with its name, how many students and checks it has, the codes, and "
            "the keys of the group and of its students, which stand in addresses.",
        },
    ),
    "/records/checks": Answer(
        "Up to 50 checks, the latest first.",
        {},
        kind="checks",
    ),
    "/records/check": Answer(
        "A check as it was made, and what is entered.",
        {},
        kind="check",
    ),
    "/records/results": Answer(
        "How many results were new; those sent before with the same entry are not.",
        {},
        fields={"check": "The digits that name the check.", "new": "How many results were new."},
    ),
    "/records/progress": Answer(
        "Standings by student and skill, growth, confusions, and words to review.",
        {},
        kind="progress",
    ),
    "/records/next": Answer(
        "What to teach next, for whom, and why.",
        {},
        kind="next",
    ),
}

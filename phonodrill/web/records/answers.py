"""What the API answers about records, field by field; see :mod:`phonodrill.web.answers`."""

from __future__ import annotations

from phonodrill.web.answers import Answer

_RULE = "By which the answers were judged."
_COUNT = "How many answers there are."
_CONFUSIONS = "Likely confusions that wrong answers showed."
_REVIEW = "Words that were missed and come back, each with the day since when it is due."

RECORDS_ANSWERS = {
    "/records/groups": Answer(
        "The groups, with the codes of their students.",
        {},
        {
            "groups": "Each with its name, how many students and checks it has, the codes, and "
            "the keys of the group and of its students, which stand in addresses.",
        },
    ),
    "/records/checks": Answer(
        "Up to 50 checks, the latest first.",
        {},
        {"checks": "Each with its digits, group, focus, date, and how many items and results."},
    ),
    "/records/check": Answer(
        "A check as it was made, and what is entered.",
        {},
        {
            "check": "The digits that name it.",
            "group": "Name of its group.",
            "focus": "What it is about.",
            "date": "When it was made.",
            "band": "Highest band of its words.",
            "seed": "Makes the same items again.",
            "items": "What is asked, in order, each with its answer and the skills it asks for.",
            "students": "Codes of the group.",
            "results": "Position, student, right, and what was said instead.",
        },
    ),
    "/records/results": Answer(
        "How many results were new; those sent before with the same entry are not.",
        {},
        {"check": "The digits that name the check.", "new": "How many results were new."},
    ),
    "/records/progress": Answer(
        "Standings by student and skill, growth, confusions, and words to review.",
        {},
        {
            "group": "Name of the group.",
            "student": "Code of the student; empty for all.",
            "rule": _RULE,
            "answers": _COUNT,
            "standings": "Each with student, skill, right of asked, interval and verdict.",
            "growth": "Days of checks, and one number a day for each curve.",
            "confusions": _CONFUSIONS,
            "review": _REVIEW,
        },
    ),
    "/records/next": Answer(
        "What to teach next, for whom, and why.",
        {},
        {
            "group": "Name of the group.",
            "rule": _RULE,
            "answers": _COUNT,
            "next": "Foci in order, each with its skill, right of asked, and who needs it.",
            "where": "Where items of the first focus go least well.",
            "confusions": _CONFUSIONS,
            "teams": "Small groups by shared need.",
            "no_need_known": "Students without a known need.",
            "review": _REVIEW,
        },
    ),
}

"""What the API answers, field by field, for the OpenAPI schema and the page that shows it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

JSON = "application/json"
EXAMPLE = "x-example"
"""Where the schema holds an example of what is sent."""
VERSIONS = "Version of the program, and of these fields."
_NOTES = "What could not be met, and what would give more."
_SEED = "Makes the same choice again."


class Answer(NamedTuple):
    """What a route answers.

    Attributes:
        says: in a sentence.
        example: fields to send, which are answered with all the fields below.
        fields: name -> what it holds.
    """

    says: str
    example: Mapping[str, str]
    fields: Mapping[str, str]


ANSWERS = {
    "/lesson": Answer(
        "One lesson; for more days than one, lessons: a list of such.",
        {"focus": "es,ies"},
        {"lesson": "Title, what was asked for, minutes, notes, and the sections in their order."},
    ),
    "/warmup": Answer(
        "Items, each with its checked answer.",
        {"task": "delete", "count": "4"},
        {
            "task": "What is done with each word.",
            "at": "Where in the word.",
            "seed": _SEED,
            "notes": _NOTES,
            "review": "Words of this set that an earlier set had, to come back to.",
            "items": "Each with stimulus, sound, answer, what else is right, and what to say.",
        },
    ),
    "/chain": Answer(
        "Words, each of which differs from the one before in one sound.",
        {"start": "crab"},
        {
            "seed": _SEED,
            "start": "The first word.",
            "end": "The last word.",
            "notes": _NOTES,
            "steps": "Each with the word, the sound changed, and what to say.",
        },
    ),
    "/bank": Answer(
        "A part of all items of a task.",
        {"task": "blend"},
        {
            "task": "What is done with each word.",
            "at": "Where in the word.",
            "offset": "How many items come before.",
            "next": "The offset of the next part; nothing after the last.",
            "items": "As in a warm-up.",
        },
    ),
    "/endings/sort": Answer(
        "Words in groups.",
        {"ending": "es,ies"},
        {
            "by": "What they are sorted by.",
            "seed": _SEED,
            "groups": "Each with its sound, spelling, rule or base, and the words with reasons.",
            "left_out": "Words that are in no group, and why.",
        },
    ),
    "/endings/add": Answer(
        "A word with an ending.",
        {"word": "ferry"},
        {
            "base": "The word.",
            "ending": "The ending as it was asked for.",
            "note": "What there is to say if there is no form.",
            "forms": "Each with its spelling, the rule, the change letter by letter, the sound.",
        },
    ),
    "/endings/base": Answer(
        "The words that a form may come from.",
        {"word": "ferries"},
        {
            "form": "The form.",
            "bases": "Each with its ending, the rule and the reason, the likeliest first.",
            "note": "Why it has none, if it has none.",
        },
    ),
    "/endings/table": Answer(
        "A rule card.",
        {},
        {
            "ending": "The ending.",
            "band": "Highest band of the examples.",
            "seed": _SEED,
            "rules": "Each with its condition, reason and examples.",
            "watch_outs": "Words that need a warning.",
        },
    ),
    "/endings/lookalikes": Answer(
        "Words to be ready for.",
        {"ending": "es,ies"},
        {
            "focus": "The endings.",
            "band": "Highest band of the words.",
            "seed": _SEED,
            "lookalikes": "Kinds of traps, each with its words.",
        },
    ),
    "/pairs": Answer(
        "Pairs of words.",
        {"sounds": "i:e"},
        {
            "kind": "What the two words have to do with each other.",
            "seed": _SEED,
            "pairs": "Each with both words, their sounds and letters, and where they differ.",
        },
    ),
    "/decodable": Answer(
        "Words that can be read by what was taught.",
        {"taught": "default:40"},
        {
            "seed": _SEED,
            "fit": "How many words there are to choose from.",
            "words": "Those chosen, each with its letters and sounds.",
        },
    ),
    "/spellings": Answer(
        "Shares of spellings, or of sounds.",
        {"sound": "f"},
        {
            "sound": "The sound asked for; may be empty.",
            "spelling": "The spelling asked for; may be empty.",
            "shares": "Each with its share of the words and of the uses, and examples.",
        },
    ),
    "/passage": Answer(
        "The words of the text, counted by how the class can read them.",
        {"text": "The ferries sat in the harbor.", "taught": "default:40"},
        {
            "words": "How many words.",
            "decodable": "How many of them can be read by what was taught.",
            "taught_whole": "How many were taught whole.",
            "not_for_class": "How many are not for class; they are not repeated.",
            "numbers": "How many numbers; they are no words here.",
            "share": "Share of the words that can be read, 0 to 1.",
            "not_yet": "Words not yet readable: word, count, needs, and guess (if it is read so).",
            "next_step": "The one step that would make most words readable; may be empty.",
            "next_step_words": "How many words it would make readable.",
            "beyond_band": "Words that children of the band may not know.",
            "guesses": "Words that the lexicon lacks, with the reading guessed, as ARPAbet.",
        },
    ),
    "/word": Answer(
        "All that is known of a word.",
        {"word": "ferries"},
        {
            "word": "The word.",
            "band": "How familiar: 1 to 3, 4 for older children, 0 not known.",
            "zipf": "How often it is used, as a Zipf frequency.",
            "parts_of_speech": "What it may be in a sentence.",
            "pronunciations": "Each with its syllables, and its letters tied to sounds.",
            "correspondences": "Its spellings, each with its share.",
            "bases": "Words it comes from.",
            "forms": "Its inflected forms.",
            "homophones": "Words that sound the same.",
            "rhymes": "Words that rhyme with it.",
            "in_class": "Whether a drill may use it, or why not.",
        },
    ),
    "/sentences": Answer(
        "Sentences for a word.",
        {"word": "ferries"},
        {
            "word": "The word.",
            "sentences": "Each whole and with a gap for the word.",
        },
    ),
    "/words": Answer(
        "The words that the teacher added or blocked.",
        {},
        {"words": "Each with what is done with it."},
    ),
    "/taught/check": Answer(
        "The steps, one by one.",
        {"taught": "default:12"},
        {
            "file": "What the steps are called.",
            "band": "Highest band of the words counted.",
            "steps": "Each with what it was understood as, how many words it opens, the total so "
            "far, examples, and notes on what is used before it is taught.",
            "problems": "Lines that could not be read, with their numbers.",
        },
    ),
    "/taught/suggest": Answer(
        "The steps taught already, then those to teach next.",
        {"taught": "default:12", "steps": "3"},
        {
            "goal": "What the order is to open.",
            "band": "Highest band of the words counted.",
            "seed": "Of the search.",
            "steps": "Each with its reason, the total open by then, and is_new.",
            "growth": "Words or sentences open after 0, 1, 2 ... steps, in this and other orders.",
            "constraints_broken": "How many constraints each of these orders breaks.",
        },
    ),
    "/lexicon": Answer(
        "Sources and counts of the lexicon.",
        {},
        {
            "sources": "Each with version, license, credit and what it is used for.",
            "counts": "What is counted, and how many there are.",
            "disagreements": "Forms that are not base + ending, if asked for.",
        },
    ),
}


def describe_answers(
    schema: dict[str, Any], prefix: str, answers: Mapping[str, Answer]
) -> dict[str, Any]:
    """Put what is answered into an OpenAPI schema.

    Args:
        schema: as FastAPI writes it; it is changed.
        prefix: what all addresses of the API begin with.
        answers: what each route answers.
    """
    for path, routes in schema["paths"].items():
        if (told := answers.get(path.removeprefix(prefix))) is None:
            continue
        for route in routes.values():
            fields = {"phonodrill": VERSIONS, **told.fields}
            properties = {name: {"description": words} for name, words in fields.items()}
            content = {JSON: {"schema": {"type": "object", "properties": properties}}}
            route["responses"]["200"] = {"description": told.says, "content": content}
            route[EXAMPLE] = dict(told.example)
    return schema

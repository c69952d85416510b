"""What the teacher says: the only place with classroom wording for tasks.

One row a task and place: a title, how to ask, how the answer is given, and
what to say if a student is unsure. Change or translate the rows; the names in
braces are filled in by `script.py`:

    {stimulus}  the word, quoted, with its reading if it needs one
    {answer}    the word that is heard in the end, quoted
    {sound}     the sound the item is about, or “cow” where it is a word
    {new}       the sound that is added, put in its place, or the odd one's
    {words}     the words to compare     {foil}   a word without the sound
    {parts}     the sounds or parts, one by one    {count}  how many they are
    {kind}      word or made-up word
"""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.sounds.places import Position


class Phrase(NamedTuple):
    """The words for one kind of item."""

    title: str
    ask: str
    answer: str
    correct: str


_SAY = "Say {stimulus}. "
_LISTEN = "Listen: {words}. "
_ISOLATED = "Listen: {stimulus}. I hear {sound}. Say it with me: {sound}."
_SAME = "Listen to each: {words}. I hear {sound} every time, and not in “{foil}”."
_ODD = "Listen to each: {words}. I hear {new} in {answer}, {sound} in the others."
_TAKEN = "Listen: {stimulus}. I leave off {sound}: {answer}. Say it with me: {answer}."
_ADDED = "Listen: {stimulus}. I add {sound}: {answer}. Say it with me: {answer}."
_CHANGED = "Listen: {stimulus}. I say {new} for {sound}: {answer}. Say it with me: {answer}."

_ROWS = {
    "isolate": {
        "first": (
            "Say the first sound",
            _SAY + "What is the first sound?",
            "{sound}",
            _ISOLATED,
        ),
        "last": ("Say the last sound", _SAY + "What is the last sound?", "{sound}", _ISOLATED),
        "vowel": (
            "Say the vowel sound",
            _SAY + "Which vowel sound is in it?",
            "{sound}",
            _ISOLATED,
        ),
        "onset2": (
            "Say the second of two consonants",
            _SAY + "Two consonants begin it. What is the second one?",
            "{sound}",
            _ISOLATED,
        ),
        "coda1": (
            "Say the consonant right after the vowel",
            _SAY + "Consonants end it. What is the first one after the last vowel?",
            "{sound}",
            _ISOLATED,
        ),
        "syllable": ("Say the first part", _SAY + "What is its first part?", "{sound}", _ISOLATED),
        "onset": (
            "Say what comes before the vowel",
            _SAY + "Which sounds come before the vowel?",
            "{sound}",
            _ISOLATED,
        ),
        "rime": (
            "Say the vowel and what follows",
            _SAY + "Say it from the vowel on.",
            "{sound}",
            _ISOLATED,
        ),
    },
    "identify": {
        "first": (
            "Find the same first sound",
            _LISTEN + "Which sound do they all begin with? Does “{foil}” begin with it?",
            "{sound}; “{foil}” does not",
            _SAME,
        ),
        "last": (
            "Find the same last sound",
            _LISTEN + "Which sound do they all end with? Does “{foil}” end with it?",
            "{sound}; “{foil}” does not",
            _SAME,
        ),
        "vowel": (
            "Find the same vowel sound",
            _LISTEN + "Which vowel sound is in all of them? Is it in “{foil}”?",
            "{sound}; “{foil}” does not have it",
            _SAME,
        ),
        "onset": (
            "Find the same beginning",
            _LISTEN + "Which sounds do they all begin with? Does “{foil}” begin with them?",
            "{sound}; “{foil}” does not",
            _SAME,
        ),
        "rime": (
            "Find what rhymes",
            _LISTEN + "What is the same in all of them? Does “{foil}” rhyme with them?",
            "{sound}; “{foil}” does not",
            _SAME,
        ),
    },
    "categorize": {
        "first": (
            "Find the odd one out by the first sound",
            _LISTEN + "Which one does not begin like the others?",
            "{answer}: it begins with {new}, the others with {sound}",
            _ODD,
        ),
        "last": (
            "Find the odd one out by the last sound",
            _LISTEN + "Which one does not end like the others?",
            "{answer}: it ends with {new}, the others with {sound}",
            _ODD,
        ),
        "vowel": (
            "Find the odd one out by the vowel",
            _LISTEN + "Which one has another vowel sound?",
            "{answer}: it has {new}, the others have {sound}",
            _ODD,
        ),
        "onset": (
            "Find the odd one out by what comes before the vowel",
            _LISTEN + "Which one does not begin like the others?",
            "{answer}: it begins with {new}, the others with {sound}",
            _ODD,
        ),
        "rime": (
            "Find the one that does not rhyme",
            _LISTEN + "Which one does not rhyme with the others?",
            "{answer}: it ends in {new}, the others in {sound}",
            _ODD,
        ),
    },
    "blend": {
        "each": (
            "Put sounds together",
            "Listen: {parts}. Which {kind} do they make?",
            "{answer}",
            "Listen: {parts}. I say them closer and closer: {answer}.",
        ),
        "onset": (
            "Put beginning and rest together",
            "Listen: {parts}. Which {kind} do they make?",
            "{answer}",
            "Listen: {parts}. I say them closer and closer: {answer}.",
        ),
        "syllable": (
            "Put two parts together",
            "Listen: {parts}. Which {kind} do they make?",
            "{answer}",
            "Listen: {parts}. I say them closer and closer: {answer}.",
        ),
    },
    "segment": {
        "each": (
            "Take words apart, sound by sound",
            _SAY + "Say its sounds one by one. How many are there?",
            "{parts}: {count}",
            "Listen: {stimulus}. One finger for each sound: {parts}. Now with me.",
        ),
        "onset": (
            "Take words apart before the vowel",
            _SAY + "Say what comes before the vowel, then the rest.",
            "{parts}",
            "Listen: {stimulus}. First {sound}, then the rest: {parts}. Now with me.",
        ),
        "syllable": (
            "Take words apart, part by part",
            _SAY + "Say its two parts.",
            "{parts}",
            "Listen: {stimulus}. One clap for each part: {parts}. Now with me.",
        ),
    },
    "delete": {
        "first": (
            "Leave off the first sound",
            _SAY + "Leave off the first sound, {sound}.",
            "{answer}",
            _TAKEN,
        ),
        "last": (
            "Leave off the last sound",
            _SAY + "Leave off the last sound, {sound}.",
            "{answer}",
            _TAKEN,
        ),
        "onset2": (
            "Leave off the second of two consonants",
            _SAY + "Leave off {sound}, the second sound.",
            "{answer}",
            _TAKEN,
        ),
        "coda1": (
            "Leave off the consonant right after the vowel",
            _SAY + "Leave off {sound}, right after the vowel.",
            "{answer}",
            _TAKEN,
        ),
        "syllable": ("Leave off a part", _SAY + "Leave off {sound}.", "{answer}", _TAKEN),
        "onset": (
            "Leave off what comes before the vowel",
            _SAY + "Leave off all that comes before the vowel, {sound}.",
            "{answer}",
            _TAKEN,
        ),
    },
    "add": {
        "first": ("Add a first sound", _SAY + "Add {sound} in front.", "{answer}", _ADDED),
        "last": ("Add a last sound", _SAY + "Add {sound} at the end.", "{answer}", _ADDED),
        "onset2": (
            "Add a second consonant",
            _SAY + "Add {sound} after the first sound.",
            "{answer}",
            _ADDED,
        ),
        "coda1": (
            "Add a consonant right after the vowel",
            _SAY + "Add {sound} right after the vowel.",
            "{answer}",
            _ADDED,
        ),
        "syllable": ("Add a part", _SAY + "Add {sound} {side}.", "{answer}", _ADDED),
        "onset": (
            "Add consonants in front",
            _SAY + "Add {sound} in front.",
            "{answer}",
            _ADDED,
        ),
    },
    "substitute": {
        "first": (
            "Change the first sound",
            _SAY + "Change the first sound, {sound}, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "last": (
            "Change the last sound",
            _SAY + "Change the last sound, {sound}, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "vowel": (
            "Change the vowel sound",
            _SAY + "Change the vowel sound, {sound}, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "onset2": (
            "Change the second of two consonants",
            _SAY + "Change the second sound, {sound}, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "coda1": (
            "Change the consonant right after the vowel",
            _SAY + "Change {sound}, right after the vowel, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "syllable": ("Change a part", _SAY + "Change {sound} to {new}.", "{answer}", _CHANGED),
        "onset": (
            "Change what comes before the vowel",
            _SAY + "Change what comes before the vowel, {sound}, to {new}.",
            "{answer}",
            _CHANGED,
        ),
        "rime": (
            "Change the vowel and what follows",
            _SAY + "Keep the beginning. Change {sound} to {new}.",
            "{answer}",
            _CHANGED,
        ),
    },
    "reverse": {
        "each": (
            "Say the sounds from last to first",
            _SAY + "Say its sounds from last to first. Which word is it now?",
            "{answer}",
            "Listen: {stimulus}. From last to first: {turned}: {answer}.",
        ),
        "syllable": (
            "Turn the two parts around",
            _SAY + "Say its two parts the other way around.",
            "{parts}",
            "Listen: {stimulus}. The other way around: {parts}. Now with me.",
        ),
    },
}

IN_SHORT = {
    "isolate": "name a sound in a word",
    "identify": "name the sound that words share",
    "categorize": "find the odd one out",
    "blend": "put sounds together to a word",
    "segment": "take a word apart",
    "delete": "leave a sound off",
    "add": "put a sound on",
    "substitute": "change a sound",
    "reverse": "turn the sounds around",
}
"""Each task in a few words, for a list to choose from."""

SHOWS = {
    "isolate": "hears {place} by itself",
    "identify": "hears that words have the same {bare}",
    "categorize": "hears which word has another {bare}",
    "blend": "joins {parts} into a word",
    "segment": "takes a word apart into {parts}",
    "delete": "leaves off {place} and says what is left",
    "add": "adds {place} and says the new word",
    "substitute": "changes {place} and says the new word",
    "reverse": "turns the order of {parts} and says the new word",
}
"""What a right answer shows, by task."""
PHRASES: dict[tuple[str, Position], Phrase] = {
    (task, Position(at)): Phrase(*row) for task, rows in _ROWS.items() for at, row in rows.items()
}

WORD, MADE_UP_WORD = "word", "made-up word"
IN_FRONT, AT_THE_END = "in front", "at the end"
SOUND_COUNT = "{count} sounds"
ALSO = "{answer} (also {others})"
HOLD = "Hold {sounds}."
CLIP = "Say {sounds} short, with no “uh” after."
UNPUFFED = (
    "Say “{word}” anew, with a puff of air at {sound}: after /s/ that sound has none, "
    "so to some ears “{other}” without /s/ is not quite “{word}”."
)
CHAIN_START = "Say “{word}”."
CHAIN_CHANGE = "Change {old} to {new}."
CHAIN_ADD = "Add {new} {place}."
CHAIN_LEAVE_OFF = "Leave off {old}."
CHAIN_PLACES = {"first": "in front", "inside": "inside", "last": "at the end", "vowel": "inside"}

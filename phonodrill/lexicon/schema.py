"""The tables of the compiled lexicon, one SQLite file."""

from __future__ import annotations

from pathlib import Path

SCHEMA_VERSION = 4
LEXICON_PATH = Path(__file__).with_name("lexicon.sqlite")

SCHEMA = """
CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE source (
    name TEXT PRIMARY KEY, version TEXT, license TEXT, credit TEXT, used_for TEXT
) WITHOUT ROWID;
CREATE TABLE word (
    word TEXT PRIMARY KEY,
    zipf INTEGER NOT NULL,           -- hundredths of log10 of uses in a billion words
    band INTEGER NOT NULL,           -- 0 not for class, 1-4 familiarity
    reason TEXT NOT NULL,            -- why band 0 (empty for a name), or 'not reviewed'
    parts_of_speech TEXT NOT NULL,   -- comma-separated, main one first
    picturable INTEGER NOT NULL,
    is_name INTEGER NOT NULL,        -- known only as a name or not known as a word
    is_heteronym INTEGER NOT NULL,
    base TEXT NOT NULL,              -- the commonest base word; empty: the word itself
    endings TEXT NOT NULL            -- comma-separated spelled endings; empty: no regular form
) WITHOUT ROWID;
CREATE INDEX word_by_band ON word (band) WHERE band > 0;
CREATE TABLE pronunciation (
    word TEXT NOT NULL,
    place INTEGER NOT NULL,          -- order of the variants, 0 first
    sounds TEXT NOT NULL,            -- one code a phoneme
    stress TEXT NOT NULL,            -- one digit a vowel
    normal TEXT NOT NULL,            -- form for comparing
    rhyme INTEGER NOT NULL,          -- how many sounds from the last stressed vowel on
    origin TEXT NOT NULL,            -- mended, base + ending; empty: CMUdict
    second_opinion TEXT NOT NULL,    -- confirmed, contradicted, accepted, or empty: not listed
    with_base TEXT NOT NULL,         -- agrees, differs, or empty: no regular base
    usable INTEGER NOT NULL,         -- may be used by default
    meaning TEXT NOT NULL,           -- which reading of a heteronym, or empty
    chunks TEXT NOT NULL,            -- letters tied to sounds (graphemes/chunk.py)
    PRIMARY KEY (word, place)
) WITHOUT ROWID;
CREATE INDEX pronunciation_by_normal ON pronunciation (normal);
CREATE TABLE joint (                 -- where the second of two joined words begins (joints.py)
    word TEXT NOT NULL, place INTEGER NOT NULL, sound INTEGER NOT NULL,
    PRIMARY KEY (word, place)
) WITHOUT ROWID;
CREATE TABLE heard (                 -- known words (bands 1-3) by sound
    normal TEXT NOT NULL,
    word TEXT NOT NULL,
    band INTEGER NOT NULL,
    is_form INTEGER NOT NULL,        -- a regular inflected form
    PRIMARY KEY (normal, word)
) WITHOUT ROWID;
CREATE TABLE spelled (               -- words a drill may use (bands 1-3), for reading many at once
    band INTEGER NOT NULL, word TEXT NOT NULL,
    zipf INTEGER NOT NULL, base TEXT NOT NULL, endings TEXT NOT NULL,
    sounds TEXT NOT NULL, stress TEXT NOT NULL, normal TEXT NOT NULL, chunks TEXT NOT NULL,
    normals TEXT NOT NULL,           -- of every way it may be said, comma-separated
    PRIMARY KEY (band, word)
) WITHOUT ROWID;
CREATE TABLE word_ending (           -- regular forms by spelled ending
    ending TEXT NOT NULL,
    band INTEGER NOT NULL,
    word TEXT NOT NULL,
    PRIMARY KEY (ending, band, word)
) WITHOUT ROWID;
CREATE TABLE inflection (
    form TEXT NOT NULL, base TEXT NOT NULL, part_of_speech TEXT NOT NULL,
    inflection TEXT NOT NULL,
    ending TEXT NOT NULL,            -- as spelled: s, es, ies, ves, ed, ing, er, est, or none
    PRIMARY KEY (form, base, part_of_speech, inflection)
) WITHOUT ROWID;
CREATE INDEX inflection_by_base ON inflection (base);
CREATE TABLE never_say (
    word TEXT NOT NULL,
    normal TEXT NOT NULL,            -- each form that some accent makes the same
    category TEXT NOT NULL,
    blocks TEXT NOT NULL,            -- sound, alone or spelling
    PRIMARY KEY (word, normal)
) WITHOUT ROWID;
CREATE TABLE ending_exception (
    form TEXT NOT NULL, base TEXT NOT NULL, sound TEXT NOT NULL, watch_out TEXT NOT NULL,
    PRIMARY KEY (form, base)
) WITHOUT ROWID;
CREATE TABLE ending_spelling (       -- bases whose spelling no rule foretells
    base TEXT NOT NULL, ending TEXT NOT NULL, part_of_speech TEXT NOT NULL, rule TEXT NOT NULL,
    PRIMARY KEY (base, ending, part_of_speech, rule)
) WITHOUT ROWID;
CREATE TABLE derived_word (          -- words in er, ly and y made from a base
    word TEXT NOT NULL, base TEXT NOT NULL, ending TEXT NOT NULL, part_of_speech TEXT NOT NULL,
    PRIMARY KEY (word, base)
) WITHOUT ROWID;
CREATE TABLE not_inflected (         -- words that only look like base + ending
    word TEXT PRIMARY KEY, why TEXT NOT NULL
) WITHOUT ROWID;
CREATE TABLE correspondence (
    code TEXT PRIMARY KEY,           -- stands for it in pronunciation.chunks
    spelling TEXT NOT NULL, sounds TEXT NOT NULL, kind TEXT NOT NULL,
    is_regular INTEGER NOT NULL, example TEXT NOT NULL,
    words INTEGER NOT NULL,          -- of bands 1-3 that have it
    uses REAL NOT NULL               -- of those words, in a million words of text
) WITHOUT ROWID;
CREATE TABLE reading_sign (          -- a correspondence as it is said (graphemes/signs.py)
    sign TEXT PRIMARY KEY,           -- the character that stands for it in reading_context
    code TEXT NOT NULL,              -- of the correspondence; ~ closes a split vowel
    said TEXT NOT NULL               -- sounds, each vowel with its stress digit behind it
) WITHOUT ROWID;
CREATE TABLE reading_context (       -- which signs stand before others (graphemes/reader.py)
    context TEXT PRIMARY KEY,        -- up to three signs, the nearest first; 0 an end of the word
    back_off INTEGER NOT NULL,       -- added for a sign not listed here; in 1/16 nat, as prices
    signs TEXT NOT NULL,
    prices BLOB NOT NULL             -- a byte a sign
) WITHOUT ROWID;
CREATE TABLE sentence (
    word TEXT NOT NULL, part_of_speech TEXT NOT NULL, topic TEXT NOT NULL, text TEXT NOT NULL,
    PRIMARY KEY (word, part_of_speech, text)
) WITHOUT ROWID;
CREATE TABLE high_frequency (
    word TEXT PRIMARY KEY, place INTEGER NOT NULL, is_dolch INTEGER NOT NULL,
    irregular_part TEXT NOT NULL
) WITHOUT ROWID;
CREATE TABLE disagreement (
    word TEXT NOT NULL, base TEXT NOT NULL, expected TEXT NOT NULL, found TEXT NOT NULL,
    PRIMARY KEY (word, base)
) WITHOUT ROWID;
"""

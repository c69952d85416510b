"""The JSON Schema files in ``docs/schema/``; ``python -m docs.made.schemas`` writes them anew."""

from __future__ import annotations

import json
from pathlib import Path

from phonodrill.render.json_schema import KINDS, json_schema

FOLDER = Path(__file__).parents[1] / "schema"


def schema_files() -> dict[Path, str]:
    """Return each file with what has to stand in it."""
    return {
        FOLDER / f"{kind}.json": json.dumps(json_schema(kind), ensure_ascii=False, indent=1) + "\n"
        for kind in KINDS
    }


def main() -> None:
    """Write all files, and delete those of kinds that are gone."""
    FOLDER.mkdir(exist_ok=True)
    made = schema_files()
    for path in set(FOLDER.glob("*.json")) - set(made):
        path.unlink()
    for path, text in made.items():
        path.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()

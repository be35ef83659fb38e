"""Make `docs/rules/` from the rules: run `python -m tests.tables.make_rule_pages` at the top."""

from __future__ import annotations

from pathlib import Path

from dotleader.rules.catalogue import RULES
from dotleader.rules.pages import index_text, page_text

FOLDER = Path(__file__).parents[2] / "docs" / "rules"
EVIDENCE = FOLDER / "evidence.md"
"""Made by `make_evidence`."""


def wanted() -> dict[str, str]:
    """The texts of the folder by their file names, as they should stand."""
    pages = {f"{rule.name}.md": page_text(rule) for rule in RULES}
    return {"index.md": index_text(RULES), **pages}


def main() -> None:
    texts = wanted()
    FOLDER.mkdir(parents=True, exist_ok=True)
    for path in FOLDER.glob("*.md"):
        if path.name not in texts and path != EVIDENCE:
            path.unlink()
    for name, text in texts.items():
        (FOLDER / name).write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()

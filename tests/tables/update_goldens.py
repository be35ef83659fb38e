"""Writes the expected renderings of findings: `python -m tests.tables.update_goldens`. Then read the difference."""

from __future__ import annotations

import contextlib

from tests.report.goldens import BAD, GOOD, golden, rendering, sources


def main() -> None:
    for source in (*sources(BAD), *sources(GOOD)):
        with contextlib.chdir(source.parent):
            text = rendering(source)
        kept = golden(source)
        if not kept.exists() or kept.read_text(encoding="utf-8") != text:
            kept.write_text(text, encoding="utf-8", newline="\n")
            print(f"changed {kept.name}")


if __name__ == "__main__":
    main()

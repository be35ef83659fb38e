"""Run all benchmarks, or those that are named: `python -m tests.bench start lines others pages`."""

from __future__ import annotations

import sys

from tests.bench import lines, others, pages, start

BENCHES = {"start": start.main, "lines": lines.main, "others": others.main, "pages": pages.main}

for name in sys.argv[1:] or BENCHES:
    print(f"\n## {name}\n")
    BENCHES[name]()

"""Benchmarks: `python -m tests.bench` prints what `docs/performance.md` quotes. Ratios from one run; no tests."""

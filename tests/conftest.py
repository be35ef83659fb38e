"""What holds for all tests: the terminal, the cache and the printers of whoever runs them change nothing.

Property tests draw the same examples in every run, so that a change is judged by what it changed. To look for what
they have not found yet: `HYPOTHESIS_PROFILE=explore python -m pytest ...`.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("steady", derandomize=True, database=None, deadline=None)
settings.register_profile("explore", deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "steady"))


@pytest.fixture(autouse=True)
def _plain_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("COLUMNS", "NO_COLOR", "FORCE_COLOR"):
        monkeypatch.delenv(name, raising=False)


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    """No answer of an earlier run is given again: a test of the cache names a folder of its own."""
    monkeypatch.setenv("DOTLEADER_NO_CACHE", "1")


@pytest.fixture(autouse=True)
def _no_printers(monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder that is not there: a test that keeps printers names one of its own."""
    for name in ("XDG_CONFIG_HOME", "APPDATA"):
        monkeypatch.setenv(name, str(Path(__file__).parent / "no configuration"))

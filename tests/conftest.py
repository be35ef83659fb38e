"""What holds for all tests: the terminal and the printers of whoever runs them change nothing."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def _plain_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("COLUMNS", "NO_COLOR", "FORCE_COLOR"):
        monkeypatch.delenv(name, raising=False)


@pytest.fixture(autouse=True)
def _no_printers(monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder that is not there: a test that keeps printers names one of its own."""
    for name in ("XDG_CONFIG_HOME", "APPDATA"):
        monkeypatch.setenv(name, str(Path(__file__).parent / "no configuration"))

"""The hooks install and run in a scratch repository, without a network once the packages are at hand."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).parents[2]

pytestmark = pytest.mark.slow

CLEAN = """\
normal Cruise
  when level at the chosen height
  Flaps .... UP
"""


def git(*arguments: str, cwd: Path) -> None:
    identity = ["-c", "user.name=Test", "-c", "user.email=test@example.invalid"]
    command = ["git", *identity, "-c", "init.defaultBranch=main", *arguments]
    subprocess.run(command, cwd=cwd, check=True, capture_output=True, timeout=60)


@pytest.fixture(scope="module")
def hooks(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository with this project as it stands in the working folder."""
    to = tmp_path_factory.mktemp("hooks") / "dotleader"
    names = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=TOP,
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    ).stdout.split("\0")
    for name in filter(None, names):
        source = TOP / name
        if source.is_file():
            (to / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(source, to / name)
    git("init", "-q", cwd=to)
    git("add", "-A", cwd=to)
    git("commit", "-q", "-m", "As it stands", cwd=to)
    return to


@pytest.fixture(scope="module")
def offline(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """An environment in which pip has the needed packages in a folder and no index to ask."""
    wheels = tmp_path_factory.mktemp("wheels")
    needed = ["hatchling", "setuptools", "rapidfuzz>=3.9", "reportlab>=5.0,<6", "rich>=13.7"]
    command = [sys.executable, "-m", "pip", "download", "-q", "-d", str(wheels), *needed]
    subprocess.run(command, check=True, capture_output=True, timeout=600)
    return {
        **os.environ,
        "PIP_NO_INDEX": "1",
        "PIP_FIND_LINKS": str(wheels),
        "PRE_COMMIT_HOME": str(tmp_path_factory.mktemp("pre-commit")),
    }


def run_hook(hook: str, card: str, hooks: Path, offline: dict[str, str], at: Path) -> subprocess.CompletedProcess[str]:
    at.mkdir()
    git("init", "-q", cwd=at)
    (at / "first.cards").write_text(card, encoding="utf-8")
    git("add", "-A", cwd=at)
    command = [sys.executable, "-m", "pre_commit", "try-repo", str(hooks), hook, "--all-files", "--verbose"]
    return subprocess.run(command, cwd=at, env=offline, capture_output=True, text=True, timeout=600, check=False)


def test_the_manifest_is_valid() -> None:
    command = [sys.executable, "-m", "pre_commit", "validate-manifest", str(TOP / ".pre-commit-hooks.yaml")]
    subprocess.run(command, check=True, capture_output=True, timeout=60)


def test_the_hooks_run_offline(hooks: Path, offline: dict[str, str], tmp_path: Path) -> None:
    clean = run_hook("dotleader-lint", CLEAN, hooks, offline, tmp_path / "clean")
    assert clean.returncode == 0, clean.stdout + clean.stderr

    broken = CLEAN.replace("Flaps .... UP", "Flaps ....")
    refused = run_hook("dotleader-lint", broken, hooks, offline, tmp_path / "broken")
    assert refused.returncode == 1, refused.stdout + refused.stderr
    assert "missing-response" in refused.stdout

    untidy = CLEAN.replace("Flaps .... UP", "Flaps.....UP")
    formatted = run_hook("dotleader-format", untidy, hooks, offline, tmp_path / "untidy")
    assert formatted.returncode == 1, formatted.stdout + formatted.stderr
    assert "Flaps ." in (tmp_path / "untidy" / "first.cards").read_text(encoding="utf-8")

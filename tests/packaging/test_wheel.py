"""The wheel works in an empty environment, from any folder, with nothing of the checkout at hand."""

from __future__ import annotations

import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

TOP = Path(__file__).parents[2]

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    to = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(to)]
    subprocess.run(command, cwd=TOP, check=True, capture_output=True, timeout=300)
    return next(to.glob("*.whl"))


@pytest.fixture(scope="module")
def python(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A Python that has the wheel and, by a path file, the packages that it depends on."""
    home = tmp_path_factory.mktemp("empty")
    venv.create(home, with_pip=False, symlinks=True)
    found = home / "bin" / "python"
    packages = subprocess.run(
        [str(found), "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"],
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    ).stdout.strip()
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(packages)
    (Path(packages) / "dependencies.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return found


def run(python: Path, *arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    command = [str(python), "-m", "dotleader", *arguments]
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, timeout=300, check=False)


def test_the_wheel_holds_what_it_needs(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    assert "dotleader/syntax/dotleader.lark" in names
    assert "dotleader/py.typed" in names
    fonts = {name for name in names if name.startswith("dotleader/page/fonts/")}
    assert sum(name.endswith(".ttf") for name in fonts) == 4
    assert sum("licence-" in name for name in fonts) == 2
    spelling = {name.rpartition("/")[2] for name in names if name.startswith("dotleader/rules/spelling/")}
    assert {"english.zlib", "licence-english.txt", "trade.txt"} <= spelling
    assert not [name for name in names if name.startswith("tests")]


def test_it_runs_from_any_folder(python: Path, tmp_path: Path) -> None:
    where = subprocess.run(
        [str(python), "-c", "import dotleader; print(dotleader.__file__)"],
        cwd=tmp_path,
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    ).stdout.strip()
    assert str(TOP) not in where
    card = tmp_path / "card.cards"
    card.write_text((TOP / "examples" / "first-card.cards").read_text(encoding="utf-8"), encoding="utf-8")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    linted = run(python, "lint", str(card), cwd=elsewhere)
    assert linted.returncode == 0, linted.stdout + linted.stderr
    printed = run(python, "print", str(card), "--to", "out", cwd=elsewhere)
    assert printed.returncode == 0, printed.stdout + printed.stderr
    assert (elsewhere / "out" / "reading.pdf").read_bytes().startswith(b"%PDF-")
    assert (elsewhere / "out" / "sheets.pdf").read_bytes().startswith(b"%PDF-")
    assert run(python, "explain", "vague-response", cwd=elsewhere).returncode == 0


def test_the_command_is_an_entry_point(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        name = next(name for name in archive.namelist() if name.endswith("entry_points.txt"))
        assert "dotleader = dotleader.__main__:main" in archive.read(name).decode()

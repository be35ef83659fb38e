"""A command imports nothing that it does not need. Looked at in a process of its own, by what is in `sys.modules`."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.tools.running import CLEAN, environment, write

HEAVY = {
    "rich", "reportlab", "lark", "email", "asyncio", "urllib", "json", "difflib", "tempfile", "pathlib", "shutil",
    "subprocess", "socket", "hashlib", "random", "signal", "PIL", "dataclasses", "inspect", "ast",
}  # fmt: skip

SCRIPT = """
import sys
from dotleader.__main__ import main
code = main({arguments!r})
sys.stdout = sys.__stderr__
print(code, *sorted(set(name.partition(".")[0] for name in sys.modules)), file=sys.stderr)
"""


def imported(*arguments: str, cwd: Path) -> set[str]:
    script = SCRIPT.format(arguments=list(arguments))
    done = subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {environment()['PYTHONPATH']!r})\n{script}"],
        capture_output=True,
        cwd=cwd,
        check=False,
    )
    code, *names = done.stderr.decode().splitlines()[-1].split()
    assert code in "01", done.stderr.decode()
    return set(names)


@pytest.mark.parametrize(
    ("arguments", "allowed"),
    [
        (("lint", "--as", "brief", "."), set()),
        (("lint", "."), set()),
        (("lint", "--as", "json", "."), {"json"}),
        (("format", "--check", "."), set()),
        (("--version",), set()),
    ],
)
def test_only_what_is_needed(tmp_path: Path, arguments: tuple[str, ...], allowed: set[str]) -> None:
    write(tmp_path, a=CLEAN)
    before = imported("--help", cwd=tmp_path)  # what this Python itself has imported by then
    found = imported(*arguments, cwd=tmp_path)
    assert (found & HEAVY) - before == allowed
    assert not before & HEAVY


def test_format_does_without_the_handbook(tmp_path: Path) -> None:
    write(tmp_path, a=CLEAN)
    script = SCRIPT.format(arguments=["format", "--check", "."]).replace('.partition(".")[0]', "")
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, cwd=tmp_path, env=environment(), check=False
    )
    names = done.stderr.decode().split()
    assert "dotleader.syntax.format" in names
    assert not [name for name in names if name.startswith(("dotleader.handbook", "dotleader.rules", "dotleader.page"))]

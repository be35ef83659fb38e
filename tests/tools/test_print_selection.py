"""Parts of a book, copies, black ink, and a look before anything is written."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest
from PIL.Image import Image

from tests.output.reading import by_pdfium
from tests.tools.running import Ran, names, run, write

BOOK = (
    "handbook Ostrel Two flight handbook\n\n"
    + "\n".join(
        f"emergency Trouble {n}\n  when it sounds odd\n  memory\n    Nose .... DOWN\n  end\n" for n in range(1, 6)
    )
    + "\nnormal Taxi\n  when the engine runs smoothly\n  Brakes .... HOLD\n"
)


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, book=BOOK)
    return tmp_path


def labels(here: Path) -> list[str]:
    return [str(label) for label in pypdf.PdfReader(here / "out" / "reading.pdf").page_labels]


def printed(capsys: pytest.CaptureFixture[str], *options: str) -> Ran:
    return run(capsys, "print", "book.cards", "--to", "out", *options)


@pytest.mark.parametrize(
    ("options", "expected"),
    [
        (("--faces", "3-1..3-2"), ["3-1", "3-2"]),
        (("--faces", "3-2,4-1"), ["3-1", "3-2", "4-1", "4-2"]),
        (("--only", "normal"), ["4-1", "4-2"]),
        (("--only", "emergency"), ["3-1", "3-2", "3-3", "3-4", "3-5", "3-6"]),
        (("--cards", "trouble 3"), ["3-3", "3-4"]),
        (("--cards", "Taxi", "--faces", "3-1"), ["3-1", "3-2", "4-1", "4-2"]),
    ],
)
def test_a_part_is_printed_with_the_labels_of_the_whole(
    here: Path, capsys: pytest.CaptureFixture[str], options: tuple[str, ...], expected: list[str]
) -> None:
    ran = printed(capsys, *options)
    assert (ran.code, ran.err) == (0, "")
    assert labels(here) == expected
    leaves = len(expected) // 2
    assert f"{leaves} lea{'f' if leaves == 1 else 'ves'} on" in ran.out


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--only", "emergncy"), "`emergency`"),
        (("--cards", "Txi"), "`Taxi`"),
        (("--faces", "all"), "3-5..3-9"),
        (("--copies", "0"), "from 1 to 100"),
        (("--copies", "many"), "from 1 to 100"),
        (("--copies", "1000"), "from 1 to 100"),
    ],
)
def test_what_is_not_in_the_book_stops_the_print_and_the_help_says_what_to_write(
    here: Path, capsys: pytest.CaptureFixture[str], options: tuple[str, ...], said: str
) -> None:
    ran = printed(capsys, *options)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert not (here / "out").exists()


@pytest.mark.parametrize(
    ("options", "said", "help_"),
    [
        (("--faces", "9-1..9-4"), "the book has no face between these", "It has 0-1..0-4, 3-1..3-6 and 4-1..4-2."),
        (("--faces", "3-1, 9-1"), "`--faces 9-1`: the book has no such face", "It has 0-1..0-4, 3-1..3-6"),
        (("--only", "abnormal"), "there is no abnormal card in the book", "It has normal and emergency ones."),
        (("--cards", "zzz"), "there is no such card", "Its cards are `Trouble 1`, `Trouble 2`, `Trouble 3`, "),
        (("--cards", "zzz"), "there is no such card", "`Trouble 5` and 1 more."),
        (("--faces", "3-3..3-1"), "`--faces 3-3..3-1` begins with the face that comes last", "`--faces 3-1..3-3`"),
        (("--faces", "3-1..x"), "names no faces", "`--faces 3-1,4-2`"),
    ],
)
def test_what_the_book_has_not_is_refused_with_what_it_has(
    here: Path, capsys: pytest.CaptureFixture[str], options: tuple[str, ...], said: str, help_: str
) -> None:
    """One policy: whatever is asked for by an option and is not there is 2, and nothing of it is left out silently."""
    ran = printed(capsys, *options)
    assert (ran.code, ran.out) == (2, "")
    first, second = ran.err.splitlines()
    assert said in first
    assert help_ in second
    assert not (here / "out").exists()


def test_copies_are_of_sheets_and_collated(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys)
    once = [page.extract_text() for page in pypdf.PdfReader(here / "out" / "sheets.pdf").pages]
    reading = (here / "out" / "reading.pdf").read_bytes()
    assert printed(capsys, "--copies", "3").code == 0
    thrice = [page.extract_text() for page in pypdf.PdfReader(here / "out" / "sheets.pdf").pages]
    assert thrice == once[:2] + once[2:] * 3  # the sheet of rulers once
    assert (here / "out" / "reading.pdf").read_bytes() == reading


def test_the_sheet_of_rulers_is_printed_once_with_all_copies(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, book=BOOK + "\nstock A5\n")
    assert "4 sheets of A4" in printed(capsys, "--faces", "3-1..3-4", "--copies", "3", "--check").out
    ran = printed(capsys, "--faces", "3-1..3-4", "--copies", "3", "--one-sided")
    assert "on 4 sheets of A4" in ran.out
    sheets, fronts, backs = (pypdf.PdfReader(here / "out" / f"{name}.pdf") for name in ("sheets", "fronts", "backs"))
    sides = [f"Copy {copy}, sheet 1 of 1, {side}, cut.svg" for copy in (1, 2, 3) for side in ("front", "back")]
    labels = ["Setting-up sheet, front", "Setting-up sheet, back", *sides]
    assert sheets.page_labels == [str(entry.title) for entry in sheets.outline] == labels
    assert (fronts.page_labels, backs.page_labels) == (labels[::2], labels[1::2])
    made = " ".join(page.extract_text() for page in pypdf.PdfReader(here / "out" / "making-up.pdf").pages)
    assert "4 (1 + 3 × 1) sheets of A4" in made


def test_stacks_are_asked_for_and_the_summary_says_how_they_become_the_book(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, book=BOOK + "\nstock A6\n")
    usual = printed(capsys)
    first = [page.extract_text() for page in pypdf.PdfReader(here / "out" / "sheets.pdf").pages]
    assert "stacks" not in usual.out
    assert printed(capsys, "--order", "sequence").out == usual.out
    assert [page.extract_text() for page in pypdf.PdfReader(here / "out" / "sheets.pdf").pages] == first
    ran = printed(capsys, "--order", "stack")
    assert (ran.code, ran.err) == (0, "")
    assert "Cut the pile into 4 stacks" in ran.out
    assert [page.extract_text() for page in pypdf.PdfReader(here / "out" / "sheets.pdf").pages] != first
    write(here, book=BOOK + "\nstock A4\n")
    assert "one leaf to a sheet" in printed(capsys, "--order", "stack").out
    write(here, book=BOOK + "\nstock A5\n")
    for last, empty in (("3-4", False), ("3-6", True)):  # two leaves and three, two to a sheet
        ran = printed(capsys, "--order", "stack", "--faces", f"3-1..{last}")
        assert ("Pieces with nothing printed on them come last" in ran.out) is empty
    ran = printed(capsys, "--order", "stak")
    assert (ran.code, ran.out) == (2, "")
    assert "`stack`" in ran.err


def test_backs_are_turned_for_the_short_edge(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As pdfium draws them: every back is that for the long edge, turned by 180 degrees; fronts are the same."""
    write(here, book=BOOK + "\nstock A6\n")
    found = {}
    for edge, duplex in (("long-edge", "/DuplexFlipLongEdge"), ("short-edge", "/DuplexFlipShortEdge")):
        ran = printed(capsys, "--turn", edge)
        assert (ran.code, ran.err) == (0, "")
        assert f"turned on the {edge.replace('-', ' ')}." in " ".join(ran.out.split())
        data = (here / "out" / "sheets.pdf").read_bytes()
        assert pypdf.PdfReader(here / "out" / "sheets.pdf").root_object["/ViewerPreferences"]["/Duplex"] == duplex
        found[edge] = [page.render(scale=1.5).to_pil().convert("L") for page in by_pdfium(data)]
        found[edge + " cut"] = [(here / "out" / name).read_bytes() for name in ("cut.svg", "cut.dxf")]
    assert found["long-edge cut"] == found["short-edge cut"]
    pairs = list(zip(found["long-edge"], found["short-edge"], strict=True))[2:]  # without the setting-up sheet
    assert len(pairs) >= 2
    for number, (long, short) in enumerate(pairs):
        assert differing(long, short.rotate(180) if number % 2 else short) < 0.01
        assert number % 2 == 0 or differing(long, short) > 0.02


@pytest.mark.parametrize("edge", ["long-edge", "short-edge"])
@pytest.mark.parametrize("stock", ["A6", "A4", "\n  leaf .... 100 x 140 mm\n  paper .... A4"])
def test_for_a_printer_of_one_side_fronts_and_backs_are_files_of_their_own(
    here: Path, capsys: pytest.CaptureFixture[str], edge: str, stock: str
) -> None:
    write(here, book=BOOK + f"\nstock {stock}\n")
    usual = printed(capsys, "--turn", edge)
    assert not {"fronts.pdf", "backs.pdf"} & set(names(here / "out"))
    assert "fronts.pdf" not in usual.out
    ran = printed(capsys, "--turn", edge, "--one-sided", "--copies", "2")
    assert (ran.code, ran.err) == (0, "")
    sheets, fronts, backs = (
        [page.get_contents().get_data() for page in pypdf.PdfReader(here / "out" / f"{name}.pdf").pages]
        for name in ("sheets", "fronts", "backs")
    )
    texts, of_fronts, of_backs = (
        [page.extract_text() for page in pypdf.PdfReader(here / "out" / f"{name}.pdf").pages]
        for name in ("sheets", "fronts", "backs")
    )
    assert (of_fronts, of_backs) == (texts[::2], texts[1::2])
    assert (fronts, backs) == (sheets[::2], sheets[1::2])
    # Turned about the long edge, the back's head is at the front's head; about the short edge, at its foot.
    heads = {"long-edge": "as the fronts did", "short-edge": "the opposite way from the fronts"}
    said = " ".join(ran.out.split())
    assert f"the heads of the sheets pointing {heads[edge]}, the sheet" in said
    assert "the sheet that was printed first going in first" in said
    assert "actual size (100 %), on one side." in said
    assert "both sides" not in said
    for name in ("fronts", "backs"):
        asked = pypdf.PdfReader(here / "out" / f"{name}.pdf").root_object["/ViewerPreferences"]
        assert asked["/Duplex"] == "/Simplex"
        assert asked["/PrintScaling"] == "/None"
    assert printed(capsys).code == 0
    assert not {"fronts.pdf", "backs.pdf"} & set(names(here / "out"))


def differing(one: Image, other: Image) -> float:
    """The part of the pixels that are dark on one picture and light on the other."""
    pairs = list(zip(one.tobytes(), other.tobytes(), strict=True))
    return sum(abs(a - b) > 128 for a, b in pairs) / len(pairs)


def test_black_leaves_the_memory_ground_white(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def inks() -> set[bytes]:
        pages = pypdf.PdfReader(here / "out" / "reading.pdf").pages
        data = b"\n".join(page.get_contents().get_data() for page in pages if page.get_contents() is not None)
        return {line for line in data.splitlines() if line.endswith(b" rg")}

    printed(capsys)
    colours = inks()
    printed(capsys, "--black")
    assert len(inks()) < len(colours)


def test_check_says_what_would_be_printed_and_writes_nothing(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = printed(capsys, "--check")
    assert (ran.code, ran.err) == (0, "")
    assert not (here / "out").exists()
    assert printed(capsys).code == 0
    faces = len(pypdf.PdfReader(here / "out" / "reading.pdf").pages)
    sheets = len(pypdf.PdfReader(here / "out" / "sheets.pdf").pages) // 2
    lines = ran.out.splitlines()
    assert any(line.startswith(f"{faces} faces on {faces // 2} leaves") for line in lines)
    assert any(line.startswith(f"{sheets} sheets of A4") for line in lines)
    assert lines[-1] == "Nothing was written."

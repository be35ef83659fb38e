"""Sources for property tests: well-formed ones of every block and line, mutated ones, and arbitrary text.

A well-formed source has no finding of the parser, however it is spaced: it is written with the leaders, bullets,
marks and spaces that old lists are pasted with. All names and numbers are invented.
"""

from __future__ import annotations

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

NAMES = ("Fuel pump", "Flaps", "Mixture", "Nav lights", "Master switch", "Prüfschalter", "A", "Ignition 2")
RESPONSES = (
    "ON",
    "OFF then ON",
    "CUT OFF to RICH",
    "{VG}",
    "AT LEAST {Oil pressure green low}",
    "ON if in visible moisture, otherwise OFF",
    "15 deg",
    "FREE – AND “CORRECT”",
    "{{BOTH}}",
    "SET ‘as’ placarded, max. 5 kt",
    "BELOW {VFE at 10 deg in mph} # not a comment",
)
SENTENCES = (
    "Trim for best glide first; everything else comes after.",
    "Hold {VG}.  Two spaces, and “quotes” — kept.",
    "# is text here",
    "Wait... then look up",
    "A brace is {{ or }}.",
    "one",
)
VALUES = (
    "82 KIAS",
    "1,250 ft",
    "10 to 25 psi",
    "62 +/- 2 mm",
    "62±2 mm",
    "at least 5 US qt",
    "at most 60 lb",
    "1.3 * {VS0} rounded up to 1 KIAS",
    "({a} + {b}) / 2 - 3",
    "{VS1} * root of ({load factor}) rounded down to 1 KIAS",
    "-5 degC",
    "3.8",
)
UNITS = ("psi", "rpm", "US gal/h")
SOURCES = ("stall tests", "kit manual, page 12", "weighing,  tank by tank")
RULES = ("vague-response", "unused-value")

SPACE = st.sampled_from((" ", " ", " ", "  ", "\u00a0", " \u2009"))
BLANKS = st.sampled_from(("", "", "", "", "\n", "\n\n", " \n"))
# Before a digit a leader has a space; elsewhere its lack is tolerated.
LEADERS = st.sampled_from((" .... ", " .. ", " ................... ", "....", " … ", " . . . . ", ".....  ", " …… "))


@st.composite
def spaced(draw: DrawFn, text: str) -> str:
    """`text` with other spaces between its words."""
    return "".join(draw(SPACE) if char == " " else char for char in text) if draw(st.booleans()) else text


@st.composite
def led(draw: DrawFn, left: str, right: str) -> str:
    leader = draw(LEADERS)
    if right[:1].isdigit() or right.startswith("."):
        leader = f" {leader.strip()} "
    return left + leader + right


@st.composite
def allowed(draw: DrawFn, line: str) -> str:
    """`line`, now and then with a suppression at its end."""
    if draw(st.integers(0, 9)):
        return line
    return f"{line}  # allow {draw(st.sampled_from(RULES))}: the maker's own word"


@st.composite
def items(draw: DrawFn) -> str:
    bullet = draw(st.sampled_from(("", "", "", "", "1. ", "- ", "• ", "12) ")))
    challenge = draw(spaced(draw(st.sampled_from(NAMES))))
    if not draw(st.integers(0, 5)):
        challenge += draw(st.sampled_from((" + ", "  +  "))) + draw(st.sampled_from(NAMES))
    response = draw(spaced(draw(st.sampled_from(RESPONSES))))
    marks = draw(st.sampled_from(("", "", " [critical]", "[critical]", " [with  night lights]  [critical]")))
    return draw(allowed(bullet + draw(led(challenge, response)) + marks))


def indented(lines: list[str], step: str) -> list[str]:
    return [step + line if line.strip() else line for line in lines]


@st.composite
def grouped(draw: DrawFn, lines: list[str], comments: bool = True) -> list[str]:
    """The lines with blank lines and comments between them."""
    out: list[str] = []
    for line in lines:
        out.append(line)
        if not draw(st.integers(0, 7)):
            out += [""] * draw(st.integers(1, 3))
        if comments and not draw(st.integers(0, 9)):
            out.append(draw(st.sampled_from(("# a remark", "#  another – remark", "# allow vague-response: kept"))))
    return out


@st.composite
def prose(draw: DrawFn, step: str) -> list[str]:
    """Lines of prose, some deeper than others."""
    lines: list[str] = []
    for _ in range(draw(st.integers(1, 4))):
        sentence = draw(st.sampled_from(SENTENCES))
        lines.append(draw(st.sampled_from(("", "", "", step, step + " "))) + sentence if lines else sentence)
        if not draw(st.integers(0, 4)):
            lines.append("")
    return lines


@st.composite
def steps(draw: DrawFn, step: str, depth: int = 0) -> list[str]:
    """What stands in a card."""
    out: list[str] = []
    for _ in range(draw(st.integers(1, 5))):
        match draw(st.integers(0, 9 if depth < 3 else 5)):
            case 0 | 1 | 2:
                out.append(draw(items()))
            case 3:
                out += [draw(items()), *indented(draw(details(step)), step)]
            case 4:
                notice = draw(st.sampled_from(("note", "caution", "warning")))
                out.append(draw(allowed(f"{notice} {draw(spaced('Hold {VG} – not less.'))}")))
                if draw(st.booleans()):
                    out += indented(draw(prose(step)), step)
            case 5:
                out.append(draw(st.sampled_from(("go to Forced landing", "end", "go  to   Taxi"))))
            case _:
                opener = draw(
                    st.sampled_from(
                        ("group Controls", "if the engine restarts", "or  if  not", "otherwise", "one of", "memory")
                    )
                )
                inner = draw(steps(step, depth + 1))
                out += [draw(allowed(opener)), *indented(draw(grouped(inner)), step)]
    return out


@st.composite
def details(draw: DrawFn, step: str) -> list[str]:
    lines = draw(prose(step))
    return [line.replace("# is", "It is") for line in lines]  # among details `#` is a comment


@st.composite
def cards(draw: DrawFn, step: str) -> list[str]:
    kind = draw(st.sampled_from(("normal", "abnormal", "emergency")))
    head = draw(allowed(f"{kind} {draw(spaced('Before takeoff – short field'))}"))
    lines = draw(
        st.lists(
            st.sampled_from(
                (
                    "phase before takeoff",
                    "thumb  ENGINE",
                    "during climb, cruise",
                    "after Landing on water",
                    "when the engine stops ... or nearly",
                    "method read and do",
                    "repeat until it runs",
                )
            ),
            max_size=3,
        )
    )
    lines = [line for line in lines if "..." not in line] + draw(steps(step))
    if draw(st.booleans()):
        repeated = draw(items())
        lines += ["amplified", *indented([*draw(prose(step)), repeated, *indented(draw(prose(step)), step)], step)]
        return [head, *indented(draw(grouped(lines, comments=False)), step)]
    return [head, *indented(draw(grouped(lines)), step)]


@st.composite
def facts(draw: DrawFn, step: str) -> list[str]:
    head = draw(
        st.sampled_from(
            (
                "handbook Ostrel Two flight handbook",
                "handbook",
                "sources",
                "stock A5",
                "punch Desk punch",
                "book Cockpit set",
                "rules",
            )
        )
    )
    rows: list[str] = []
    for name in draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=5)):
        fact = draw(spaced(draw(st.sampled_from((*RESPONSES, "5.75 x 8.75 in")))))
        rows.append(draw(allowed(draw(led(draw(spaced(name)), fact)))))
    return [draw(allowed(head)), *indented(draw(grouped(rows)), step)]


@st.composite
def numbers(draw: DrawFn, step: str) -> list[str]:
    head = draw(
        st.sampled_from(
            (
                "speeds",
                "values",
                "speeds  from  kit manual",
                "gauge Oil pressure in psi from kit manual",
                "gauge  Fuel  flow  in US gal/h",
                "gauge Lamp from kit manual",
            )
        )
    )
    rows: list[str] = []
    for _ in range(draw(st.integers(1, 6))):
        value = draw(st.sampled_from((*VALUES, "below 25", "above 2,700") if head.startswith("gauge") else VALUES))
        source = draw(st.sampled_from(("", "  unverified", *(f"  from {name}" for name in SOURCES))))
        name = draw(st.sampled_from((*NAMES, "VFE at 10 deg", "a value with a name that is much too long")))
        rows.append(draw(allowed(draw(led(name, draw(spaced(value)) + source)))))
    return [head, *indented(draw(grouped(rows)), step)]


@st.composite
def equipment(draw: DrawFn, step: str) -> list[str]:
    lines: list[str] = []
    for name in draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=4)):
        lines.append(draw(led(name, draw(st.sampled_from(("OFF, ON", "CUT OFF to RICH, LEANED", "any hPa"))))))
        chosen = st.lists(st.sampled_from(PROPERTIES), max_size=4)
        lines += indented([draw(allowed(draw(led(*each)))) for each in draw(chosen)], step)
        if draw(st.booleans()):
            lines.append(step + "does .... Feeds the engine … “when”  it   .... must.")
            lines += indented(indented(draw(prose(step)), step), step)
    return ["equipment", *indented(draw(grouped(lines)), step)]


@st.composite
def electrical(draw: DrawFn, step: str) -> list[str]:
    lines: list[str] = []
    for row, below in draw(st.lists(st.sampled_from(ELECTRICAL), min_size=1, max_size=4)):
        lines.append(draw(allowed(draw(led(*row)))))
        lines += indented([draw(led(*each)) for each in below[: draw(st.integers(0, 2))]], step)
    head = draw(st.sampled_from(("electrical", "electrical from kit manual")))
    return [head, *indented(draw(grouped(lines)), step)]


ELECTRICAL = (
    (("system", "14 V"), ()),
    (("alternator", "40 A  from kit manual"), (("needs", "Alternator ON"), ("when it fails", "Alternator failure"))),
    (("battery", "2 * 8 Ah  unverified"), (("must last", "30 min"), ("needs", "Master switch ON"))),
    (("always on", "1.2 A"), ()),
)
PROPERTIES = (
    ("parked", "OFF"),
    ("needs for ON", "Master switch ON"),
    ("draws", "4.5 A  from kit manual"),
    ("draws while moving", "6 A"),
    ("breaker", "7.5 A"),
    ("fuse", "5 A"),
    ("wire", "AWG 18, 2.4 m, 150 degC"),
    ("also called", "boost pump, aux pump"),
    ("at", "panel 42 mm, 110 mm"),
    ("means", "FULLEST TANK: LEFT or RIGHT"),
)


@st.composite
def texts(draw: DrawFn, step: str) -> list[str]:
    body = indented(draw(prose(step)), step)
    if draw(st.booleans()):
        body += ["# a remark in the first column", *indented(draw(prose(step)), step)]
    return [draw(spaced("text Foreword – to whom")), *body]


def blocks(step: str) -> SearchStrategy[list[str]]:
    includes = st.sampled_from((["include emergency.cards"], ["include  a – b.cards"]))
    comments = st.sampled_from((["# Ostrel Two: invented."], ["# one", "", "# two"]))
    return st.one_of(
        includes,
        comments,
        cards(step),
        cards(step),
        facts(step),
        numbers(step),
        equipment(step),
        electrical(step),
        texts(step),
    )  # fmt: skip


@st.composite
def well_formed(draw: DrawFn) -> str:
    """A source without a finding of the parser."""
    step = draw(st.sampled_from(("  ", "  ", " ", "    ", "\u00a0\u00a0")))
    lines: list[str] = []
    for block in draw(st.lists(blocks(step), max_size=5)):
        lines += block
        lines += [""] * draw(st.sampled_from((0, 1, 1, 2)))
    text = "\n".join(lines) + draw(st.sampled_from(("", "\n", "\n\n")))
    mark = draw(st.sampled_from(("", "", "", "\ufeff")))
    return mark + text.replace("\n", draw(st.sampled_from(("\n", "\n", "\r\n"))))


SNIPPETS = (
    *" \t\n{}[].…-+#5,*\u00a0\u3000\ufeff\r\x0b\u2028\x00😀",
    *("  ", "   ", "\n\n", "{}", "{VG", "[critical]", "[odd]", "....", " .... ", "..", " . . . ", " - ", " – ", " + "),
    *("  # allow", "  # allow x: y", "5,5", "normal ", "note ", "if ", "end", "memory", "gauge ", " from ", " in "),
    *("does .... ", "amplified", "1. ", "- ", "text ", "zzz", "E\u0301", "equipment\n", "A .... B\n", "go to "),
)


@st.composite
def mutated(draw: DrawFn) -> str:
    """A well-formed source after a few slips: deletions, moved pieces, tabs, stray braces and marks."""
    text = draw(well_formed())
    for _ in range(draw(st.integers(1, 8))):
        at = draw(st.integers(0, len(text)))
        match draw(st.integers(0, 4)):
            case 0:
                text = text[:at] + text[at + draw(st.integers(1, 12)) :]
            case 1 | 2:
                text = text[:at] + draw(st.sampled_from(SNIPPETS)) + text[at:]
            case 3:
                line = text.rfind("\n", 0, at) + 1
                lead = draw(st.sampled_from(("\t", " ", "  ", "      ", "- ", "# ", "\ufeff")))
                text = text[:line] + lead + text[line:]
            case _:
                until = draw(st.integers(at, min(len(text), at + 60)))
                to = draw(st.integers(0, len(text)))
                text = text[:to] + text[at:until] + text[to:]
    return text


JUNK = st.one_of(
    st.text(max_size=200),
    st.lists(st.sampled_from((*SNIPPETS, *NAMES, *RESPONSES, "\n  ", "\n    ", "\n")), max_size=40).map("".join),
)
ANY = st.one_of(well_formed(), mutated(), mutated(), JUNK)

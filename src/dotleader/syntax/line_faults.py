"""What is said of a line that is not right: each message by hand, in the writer's terms, with a right line."""

from __future__ import annotations

import re

from dotleader.source.text import Span
from dotleader.syntax.mended import fact_of, item_of, without_bullet
from dotleader.syntax.tree import Fault, Mend, Words

CARD_KEYWORDS = (
    "phase",
    "thumb",
    "during",
    "after",
    "when",
    "method",
    "memory",
    "group",
    "if",
    "or if",
    "otherwise",
    "one of",
    "repeat until",
    "go to",
    "end",
    "note",
    "caution",
    "warning",
    "amplified",
)
_SAMPLES = {
    "phase": "phase before takeoff",
    "thumb": "thumb ENGINE",
    "during": "during cruise, descent",
    "after": "after Landing on water",
    "when": "when the engine stops or loses most of its power",
    "method": "method read and do",
    "group": "group Controls",
    "if": "if the engine restarts",
    "or if": "or if the engine runs rough",
    "repeat until": "repeat until the engine restarts",
    "go to": "go to Forced landing",
    "note": "note The flap motor draws most.",
    "caution": "caution Do not take off with oil pressure outside the green.",
    "warning": "warning Do not restart the engine.",
}


def short(text: str, most: int = 60) -> str:
    """The text as a message quotes it."""
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"


def one_apart(a: str, b: str, most: int = 1) -> bool:
    """Whether at most `most` letters added, left out, changed or swapped with a neighbour turn `a` into `b`.

    Equal words are not apart.
    """
    if a == b or abs(len(a) - len(b)) > most or len(set(a) ^ set(b)) > 2 * most:
        return False
    before: list[int] = []
    above = list(range(len(b) + 1))
    for i, letter in enumerate(a, 1):
        row = [i]
        for j, other in enumerate(b, 1):
            cost = min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == b[j - 2] and other == a[i - 2]:
                cost = min(cost, before[j - 2] + 1)
            row.append(cost)
        before, above = above, row
    return above[-1] <= most


def near_word(word: str, known: tuple[str, ...], slips: dict[str, str]) -> str:
    """The known word that `word` was probably meant to be: other case, a usual slip, or one letter away."""
    lower = word.casefold()
    if lower in known:
        return lower
    if lower in slips:
        return slips[lower]
    return next((k for k in known if len(k) >= 4 and one_apart(lower, k)), "")


def looks_like_prose(text: str) -> bool:
    return len(text.split()) > 6 or text.rstrip().endswith((".", "!", "?", ":", ";"))


def stray_line(text: str, span: Span) -> Fault:
    return Fault(
        "stray-line",
        span,
        f"`{short(text)}` is neither an item nor a line that begins with a keyword.",
        "An item has a leader: `Fuel pump .... ON`. Explanations follow `note`, are indented below an item, "
        "or stand under `amplified`.",
    )


def missing_response(challenge: str, span: Span) -> Fault:
    return Fault(
        "missing-response",
        span,
        f"`{short(challenge)}` has no response.",
        f"Say what is wanted after a leader: `{short(challenge, 40)} .... ON`.",
    )


def missing_item_leader(text: str, span: Span) -> Fault:
    """A line without a leader that is no prose: its response may stand in it, after something else."""
    mended = item_of(text)
    if not mended:
        return missing_response(text, span)
    return Fault(
        "missing-response",
        span,
        f"`{short(text)}` has no leader, so that nothing says which part of it is the response.",
        f"Two or more dots with a space on both sides join challenge and response: `{short(mended)}`.",
        Mend(span, mended),
    )


def missing_challenge(text: str, span: Span) -> Fault:
    return Fault(
        "missing-challenge",
        span,
        f"`{short(text)}` has a leader but no challenge before it.",
        "Name what is to be looked at or moved first: `Fuel pump .... ON`.",
    )


def missing_name(text: str, span: Span) -> Fault:
    return Fault(
        "missing-challenge",
        span,
        f"`{short(text)}` has a leader but nothing before it.",
        "Name what is declared first: `VG .... 82 KIAS  from glide tests`.",
    )


def missing_fact(left: str, span: Span) -> Fault:
    return Fault(
        "missing-response",
        span,
        f"There is nothing after the leader of `{short(left)}`.",
        f"Write what it is: `{short(left, 40)} .... ` and the value.",
    )


def missing_leader(text: str, span: Span) -> Fault:
    mended = fact_of(text)
    return Fault(
        "stray-line",
        span,
        f"`{short(text)}` has no leader, and every line of this block has one.",
        "Two or more dots with a space on both sides join a name and what is said of it: "
        + (f"`{short(mended)}`." if mended else f"`{short(text, 40)} .... ` and the rest."),
        Mend(span, mended) if mended else None,
    )


def second_leader(text: str, leader: Span) -> Fault:
    return Fault(
        "second-leader",
        leader,
        f"`{short(text)}` has a second leader.",
        "A line is split at its first leader, and there is one leader to a line. "
        "Write two items on two lines, or take the dots out of the text.",
    )


def dots_against_digit(challenge: str, response: Words | str | None, leader: Span) -> Fault:
    shown = response.text if isinstance(response, Words) else (response or "")
    return Fault(
        "dots-against-digit",
        leader,
        f"The dots stand against a digit: this may mean `{short(shown, 30)}` or `.{short(shown, 30)}`.",
        f"Put a space after the leader: `{short(challenge, 40)} .... {short(shown, 30)}`, "
        f"or `.... 0.{short(shown, 30)}` if a decimal is meant.",
    )


def dash_for_leader(challenge: str, response: str, span: Span, tab: bool) -> Fault:
    what = "a tab" if tab else "a dash"
    return Fault(
        "dash-for-leader",
        span,
        f"`{short(challenge)}` and `{short(response)}` are joined by {what}.",
        f"Join them by a leader, two or more dots with a space on both sides: "
        f"`{short(without_bullet(challenge), 40)} .... {short(response, 40)}`.",
        Mend(span, " .... "),
    )


def surplus(keyword: str, words: Words) -> Fault:
    mend = {
        "otherwise": "What belongs to `otherwise` is indented below it; a further condition is `or if`.",
        "end": "`end` stands alone; a remark goes into a `note` before it.",
        "memory": "`memory` stands alone; the memory items are indented below it.",
    }.get(keyword, f"`{keyword}` stands alone; what belongs to it is indented below it.")
    return Fault("stray-line", words.span, f"`{short(words.text)}` follows `{keyword}` on the same line.", mend)


def keyword_alone(keyword: str, span: Span) -> Fault:
    return Fault(
        "missing-response",
        span,
        f"`{keyword}` stands alone.",
        f"Its text follows on the same line: `{_SAMPLES.get(keyword, keyword)}`.",
    )


def keyword_before_leader(keyword: str, text: str, span: Span) -> Fault:
    capital = text[:1].upper() + text[1:]
    return Fault(
        "keyword-before-leader",
        span,
        f"This is read as {_a(keyword)} whose text has dots in it, because it begins with `{keyword}`.",
        f"If an item is meant, begin it with a capital: `{short(capital)}`. "
        f"If {_a(keyword)} is meant, take the dots out.",
    )


def _a(keyword: str) -> str:
    return f"{'an' if keyword[0] in 'aeiou' else 'a'} {keyword}"


def item_from_keyword(keyword: str, text: str, span: Span) -> Fault:
    capital = text[:1].upper() + text[1:]
    rest = " ".join(re.sub(r"\.{2,}|…|\.\s\.\s\.[\s.]*", " ", text).split())
    return Fault(
        "keyword-before-leader",
        span,
        f"This is read as an item, because it has a leader; it also begins with the keyword `{keyword}`.",
        f"If an item is meant, begin it with a capital: `{short(capital)}`. "
        f"If the keyword is meant, take the dots out: `{short(rest)}`.",
    )


def unknown_keyword(text: str, near: str, rest: str, span: Span) -> Fault:
    """`rest` is what follows the word that stands for the keyword `near`."""
    sample = _SAMPLES.get(near, near)  # a keyword without a sample stands alone
    right = f"{near} {short(rest)}" if rest and near in _SAMPLES else sample
    word = text[: len(text) - len(rest)].rstrip()
    return Fault(
        "unknown-keyword",
        Span(span.start, span.start + len(word)),
        f"`{short(text)}` begins with no keyword of a card; `{near}` is the nearest.",
        right_keyword(text, near, rest, right),
        keyword_mend(text, near, rest, span) if bool(rest) == (near in _SAMPLES) else None,
    )


def keyword_mend(text: str, near: str, rest: str, span: Span) -> Mend:
    """The right keyword for the one that `text` at `span` begins with; safe where only its form is wrong."""
    word = Span(span.start, span.start + len(text) - len(rest))
    return Mend(word, f"{near} " if rest else near, safe=_is_form_only(text, near, rest))


def _is_form_only(text: str, near: str, rest: str) -> bool:
    return text.casefold().startswith(near) and text[len(near) :].lstrip(":.;,! \t") == rest


def right_keyword(text: str, near: str, rest: str, right: str) -> str:
    """What to do about `text`, which should begin with `near` before its `rest`: perhaps only its form is wrong."""
    if _is_form_only(text, near, rest):
        return f"Keywords are lower case and take no colon or full stop: `{right}`."
    return f"Did you mean `{right}`?"


def unknown_mark(mark: str, span: Span) -> Fault:
    word = mark.strip("[]() ").partition(" ")[0]
    near = {"critical": "[critical]", "with": "[with NAME]", "without": "[without NAME]"}.get(
        near_word(word, ("critical", "with", "without"), {"killer": "critical", "vital": "critical"}), ""
    )
    return Fault(
        "unknown-keyword",
        span,
        f"`{short(mark)}` is no mark that an item can carry.",
        (f"Did you mean `{near}`? " if near else "")
        + "The marks are `[critical]`, `[with NAME]` and `[without NAME]`; other remarks go on an indented line below.",
        Mend(span, near) if near == "[critical]" else None,
    )

"""A comment behind a text, which is printed with it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.cards import Card
from dotleader.handbook.model import Handbook
from dotleader.handbook.trailing import comments_in
from dotleader.handbook.walking import every_step, texts_of
from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.source.finding import Edit, Finding, Fix, Severity
from dotleader.source.text import SourceText, Spot

BAD = Example(
    """\
normal Before taxi  # the short one
  when the engine runs smoothly  # see above
  Radio .... ON  # ask Bob
    Volume half way up  #for now
  Fuel pump # the left one .... OFF
  note Doors stay open.  # in summer
""",
    (
        ("trailing-comment", "# the short one"),
        ("trailing-comment", "# see above"),
        ("trailing-comment", "# ask Bob"),
        ("trailing-comment", "#for now"),
        ("trailing-comment", "# the left one"),
        ("trailing-comment", "# in summer"),
    ),
)

GOOD = Example(
    """\
normal Before taxi
  when the engine runs smoothly
  # ask Bob
  Radio .... ON
  Tank # 2 .... SELECTED
  Chart  #3 .... AT HAND
  Parking brake .... SET  # allow vague-response: ours has a mark for it
""",
)

_THUMB = r"[^\S\n]+thumb[^\S\n][^\n]*"


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    if not any(_stands_behind_text(source.text) for source in handbook.files):
        return  # as nearly always; no text has to be looked at
    for spot in _printed(handbook):
        for at, comment in comments_in(spot.text):
            yield Finding(
                RULE.name,
                Spot(spot.source, spot.start + at, spot.start + at + len(comment)),
                f"`{short(comment)}` is printed: only at the head of a line does `#` begin a comment.",
                "Put the comment on a line of its own above.",
                fix=_on_its_own(spot.source, spot.start + at, comment),
            )


def _on_its_own(source: SourceText, at: int, comment: str) -> Fix:
    """The comment taken from the end of a text and put on a line above: what is printed changes, and so it is asked."""
    text = source.text
    start = text.rfind("\n", 0, at) + 1
    line = text[start:at]
    lead = line[: len(line) - len(line.lstrip())]
    before = at - (len(line) - len(line.rstrip()))
    above = Edit(Spot(source, start, start), f"{lead}{comment.rstrip()}\n")
    return Fix((above, Edit(Spot(source, before, at + len(comment)), "")), safe=False)


def _stands_behind_text(text: str) -> bool:
    """Whether a `#` stands elsewhere than at the head of a line."""
    at = text.find("#")
    while at >= 0:
        if text[text.rfind("\n", 0, at) + 1 : at].strip():
            return True
        end = text.find("\n", at)
        at = text.find("#", end) if end >= 0 else -1
    return False


def _printed(handbook: Handbook) -> Iterator[Spot]:
    """Where the texts stand that a comment may follow. In prose `#` always is text."""
    yield handbook.spot
    for fact in (*handbook.facts.values(), *handbook.sources.values()):
        if "#" in fact.text:
            yield _rest_of_line(fact.spot)
    for essay in handbook.essays:
        yield essay.spot
    for card in handbook.cards:
        yield card.spot
        if "#" in card.thumb:
            yield from _thumb(card)
        if card.when is not None:
            yield card.when.spot
        for step in every_step(card.steps):
            yield from (phrase.spot for phrase in texts_of(step))


def _rest_of_line(spot: Spot) -> Spot:
    end = spot.source.text.find("\n", spot.end)
    return Spot(spot.source, spot.end, end if end >= 0 else len(spot.source.text))


def _thumb(card: Card) -> Iterator[Spot]:
    """The line of the edge mark, of which the card keeps only the words."""
    found = re.compile(_THUMB).search(card.spot.source.text, card.spot.end)
    if found:
        yield Spot(card.spot.source, found.start(), found.end())


RULE = Rule(
    name="trailing-comment",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A challenge, a response, a detail, a title or the text of a keyword with ` # ` and a word behind it, or with "
        "two spaces and `#`. A number behind the `#` may belong to the text (`Tank # 2`), and in prose `#` always does."
    ),
    why="A comment has a line of its own; behind a text it is printed as a part of it, and read out in flight.",
    source=THE_LANGUAGE,
    mend="Put the comment on a line of its own above. A reason for a finding stands behind `# allow RULE:`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)

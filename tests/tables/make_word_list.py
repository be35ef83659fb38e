"""Make `src/dotleader/rules/spelling/english.zlib` from two word lists in the form that Hunspell reads.

    npm pack dictionary-en@4.0.0 dictionary-en-gb@3.0.0
    mkdir us gb
    tar -xzf dictionary-en-4.0.0.tgz -C us
    tar -xzf dictionary-en-gb-3.0.0.tgz -C gb
    python -m tests.tables.make_word_list us/package gb/package

Both lists are made from SCOWL, American and British. All endings are worked out here, so that a lint has only to look
a word up. A possessive is none of the words: `'s` is taken off before a word is looked up. The list is text, a word to
a line in the order of code points, compressed with zlib.
A test fails when the list, the licence or the digests below do not belong together; it needs no network.
"""

from __future__ import annotations

import hashlib
import re
import sys
import zlib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

SPELLING = Path(__file__).parents[2] / "src" / "dotleader" / "rules" / "spelling"
LIST = SPELLING / "english.zlib"
LICENCE = SPELLING / "licence-english.txt"

INPUTS = (
    ("dictionary-en 4.0.0", "cefe6f2dbcd663319544bf2d660e01d25bbaece952d29d805117392cdec31ac3"),
    ("dictionary-en-gb 3.0.0", "5ce31cfc2420ff5f49b045b3e5d3b0ea39b795392cb6fcd3fd833010ef6da0bb"),
)
"""The packages, in the order of the arguments, with the SHA-256 of `index.aff` and `index.dic` one behind the other."""
MADE = "46be3995ffa919bc5ea6e2874df70f5c9148bd770424efd862cabd753f85e2b1"
"""The SHA-256 of the list as text, before it is compressed."""
WORDS = 90693
"""How many words there are in it."""

_WORD = re.compile(r"[A-Za-z]+(?:'[A-Za-z]+)*")


class Ending(NamedTuple):
    """What a flag adds: in front or behind, in the place of `strip`, to words that match `where`."""

    prefix: bool
    strip: str
    add: str
    where: re.Pattern[str]

    def of(self, word: str) -> str | None:
        if self.prefix:
            starts = word.startswith(self.strip) and self.where.match(word)
            return self.add + word[len(self.strip) :] if starts else None
        fits = word.endswith(self.strip) and self.where.search(word)
        return word[: len(word) - len(self.strip)] + self.add if fits else None


def endings(aff: str) -> dict[str, list[Ending]]:
    """By flags, the rows `PFX` and `SFX` of an affix file; none of these lists puts flags on what is added."""
    found: dict[str, list[Ending]] = {}
    for line in aff.splitlines():
        parts = line.split()
        if len(parts) != 5 or parts[0] not in ("PFX", "SFX"):
            continue
        kind, flag, strip, add, where = parts
        prefix = kind == "PFX"
        pattern = re.compile(f"^{where}" if prefix else f"{where}$")
        found.setdefault(flag, []).append(Ending(prefix, "" if strip == "0" else strip, add, pattern))
    return found


def forms(entry: str, by_flag: Mapping[str, list[Ending]]) -> Iterator[str]:
    """The word of a line `word/FLAGS` and everything that its flags make of it, prefixes on suffixed words too."""
    word, _, flags = entry.partition("/")
    rules = [ending for flag in flags for ending in by_flag.get(flag, ())]
    behind = [word, *(made for rule in rules if not rule.prefix and (made := rule.of(word)))]
    yield from behind
    for rule in rules:
        if rule.prefix:
            yield from (made for each in behind if (made := rule.of(each)))


def words(aff: str, dic: str) -> set[str]:
    """All words of a list that can be looked up: of two letters or more, without digits, dots and possessives."""
    by_flag = endings(aff)
    found: set[str] = set()
    for entry in dic.splitlines()[1:]:
        # What is marked with `!` is right, and never offered; what offends is not needed in a handbook at all.
        if "!" not in entry.partition("/")[2]:
            found.update(forms(entry.strip(), by_flag))
    return {w for w in found if len(w) > 1 and _WORD.fullmatch(w) and not w.endswith("'s")}


def without_doubles(found: set[str]) -> set[str]:
    """Without what a word in small letters covers: `March` is `march` at the start of a sentence."""
    return {word for word in found if word.islower() or word.lower() not in found}


def digest(*texts: str) -> str:
    return hashlib.sha256("".join(texts).encode()).hexdigest()


def make(folders: list[Path]) -> str:
    """The text of the list. Raises ValueError where a package is not the one that was read for the licence."""
    found: set[str] = set()
    for folder, (name, known) in zip(folders, INPUTS, strict=True):
        aff, dic = ((folder / f"index.{end}").read_text(encoding="utf-8") for end in ("aff", "dic"))
        if digest(aff, dic) != known:
            raise ValueError(f"{folder} is not {name}: {digest(aff, dic)}. Read its licence, then change INPUTS.")
        found |= words(aff, dic)
    return "\n".join(sorted(without_doubles(found)))


def main() -> None:
    folders = [Path(name) for name in sys.argv[1:]]
    text = make(folders)
    LIST.write_bytes(zlib.compress(text.encode("ascii"), 9))
    LICENCE.write_text((folders[0] / "license").read_text(encoding="utf-8"), encoding="utf-8")
    print(f'{LIST.name}: {len(LIST.read_bytes())} bytes\nMADE = "{digest(text)}"\nWORDS = {text.count(chr(10)) + 1}')


if __name__ == "__main__":
    main()

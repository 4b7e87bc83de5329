"""Spoils content files in the ways in which files are spoilt: slips, bad copies, foreign tools, malice.

A mutation depends on its seed and on the files alone, so that whatever is found can be found again.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

_BYTES = ("flip", "drop", "double", "insert", "cut short")
_MOST_AT_ONCE = 3
# Numbers that a hand, a spreadsheet or a wish to harm puts where a number stands.
NUMBERS = (
    *("0", "-1", "1", "2.5", "99999999999999999999", "1e400", "1e-400", "nan", ".inf", "-.inf"),
    *("1:30", "0x1F", "0o17", "1_000", "٣", "½", "3,5", "1.10", "²", "1e3"),
)
# Values that mean something to YAML, PO, HTML, a template, a shell, a terminal or a typesetter.
VALUES = (
    *("", "~", "no", "yes", "null", "[]", "{}", "[[", "{a: {b: {c: d}}}", "- x", '""', "'", '"', "|", ">"),
    *("!x y", "*x", "&x", "<<: {}", "2024-01-01", "{hold}", "{dose}", "{unknown}", "{", "}", "{{ 7 * 7 }}"),
    *("{% raw %}", "%s", "%(n)s", "%", "\\", "\\n", "`x`", "<script>alert(1)</script>", "<b>x", "&lt;"),
    *(
        "[x](y)",
        "![x](y)",
        "\u202e3 x 10",
        "\u200b",
        "\ufeff",
        "\x00",
        "\x1b[31m",
        "\x85",
        "\u2028",
        "😀",
        "لا",
    ),
    *("e\u0301" * 40, "字" * 30, '"\\ud800"', '"\\x00"', '"\\u202E"', "=1+1", "../../etc/passwd", "a" * 5000),
    *("a b " * 2000, "file:///etc/passwd", "left", "none", "same", "2 x 8", "3 x 10 with light band"),
    *("5 times an hour", "-3 s", "1 s to 0 s"),
)
_LINES = (
    *("---", "...", "\tname: x", "name: x", "? x", "%YAML 9.9", "#", "- - - -", "  - {", "x: *x"),
    *("!!python/name:os", 'msgid ""', 'msgstr "', "msgid_plural", '"nplurals=99999999; plural=n"'),
    *('msgctxt "x"', "#, fuzzy", "#~ x", "x: [" * 200),
)
_WORD = re.compile(r"(?<= )[a-zA-Z]{2,}(?= )")
_NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?")
_VALUE = re.compile(r"(?<=: )[^\n]+")
_KEY = re.compile(r"^( *)(?:- )?[a-z-]+:", re.MULTILINE)
_ID = re.compile(r"\b[a-z]+(?:-[a-z]+)+\b")


@dataclass(frozen=True)
class Mutant:
    """A file as it was spoilt: its name, its bytes, and in words what was done to it."""

    name: str
    data: bytes
    done: str


def mutant(seed: int, files: Mapping[str, bytes]) -> Mutant:
    """Return what the seed makes of one of the files; each file is as likely as another."""
    chance = random.Random(seed)
    name = chance.choice(sorted(files))
    data, done = files[name], []
    for _ in range(chance.choice((1, 1, 1, 2, _MOST_AT_ONCE))):
        if chance.random() < 0.1:
            how = chance.choice(_BYTES)
            data = _spoil_bytes(chance, data, how)
        else:
            how = chance.choice(sorted(_TEXTS))
            text = _TEXTS[how](chance, data.decode("utf-8", "replace"))
            data = text.encode("utf-8", "replace")
        done.append(how)
    return Mutant(name, data, ", ".join(done))


def _spoil_bytes(chance: random.Random, data: bytes, how: str) -> bytes:
    start = chance.randrange(len(data) + 1)
    end = min(len(data), start + chance.choice((1, 1, 2, 10, 200)))
    match how:
        case "flip":
            turned = bytes(byte ^ (1 << chance.randrange(8)) for byte in data[start:end])
            return data[:start] + turned + data[end:]
        case "drop":
            return data[:start] + data[end:]
        case "double":
            return data[:end] + data[start:]
        case "insert":
            return data[:start] + chance.randbytes(end - start) + data[start:]
        case _:
            return data[:start]


def _swap_lines(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    one, other = chance.randrange(len(lines)), chance.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]
    return "\n".join(lines)


def _drop_lines(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    start = chance.randrange(len(lines))
    return "\n".join(lines[:start] + lines[start + chance.choice((1, 1, 1, 3, 12)) :])


def _double_lines(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    start = chance.randrange(len(lines))
    end = start + chance.choice((1, 1, 4, 12))
    return "\n".join(lines[:end] + lines[start:])


def _put_line(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    lines.insert(chance.randrange(len(lines) + 1), chance.choice(_LINES))
    return "\n".join(lines)


def _indent(chance: random.Random, text: str) -> str:
    lines = text.split("\n")
    row = chance.randrange(len(lines))
    how = chance.choice(("  ", " ", "\t", "", "        "))
    lines[row] = how + (lines[row] if how else lines[row].lstrip())
    return "\n".join(lines)


def _put_piece(chance: random.Random, text: str) -> str:
    spot = chance.randrange(len(text) + 1)
    return text[:spot] + chance.choice(VALUES) + text[spot:]


def _change_number(chance: random.Random, text: str) -> str:
    return _at_one(chance, text, _NUMBER, chance.choice(NUMBERS))


def _count_on(chance: random.Random, text: str) -> str:
    """Type a number a little too high or too low: what passes is printed as it stands."""
    spots = [match for match in _NUMBER.finditer(text) if match[0].isascii() and match[0].isdigit()]
    if not spots:
        return text
    match = chance.choice(spots)
    value = max(0, int(match[0]) + chance.choice((-2, -1, 1, 2)))
    return f"{text[: match.start()]}{value}{text[match.end() :]}"


def _change_word(chance: random.Random, text: str) -> str:
    words = [match[0] for match in _WORD.finditer(text)]
    return _at_one(chance, text, _WORD, chance.choice(words)) if words else text


def _change_value(chance: random.Random, text: str) -> str:
    return _at_one(chance, text, _VALUE, chance.choice(VALUES))


def _swap_values(chance: random.Random, text: str) -> str:
    """Put the value of one key under another."""
    values = [match[0] for match in _VALUE.finditer(text)]
    return _at_one(chance, text, _VALUE, chance.choice(values)) if values else text


def _swap_ids(chance: random.Random, text: str) -> str:
    ids = [match[0] for match in _ID.finditer(text)]
    return _at_one(chance, text, _ID, chance.choice(ids)) if ids else text


def _drop_block(chance: random.Random, text: str) -> str:
    """Take out a key with all that is indented under it."""
    start, end = _block(chance, text)
    return text[:start] + text[end:]


def _move_block(chance: random.Random, text: str) -> str:
    start, end = _block(chance, text)
    rest = text[:start] + text[end:]
    spot = rest.find("\n", chance.randrange(len(rest) + 1)) + 1
    return rest[:spot] + text[start:end] + rest[spot:]


def _block(chance: random.Random, text: str) -> tuple[int, int]:
    keys = list(_KEY.finditer(text))
    if not keys:
        return 0, 0
    key = chance.choice(keys)
    after = re.compile(rf"^ {{0,{len(key[1])}}}\S", re.MULTILINE).search(text, key.end())
    return key.start(), after.start() if after else len(text)


def _at_one(chance: random.Random, text: str, pattern: re.Pattern[str], new: str) -> str:
    """Put `new` in the place of one match of the pattern."""
    spots = [match.span() for match in pattern.finditer(text)]
    if not spots:
        return text
    start, end = chance.choice(spots)
    return text[:start] + new + text[end:]


_TEXTS: Mapping[str, Callable[[random.Random, str], str]] = {
    "a number changed": _change_number,
    "a number one or two off": _count_on,
    "a word for another": _change_word,
    "a value changed": _change_value,
    "a value of another key": _swap_values,
    "another id": _swap_ids,
    "a piece put in": _put_piece,
    "a line put in": _put_line,
    "lines dropped": _drop_lines,
    "lines doubled": _double_lines,
    "lines swapped": _swap_lines,
    "a line moved in or out": _indent,
    "a key dropped": _drop_block,
    "a key moved": _move_block,
}

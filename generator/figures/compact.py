"""Writes paths short: whole numbers, each point from the one before, so that pages and sheets stay small."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from generator.figures.ink import Mark, markup

_COMMAND = re.compile(r"([MLQaZ])([^MLQaZ]*)")
_NUMBER = re.compile(r"-?[\d.]+")


class _Whole(dict[str, int]):
    """Reads each number once: a picture has thousands, all from the same few."""

    def __init__(self, fine: int) -> None:
        super().__init__()
        self._fine = fine

    def __missing__(self, text: str) -> int:
        """Return and keep a number at its larger size, rounded."""
        value = self[text] = round(float(text) * self._fine)
        return value


_WHOLE: dict[int, _Whole] = {}


def compact(data: str, fine: int) -> str:
    """Return path data `fine` times as large in whole numbers, each point relative to the one before."""
    whole = _WHOLE.setdefault(fine, _Whole(fine))
    parts: list[str] = []
    at_x = at_y = 0
    last = ""
    for command, text in _COMMAND.findall(data):
        if command == "Z":
            parts.append("z")
            last = ""
            continue
        numbers = _NUMBER.findall(text)
        if command == "a":
            parts.append("a" + _arc(numbers, fine))
            last = ""
            continue
        values = [whole[number] for number in numbers]
        if command == "M":
            word = _point(*values)
        elif command == "L":
            word = _point(values[0] - at_x, values[1] - at_y)
        else:
            turn = _point(values[0] - at_x, values[1] - at_y)
            word = _joined(turn, _point(values[2] - at_x, values[3] - at_y))
        at_x, at_y = values[-2:]
        parts.append(word if command == last and word[0] == "-" else _led(command, last, word))
        last = command
    return "".join(parts)


def _led(command: str, last: str, word: str) -> str:
    """Return a word behind its command; a command that goes on is not written again."""
    if command == "M":
        return "M" + word
    return " " + word if command == last else command.lower() + word


def _point(x: int, y: int) -> str:
    return f"{x}{y}" if y < 0 else f"{x} {y}"


def _joined(one: str, two: str) -> str:
    return one + two if two[0] == "-" else f"{one} {two}"


def _arc(numbers: Sequence[str], fine: int) -> str:
    """Return a circle's arc, which is relative already: radii and end are scaled, flags are not."""
    scaled = [float(number) * (1 if 2 <= place <= 4 else fine) for place, number in enumerate(numbers)]
    text = ""
    for value in scaled:
        word = f"{value:.4g}"
        text += word if not text or word.startswith("-") else " " + word
    return text


def small(marks: Sequence[Mark], fine: int) -> str:
    """Return marks as short markup, `fine` times as large; the document's view box shrinks it again."""
    return markup(
        [
            replace(
                mark,
                data=compact(mark.data, fine),
                width=round(mark.width * fine, 1),
                dash=" ".join(f"{float(part) * fine:g}" for part in mark.dash.split()),
            )
            for mark in marks
        ]
    )

"""Says in an editor's words what a YAML parser complains of, and what to do in that line."""

from __future__ import annotations

import yaml

from generator.problems import Place, Problem
from generator.reading import rules

_QUOTE = "put the whole text in quotation marks"
# What the parser says (the C library's words, and PyYAML's own where they differ), what that means to whoever
# types a file, and what to do. The first that fits counts.
_PLAIN: tuple[tuple[str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "a colon with a blank after it stands where no key can be",
        f"{_QUOTE} if the colon belongs to it; else begin the key in the same column as those above",
    ),
    (
        "could not find expected ':'",
        "this line, or the one above it, has no colon with a blank after it",
        "write the key, a colon, a blank and then the text",
    ),
    (
        "found unexpected end of stream",
        "a quotation mark that opens here is never closed",
        "close it at the end of the text, or take it away",
    ),
    (
        "cannot start any token",
        "a text cannot begin with this sign",
        _QUOTE,
    ),
    (
        "block sequence entries are not allowed",
        "a dash cannot stand here",
        f"{_QUOTE} if the dash belongs to it; else begin the list on a line of its own",
    ),
    (
        "mapping keys are not allowed",
        "a text cannot begin with a question mark and a blank",
        _QUOTE,
    ),
    (
        "expected alphabetic or numeric character",
        "a text cannot begin with & or *",
        _QUOTE,
    ),
    (
        "expected ',' or",
        "a bracket that opens here is not closed, or a comma is missing in it",
        f"close it with ] or }} as it was opened; {_QUOTE} if the bracket belongs to it",
    ),
    (
        "expected '-' indicator",
        "this line begins in another column than the lines it belongs to",
        "put as many blanks before it as before the line above",
    ),
    (
        "expected <block end>",
        "this line begins in another column than the lines it belongs to, or a text goes on after its "
        "closing quotation mark",
        f"put as many blanks before it as before the line above, or {_QUOTE}",
    ),
    (
        "did not find expected key",
        "this line begins in another column than the lines it belongs to, or a text goes on after its "
        "closing quotation mark",
        f"put as many blanks before it as before the line above, or {_QUOTE}",
    ),
)
# What is told where it was opened, not where the file made no sense any more.
_OPENED = ("end of stream", "expected ',' or")


def syntax_problem(path: str, error: yaml.MarkedYAMLError) -> Problem:
    """Return what hinders reading a file, at the place where something must be done."""
    said = error.problem or error.context or ""
    mark = error.problem_mark or error.context_mark
    if any(words in said for words in _OPENED) and error.context_mark is not None:
        mark = error.context_mark
    place = Place(path, mark.line + 1, mark.column + 1) if mark else Place(path)
    for words, meaning, remedy in _PLAIN:
        if words in said:
            return rules.YAML_SYNTAX.at(place, meaning, remedy)
    return rules.YAML_SYNTAX.at(place, f"this cannot be read as YAML ({said})")

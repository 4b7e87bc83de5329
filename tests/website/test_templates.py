"""Holds every template to words that can be translated, in text and in what a screen reader says."""

from __future__ import annotations

from collections.abc import Iterator
from html.parser import HTMLParser

import pytest
from jinja2 import Environment

from generator.website.environment import TEMPLATES

# A value put in by the template; it is no letter, so it never counts as a word.
VALUE = "0"
HEARD = frozenset({"alt", "aria-label", "aria-description", "content", "data-label", "placeholder", "title"})
# What a machine reads: settings of the browser, and an address to go to.
FOR_MACHINES = frozenset({"width=device-width, initial-scale=1", "light dark", "telephone=no", "noindex"})


class Words(HTMLParser):
    """Collects what a reader would see or hear of a template's own text."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take what is heard from attributes; a redirect's address is no word."""
        if ("http-equiv", "refresh") not in attrs:
            self.found += [value for name, value in attrs if name in HEARD and value]

    def handle_data(self, data: str) -> None:
        """Take what is seen."""
        self.found.append(data)


def literals(source: str) -> list[str]:
    """Return the words that stand in a template as they are, where a message should stand."""
    words = Words()
    words.feed("".join(_kept(source)))
    words.close()
    return [
        text.strip()
        for text in words.found
        if text not in FOR_MACHINES and any(char.isalpha() for char in text)
    ]


def _kept(source: str) -> Iterator[str]:
    inside = before = ""
    for _, kind, text in Environment().lex(source):
        if kind == "data":
            yield text
            before = text
        elif kind in ("variable_begin", "block_begin", "comment_begin"):
            inside = kind
        elif kind == "variable_end" and inside == "variable_begin":
            # The name of an element may be a value too.
            yield "p" if before.endswith(("<", "</")) else VALUE


@pytest.mark.parametrize("template", sorted(TEMPLATES.glob("*.html")), ids=lambda path: path.name)
def test_no_template_holds_a_word_of_its_own(template: object) -> None:
    """Every word a reader sees or hears is a message or comes from the content."""
    assert literals(TEMPLATES.joinpath(str(template)).read_text("utf-8")) == []


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("<p>Stop</p>", ["Stop"]),
        ('<p>{{ _("Stop") }}</p>', []),
        ('<a href="{{ to("x") }}" aria-label="Menu">{{ name }}</a>', ["Menu"]),
        ('<p class="{{ "a" if b else "c" }}">{{ d }} now</p>', ["0 now"]),
        ("{# Stop #}<p>{% if now %}·{% endif %}</p>", []),
    ],
)
def test_a_word_in_a_template_is_noticed(source: str, found: list[str]) -> None:
    """The search for words sees text and attributes, and is not misled by expressions."""
    assert literals(source) == found

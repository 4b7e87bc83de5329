"""Turns words into markup: escaped, numbers kept in order, foreign sentences marked with their language."""

from __future__ import annotations

from markupsafe import Markup, escape

from generator.catalogue.base import Text
from generator.wording.isolation import CLOSE, ISOLATED, OPEN, plain
from generator.wording.voice import direction_of

_BDI = r'<bdi dir="ltr">\1</bdi>'


def as_html(words: str) -> Markup:
    """Return words escaped, with every isolate as ``<bdi dir="ltr">``; markup passes through unescaped."""
    escaped = escape(words)
    if OPEN not in escaped and CLOSE not in escaped:
        return escaped
    return Markup(plain(ISOLATED.sub(_BDI, str(escaped))))


def text_html(text: Text, page_language: str) -> Markup:
    """Return a text as markup; one in another language than its page carries its language and direction."""
    marked = as_html(str(text))
    if text.language in ("", page_language):
        return marked
    tag = Markup('<span lang="{}" dir="{}">{}</span>')
    return tag.format(text.language, direction_of(text.language), marked)

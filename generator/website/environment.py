"""Makes the templates speak one language: every text escaped, numbers in order, foreign sentences marked."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, MemcachedBytecodeCache, StrictUndefined
from markupsafe import Markup

from generator.catalogue.base import Text
from generator.wording.html import as_html, text_html
from generator.wording.isolation import plain
from generator.wording.jinja import Compiled, install
from generator.wording.voice import Voice, direction_of

TEMPLATES = Path(__file__).parent / "templates"
# What is written into a template is finished while it is compiled; only ``as_typed`` then knows a language.
_COMPILED: defaultdict[str, MemcachedBytecodeCache] = defaultdict(lambda: MemcachedBytecodeCache(Compiled()))


def environment(voice: Voice, source_language: str) -> Environment:
    """Return the template environment of one language.

    Filters besides those of `install`: ``attribute`` (words without any markup, to stand in an attribute),
    ``as_typed`` (words that are never translated, marked with the language the content is written in).
    """

    def shown(value: Any) -> Any:
        if isinstance(value, Text):
            return text_html(value, voice.code)
        return as_html(value) if isinstance(value, str) else value

    def as_typed(words: str) -> Markup:
        tag = Markup('<span lang="{}" dir="{}">{}</span>')
        return tag.format(source_language, direction_of(source_language), as_html(words))

    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        extensions=["jinja2.ext.i18n"],
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=shown,
        bytecode_cache=_COMPILED[source_language],
    )
    install(made, voice)
    made.filters["attribute"] = attribute
    made.filters["as_typed"] = as_typed
    return made


def attribute(words: Any) -> str:
    """Return words as they may stand in an attribute: no markup, no isolates."""
    return plain(words.striptags() if isinstance(words, Markup) else str(words))

"""Gives templates the same words as the code, without importing the template library."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Protocol

from markupsafe import Markup

from generator.catalogue.base import Text
from generator.wording.html import as_html, text_html
from generator.wording.isolation import plain
from generator.wording.phrases import number
from generator.wording.voice import Voice


class Environment(Protocol):
    """What is needed of a Jinja2 environment; its extension ``jinja2.ext.i18n`` must be loaded."""

    filters: Any
    globals: Any


class Compiled:
    """Keeps compiled templates in memory: each language and each booklet has an environment of its own.

    It has what ``jinja2.MemcachedBytecodeCache`` asks of its store. The library's key covers a template's
    name and text, not what its environment does to words while it compiles: one store for each such kind.
    """

    def __init__(self) -> None:
        self._codes: dict[str, bytes] = {}

    def get(self, key: str) -> bytes:
        """Return what was compiled from the same template; without the library's mark where nothing was."""
        return self._codes.get(key, b"")

    def set(self, key: str, value: bytes, timeout: int | None = None) -> None:  # noqa: ARG002
        """Keep what the library compiled; nothing here grows old."""
        self._codes[key] = value


def install(environment: Environment, voice: Voice) -> None:
    """Make one environment speak one language.

    Globals: ``voice``; ``gettext``, ``ngettext``, ``pgettext``, ``npgettext`` and ``_`` in the newer
    calling style, so ``{% trans %}`` works too. Numbers among the variables of a message are written in
    the language and isolated; strings are escaped, markup is kept.
    Filters: ``words`` (a text or words to markup), ``plain`` (words without isolates).
    """
    # The extension adds this attribute at run time, so no type knows it.
    vars(environment)["newstyle_gettext"] = True
    calls = _calls(voice)
    environment.globals.update(calls, _=calls["gettext"], voice=voice)

    def words(value: Text | str) -> Markup:
        return text_html(value, voice.code) if isinstance(value, Text) else as_html(value)

    def bare(value: Text | str) -> str:
        return plain(str(value))

    environment.filters["words"] = words
    environment.filters["plain"] = bare


def _calls(voice: Voice) -> dict[str, Callable[..., Markup]]:
    def filled(message: str, variables: dict[str, Any]) -> Markup:
        shown = {name: _shown(voice, value) for name, value in variables.items()}
        # A message is a template's own markup; what goes into it is escaped by the formatting.
        return as_html(Markup(message) % shown)

    def gettext(message: str, /, **variables: Any) -> Markup:
        return filled(voice.gettext(message), variables)

    def ngettext(singular: str, plural: str, num: int, /, **variables: Any) -> Markup:
        return filled(voice.ngettext(singular, plural, num), {"num": num, **variables})

    def pgettext(context: str, message: str, /, **variables: Any) -> Markup:
        return filled(voice.pgettext(context, message), variables)

    def npgettext(context: str, singular: str, plural: str, num: int, /, **variables: Any) -> Markup:
        return filled(voice.npgettext(context, singular, plural, num), {"num": num, **variables})

    return {"gettext": gettext, "ngettext": ngettext, "pgettext": pgettext, "npgettext": npgettext}


def _shown(voice: Voice, value: Any) -> Any:
    if isinstance(value, Text):
        return text_html(value, voice.code)
    if isinstance(value, int | float) and not isinstance(value, bool):
        return number(voice, value)
    return value

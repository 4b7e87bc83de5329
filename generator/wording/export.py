"""Writes PO files for translators: texts of the content, and the generator's own where it has none.

Nothing here asks the clock, so the same content always gives the same file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from io import BytesIO

from babel.messages import Catalog
from babel.messages.pofile import write_po

from generator.catalogue.values import Catalogue
from generator.wording.localise import NO_TRANSLATIONS, Translations
from generator.wording.messages import translatable
from generator.wording.po import OWN

_HEADER_TEXT = """\
msgid ""
msgstr ""
"Project-Id-Version: phasebook\\n"
{more}"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"

"""


# The page of the preview on which a text can be seen, by its context; empty where it has none.
PageOf = Callable[[str], str]
# Counts that show all plural forms of the languages that have most of them.
_EXAMPLES = (1, 2, 3, 5, 11)


def no_page(context: str) -> str:
    """Return that no page is known."""
    del context
    return ""


def content_catalogue(
    catalogue: Catalogue,
    language: str | None = None,
    translations: Translations = NO_TRANSLATIONS,
    page_of: PageOf = no_page,
) -> Catalog:
    """Return every text of the content as a Babel catalogue, with what is translated already.

    No `language`: a template. Comments name the field and the page and explain phrases; references give
    file and line.
    """
    locale = language.replace("-", "_") if language else None
    result = Catalog(locale=locale, project="phasebook", fuzzy=False)
    for message in translatable(catalogue):
        words = translations.current.get(message.key)
        old = None if words else translations.outdated.get(message.key)
        result.add(
            message.source,
            words or old or "",
            locations=[(place.path, place.line) for place in message.places if place.path],
            flags=["fuzzy"] if old else [],
            auto_comments=(*message.notes, *_page_note(page_of(message.context))),
            context=message.context,
        )
    return result


def with_own_words(catalogue: Catalog, messages: Catalog) -> Catalog:
    """Return a catalogue of the content with the generator's `messages` behind it."""
    for message in messages:
        if message.id:
            context = f"{OWN}/{message.context}" if message.context else OWN
            ids = message.id if isinstance(message.id, str) else tuple(message.id)
            empty = "" if isinstance(ids, str) else ("",) * catalogue.num_plurals
            comments = message.auto_comments
            catalogue.add(ids, empty, flags=message.flags, auto_comments=comments, context=context)
    return catalogue


def plural_notes(ids: str | tuple[str, ...]) -> tuple[str, ...]:
    """Return what a message that counts says with several numbers, to try each plural form on."""
    if isinstance(ids, str):
        return ()
    shown = (ids[count != 1].replace("{number}", str(count)) for count in _EXAMPLES)
    return (f"For {', '.join(map(str, _EXAMPLES))}: {' · '.join(shown)}",)


def _page_note(page: str) -> tuple[str, ...]:
    return (f"Page: {page}",) if page else ()


def po_text(catalogue: Catalog, *, lines: bool = True, in_order_of_content: bool = True) -> str:
    """Return a catalogue as PO text without a clock; `lines`: references name the line, not only the file."""
    buffer = BytesIO()
    write_po(
        buffer,
        catalogue,
        width=100,
        omit_header=True,
        sort_output=not in_order_of_content,
        include_previous=True,
        include_lineno=lines,
    )
    header = _HEADER_TEXT.format(more="".join(_language_lines(catalogue)))
    return header + buffer.getvalue().decode("utf-8")


def _language_lines(catalogue: Catalog) -> Iterator[str]:
    if catalogue.locale_identifier is not None:
        yield f'"Language: {catalogue.locale_identifier.replace("_", "-")}\\n"\n'
        yield f'"Plural-Forms: {catalogue.plural_forms}\\n"\n'

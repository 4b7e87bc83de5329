"""Writes messages as PO files for translators: texts of the content, with what is translated already.

Nothing here asks the clock, so the same content always gives the same file.
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

from babel.messages import Catalog
from babel.messages.pofile import write_po

from generator.catalogue.values import Catalogue
from generator.wording.localise import NO_TRANSLATIONS, Translations
from generator.wording.messages import translatable

_HEADER_TEXT = """\
msgid ""
msgstr ""
"Project-Id-Version: phasebook\\n"
{more}"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"

"""


def content_catalogue(
    catalogue: Catalogue, language: str | None = None, translations: Translations = NO_TRANSLATIONS
) -> Catalog:
    """Return every text of the content as a Babel catalogue, with what is translated already.

    No `language`: a template. Comments name the field and explain phrases; references give file and line.
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
            auto_comments=message.notes,
            context=message.context,
        )
    return result


def po_text(catalogue: Catalog, *, lines: bool = True, in_order_of_content: bool = True) -> str:
    """Return a catalogue as PO text without a clock; `lines`: references name the line, not only the file."""
    buffer = BytesIO()
    write_po(
        buffer,
        catalogue,
        width=100,
        omit_header=True,
        sort_output=not in_order_of_content,
        include_lineno=lines,
    )
    header = _HEADER_TEXT.format(more="".join(_language_lines(catalogue)))
    return header + buffer.getvalue().decode("utf-8")


def _language_lines(catalogue: Catalog) -> Iterator[str]:
    if catalogue.locale_identifier is not None:
        yield f'"Language: {catalogue.locale_identifier.replace("_", "-")}\\n"\n'
        yield f'"Plural-Forms: {catalogue.plural_forms}\\n"\n'

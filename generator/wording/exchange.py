"""Takes the texts of a language out for translators and brings them back, all or nothing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from babel.messages import Catalog
from babel.messages.catalog import Message

from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, Rule, has_errors
from generator.wording.export import PageOf, content_catalogue, po_text, with_own_words
from generator.wording.localise import Translations
from generator.wording.merging import imported, merged, read_whole
from generator.wording.own_words import own_word_problems, wanted_words
from generator.wording.po import parse_translations
from generator.wording.soundness import soundness_problems
from generator.wording.voice import is_shipped, words_of

NO_SUCH_MESSAGE = Rule(
    "translation-of-nothing",
    "An entry of an imported file belongs to no text of today, so nothing was imported.",
    "The sentence was reworded or taken out after the file was exported.",
    "export again: what was translated is kept and what changed is marked; then import the file anew",
)
RULES = (NO_SUCH_MESSAGE,)


@dataclass(frozen=True)
class Exchange:
    """What came of an export or an import.

    text: the new text of the language's file; None where `problems` forbid it. changed: entries that an
    import changed.
    """

    text: str | None
    problems: tuple[Problem, ...] = ()
    changed: int = 0


@dataclass(frozen=True)
class File:
    """A PO file as bytes, with the name that findings give it; no bytes where it is not there yet."""

    name: str
    data: bytes


def export_texts(catalogue: Catalogue, language: str, here: File, page_of: PageOf) -> Exchange:
    """Return the texts of today with what the language's file has of them; nothing is lost."""
    _, problems = parse_translations(here.name, here.data, language) if here.data else (None, ())
    if has_errors(problems):
        return Exchange(None, problems)
    return Exchange(po_text(_today(catalogue, language, here.data, page_of)))


def import_texts(catalogue: Catalogue, language: str, here: File, given: File, page_of: PageOf) -> Exchange:
    """Return the texts of today with the language's translations and those of `given`.

    Both files were judged sound before.
    """
    today = _today(catalogue, language, here.data, page_of)
    changed, strangers = imported(today, read_whole(given.data, language))
    if strangers:
        return Exchange(None, tuple(_strangers(given.name, strangers)))
    return Exchange(po_text(today), (), changed)


def unsound(language: str, translations: Translations) -> Iterator[Problem]:
    """Yield what is wrong with translations beyond their syntax: values, numbers, markup, own words."""
    for key, words in translations.current.items():
        yield from soundness_problems(key[1], words, translations.places[key])
    if translations.own:
        found = own_word_problems(language, words_of(language, translations.own))
        yield from (problem for problem in found if problem.code != "own-words-missing")


def _today(catalogue: Catalogue, language: str, data: bytes, page_of: PageOf) -> Catalog:
    fresh = content_catalogue(catalogue, language, page_of=page_of)
    if not is_shipped(language):
        with_own_words(fresh, wanted_words())
    return merged(fresh, read_whole(data, language)) if data else fresh


def _strangers(name: str, entries: Iterable[Message]) -> Iterator[Problem]:
    for entry in entries:
        first = entry.id if isinstance(entry.id, str) else entry.id[0]
        yield NO_SUCH_MESSAGE.at(Place(name, entry.lineno or 0, 1), f"{entry.context}: {first!r}")

"""Carries translations between the content and its translators, and says how far each language is."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.base import Text, TextState
from generator.catalogue.values import Catalogue
from generator.checks import translated
from generator.problems import Place, Problem, Rule, has_errors, in_order
from generator.review.standing import signed_texts, standings
from generator.steps.languages import Spoken, speak_one, texts_of
from generator.website import addresses
from generator.wording.exchange import Exchange, File, export_texts, import_texts, unsound
from generator.wording.own_words import own_words_missing
from generator.wording.po import parse_translations, po_bytes
from generator.wording.voice import unknown_languages

SOURCE_LANGUAGE = Rule(
    "source-language",
    "The language named is the one that the content is written in.",
    "It needs no translation.",
    "name another language",
)
RULES = (SOURCE_LANGUAGE,)

_OF_ID: Mapping[str, Callable[[str], str]] = {
    "exercise": addresses.exercise_page,
    "programme": addresses.programme_page,
    "daily_life": addresses.daily_life_page,
}
_OF_KIND: Mapping[str, str] = {
    "safety": addresses.WARNING_SIGNS,
    "strain": addresses.WARNING_SIGNS,
    "term": addresses.GLOSSARY,
    "clinic": addresses.ABOUT,
}


@dataclass(frozen=True)
class Progress:
    """How many texts of one part of the content a language has.

    part: ``safety``, ``<programme>``, ``<programme> phase <n>``, ``all`` or ``generator's words``.
    signed: of the translated ones; None where nobody signs, as for the generator's own words.
    """

    part: str
    translated: int
    outdated: int
    missing: int
    signed: int | None = None

    @property
    def complete(self) -> bool:
        """Return whether nothing is left to do."""
        return not self.outdated and not self.missing


def file_of(content: Path, language: str) -> Path:
    """Return where the translations of a language lie."""
    return content / "translations" / f"{language}.po"


def page_of(context: str) -> str:
    """Return the page of the preview that shows the texts of a context, from the language's folder."""
    kind, _, rest = context.partition("/")
    if kind in _OF_ID:
        return _OF_ID[kind](rest.partition("/")[0])
    return _OF_KIND.get(kind, "")


def export_language(catalogue: Catalogue, content: Path, language: str) -> Exchange:
    """Return the texts of today with what `language` has of them."""
    problems = _language_problems(catalogue, language)
    if problems:
        return Exchange(None, problems)
    return export_texts(catalogue, language, _file(content, language), page_of)


def import_language(catalogue: Catalogue, content: Path, language: str, given: Path) -> Exchange:
    """Return the translations of `language` with those of the file `given`, or all that is wrong with it."""
    mine = export_language(catalogue, content, language)
    if mine.text is None:
        return mine
    data = po_bytes(given)
    if isinstance(data, Problem):
        return Exchange(None, (data,))
    translations, problems = parse_translations(str(given), data, language)
    if not has_errors(problems):
        stands = standings(catalogue, {language: translations.current})
        denials = translated.check(catalogue, language, translations, signed_texts(stands, language))
        problems = in_order((*problems, *unsound(language, translations), *denials))
    if has_errors(problems):
        return Exchange(None, problems)
    here = _file(content, language)
    return import_texts(catalogue, language, here, File(str(given), data), page_of)


def progress(catalogue: Catalogue, content: Path, language: str) -> tuple[Progress, ...]:
    """Return how far a language is: in all, in safety texts, each programme and phase, and own words."""
    spoken, _ = speak_one(catalogue, language, content, {})
    missing, wanted = own_words_missing(language, spoken.own)
    own = Progress("generator's words", wanted - missing, 0, missing)
    keys = signed_texts(spoken.standings, language)
    signed = {
        (key[1], text.place)
        for one in spoken.standings.values()
        for key, text in one.item.texts.items()
        if key in keys
    }
    parts = (_counted(part, texts, signed) for part, texts in _parts(spoken))
    return (*parts, own)


def _file(content: Path, language: str) -> File:
    path = file_of(content, language)
    return File(str(path), path.read_bytes() if path.exists() else b"")


def _parts(spoken: Spoken) -> Iterator[tuple[str, Iterable[Text]]]:
    catalogue = spoken.catalogue
    yield "all", texts_of(catalogue)
    yield "safety", texts_of((catalogue.safety, catalogue.strains))
    for programme in catalogue.programmes.values():
        yield programme.id, texts_of(programme)
        for phase in programme.phases:
            exercises = [catalogue.exercises[use.use] for use in phase.uses]
            life = [catalogue.daily_life[item] for item in phase.daily_life]
            yield f"{programme.id} phase {phase.number}", texts_of((phase, exercises, life))


def _counted(part: str, texts: Iterable[Text], signed: Container[tuple[str, Place]]) -> Progress:
    """Count each sentence of a place once."""
    states = {(text.source, text.place): text.state for text in texts if text.source}
    found = list(states.values())
    return Progress(
        part,
        found.count(TextState.TRANSLATED),
        found.count(TextState.OUTDATED),
        found.count(TextState.MISSING),
        sum(spot in signed for spot, state in states.items() if state is TextState.TRANSLATED),
    )


def _language_problems(catalogue: Catalogue, language: str) -> tuple[Problem, ...]:
    place = Place("translate")
    if language == catalogue.source_language:
        return (SOURCE_LANGUAGE.at(place, f"'{language}' is the language of the content itself"),)
    return tuple(unknown_languages([language], place))

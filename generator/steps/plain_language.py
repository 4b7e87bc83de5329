"""Measures how hard the texts for patients are in one language, translations included."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from generator.body.shown import facts_of
from generator.catalogue.values import Catalogue
from generator.problems import Place, Problem, has_errors, in_order
from generator.wording.localise import NO_TRANSLATIONS, localise
from generator.wording.po import read_translations
from generator.wording.readability import Level, Measure, levels, measure_of
from generator.wording.voice import unknown_languages, voice


@dataclass(frozen=True)
class Measured:
    """Levels hardest first; `measure` is None where the language writes no spaces between words."""

    language: str
    measure: Measure | None
    levels: tuple[Level, ...]
    problems: tuple[Problem, ...] = ()


def measure_texts(catalogue: Catalogue, content: Path, language: str) -> Measured:
    """Return the level of everything that a patient reads in `language`; untranslated texts are left out."""
    problems = tuple(unknown_languages([language], Place("--language")))
    if problems:
        return Measured(language, None, (), problems)
    translations = NO_TRANSLATIONS
    path = content / "translations" / f"{language}.po"
    if language != catalogue.source_language and path.exists():
        translations, problems = read_translations(path)
        if has_errors(problems):
            return Measured(language, measure_of(language), (), problems)
    spoken, found = localise(catalogue, voice(language), translations, facts_of(catalogue))
    return Measured(language, measure_of(language), levels(spoken, language), in_order((*problems, *found)))

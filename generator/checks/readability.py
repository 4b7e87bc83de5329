"""Warns where texts for patients are harder to read than the target, and names the sentence to begin with.

Long sentences and long words are measured, nothing else: a text that passes can still be hard to follow.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.body.shown import facts_of
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule, Severity
from generator.wording.localise import localise
from generator.wording.readability import levels, measure_of
from generator.wording.voice import unknown_languages, voice

RULE = Rule(
    "hard-to-read",
    "The texts for patients are harder to read than the target.",
    "Sentences are long, or words have many syllables.",
    "say it in two sentences or with shorter words, or explain a word that must stay in glossary.yml",
    severity=Severity.WARNING,
)
RULES = (RULE,)
_SHOWN = 80


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each exercise, phase, programme and so on whose texts miss the target.

    The content is measured in its own language, phrases in braces filled.
    """
    language = catalogue.source_language
    if list(unknown_languages([language], catalogue.clinic.at("languages"))):
        return
    spoken, _ = localise(catalogue, voice(language), facts=facts_of(catalogue))
    yield from check_language(spoken, language)


def check_language(catalogue: Catalogue, language: str) -> Iterator[Problem]:
    """Yield the same for a catalogue that was localised into `language`."""
    measure = measure_of(language)
    for level in levels(catalogue, language):
        # A booklet is hard because of what it is made of, which is reported by itself.
        if measure is None or level.kind == "booklet" or not measure.too_hard(level.value):
            continue
        side = "at most" if measure.rising else "at least"
        message = (
            f"{level.kind} '{level.id}' in '{language}' has {measure.name} {level.value:.1f}, "
            f"wanted is {side} {measure.target:g}"
        )
        place = level.place
        if level.hardest:
            words = level.hardest[0].words
            cut = words if len(words) <= _SHOWN else f"{words[: _SHOWN - 1]}…"
            message += f"; the hardest sentence is: {cut}"
            place = level.hardest[0].place
        yield RULE.at(place, message)

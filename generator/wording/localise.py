"""Makes the catalogue in one language: every text in words, every phrase in braces filled.

What has no valid translation keeps its source words and says so in `Text.state`. An outdated
translation is not shown: it may tell a patient what the clinic has since changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, is_dataclass, replace
from typing import Any, TypeVar

from generator.catalogue.base import Text, TextState
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Exercise, Variation
from generator.catalogue.values import Catalogue
from generator.problems import NOWHERE, Place, Problem, in_order
from generator.wording.filling import (
    Angles,
    Facts,
    Phrases,
    angle_phrases,
    clinic_phrases,
    fill,
    has_braces,
    is_angle,
    phrases_of,
    source_problems,
)
from generator.wording.isolation import isolate_numbers
from generator.wording.messages import field_context, item_context, text_fields
from generator.wording.soundness import soundness_problems
from generator.wording.voice import Voice
from generator.wording.voice import voice as voice_of

Key = tuple[str, str]
# One of the generator's own messages: its context ("" for none), and its text or singular and plural.
OwnKey = tuple[str, tuple[str, ...]]
Value = TypeVar("Value")


@dataclass(frozen=True)
class Translations:
    """What a language has of the content's texts, by context and source sentence.

    current: good translations. outdated: marked as no longer matching. places: where each stands.
    own: the generator's own words, for a language that the generator does not ship; one form or as many
    as the language has plurals.
    """

    current: Mapping[Key, str] = field(default_factory=dict)
    outdated: Mapping[Key, str] = field(default_factory=dict)
    places: Mapping[Key, Place] = field(default_factory=dict, repr=False)
    own: Mapping[OwnKey, tuple[str, ...]] = field(default_factory=dict)


NO_TRANSLATIONS = Translations()
NO_FACTS: Facts = {}


def localise(
    catalogue: Catalogue,
    voice: Voice,
    translations: Translations = NO_TRANSLATIONS,
    facts: Facts = NO_FACTS,
) -> tuple[Catalogue, tuple[Problem, ...]]:
    """Return the catalogue in the voice's language, and what is wrong with its phrases.

    Phrases say the exercise's own values; `exercise_in_use` says those of one dose step.
    facts: the angles that poses show, by item and by name (``hip.abduction``), in degrees.
    """
    work = _Localiser(catalogue, voice, translations, facts)
    return work.localised(catalogue, ""), in_order(work.problems)


def exercise_in_use(
    exercise: Exercise,
    step: DoseStep,
    catalogue: Catalogue,
    voice: Voice,
    translations: Translations = NO_TRANSLATIONS,
    facts: Facts = NO_FACTS,
) -> Exercise:
    """Return an exercise whose texts speak of one dose step, so that text and dose never disagree.

    `exercise` may already be localised: its texts keep their source. Findings are those of `localise`.
    """
    work = _Localiser(catalogue, voice, translations, facts, step)
    return work.localised(exercise, f"exercise/{exercise.id}")


def _no_angles(phrases: Phrases) -> Phrases:
    return {name: words for name, words in phrases.items() if not is_angle(name)}


@dataclass(frozen=True)
class _Scope:
    """What phrases say at one place: in the voice's language, and in that of the source sentences."""

    spoken: Phrases
    source: Phrases


class _Localiser:
    """Rebuilds what holds texts, shares the rest, and collects findings on the way."""

    def __init__(
        self,
        catalogue: Catalogue,
        voice: Voice,
        translations: Translations,
        facts: Facts,
        step: DoseStep | None = None,
    ) -> None:
        self.source_language = catalogue.source_language
        self.voice = voice
        # A sentence that falls back to its source language takes its phrases in that language too.
        same = voice.code == self.source_language
        self.source_voice = voice if same else voice_of(self.source_language)
        self.everywhere = _Scope(clinic_phrases(catalogue.clinic), clinic_phrases(catalogue.clinic))
        self.translations, self.facts = translations, facts
        self.step = step
        self.problems: list[Problem] = []

    def localised(self, value: Value, context: str) -> Value:
        """Return any value of the catalogue with its texts in words."""
        return self._any(value, context, self.everywhere)  # type: ignore[no-any-return]

    def _any(self, value: Any, context: str, scope: _Scope) -> Any:
        if isinstance(value, Text):
            return self._text(value, context, scope)
        if isinstance(value, tuple):
            return tuple(self._any(item, item_context(context, item), scope) for item in value)
        if isinstance(value, Mapping):
            return {key: self._any(item, f"{context}/{key}", scope) for key, item in value.items()}
        if is_dataclass(value) and not isinstance(value, type):
            return self._record(value, context, scope)
        return value

    def _record(self, value: Any, context: str, scope: _Scope) -> Any:
        names = text_fields(value)
        if not names:
            return value
        inner = self._inside(value, context, scope)
        changed = {}
        for name in names:
            old = getattr(value, name)
            if old is not None and old != () and old != {}:
                changed[name] = self._any(old, field_context(context, name), inner)
        return replace(value, **changed)

    def _inside(self, value: Any, context: str, scope: _Scope) -> _Scope:
        angles = self._angles(value, context)
        own = self._phrases(value, self.voice, angles)
        if not own:
            return scope
        same = self.source_voice is self.voice
        source = own if same else self._phrases(value, self.source_voice, angles)
        if not angles:
            return _Scope({**scope.spoken, **own}, {**scope.source, **source})
        # A variation with poses of its own says nothing that only the poses of its exercise show.
        return _Scope({**_no_angles(scope.spoken), **own}, {**_no_angles(scope.source), **source})

    def _phrases(self, value: Any, voice: Voice, angles: Angles) -> Phrases:
        return {**phrases_of(value, voice, self.step), **angle_phrases(voice, angles)}

    def _angles(self, value: Any, context: str) -> Angles:
        """Return the angles of what is entered: an exercise, a variation in it, a daily-life item."""
        if isinstance(value, Variation):
            return self.facts.get(f"{context.split('/')[1]}/{value.id}", {})
        return self.facts.get(value.id, {}) if isinstance(value, Exercise | DailyLife) else {}

    def _text(self, text: Text, context: str, scope: _Scope) -> Text:
        braces = has_braces(text.source)
        if braces:
            self.problems.extend(source_problems(text.source, scope.source, text.place))
        language, words, state = self._words(text.source, context)
        if braces:
            words = fill(words, scope.spoken if language == self.voice.code else scope.source)
        return Text(text.source, text.place, isolate_numbers(words), language, state)

    def _words(self, source: str, context: str) -> tuple[str, str, TextState]:
        if self.voice.code == self.source_language:
            return self.source_language, source, TextState.SOURCE
        key = (context, source)
        translation = self.translations.current.get(key)
        if translation and self._is_sound(source, translation, key):
            return self.voice.code, translation, TextState.TRANSLATED
        outdated = key in self.translations.outdated
        return self.source_language, source, TextState.OUTDATED if outdated else TextState.MISSING

    def _is_sound(self, source: str, translation: str, key: Key) -> bool:
        place = self.translations.places.get(key, NOWHERE)
        found = list(soundness_problems(source, translation, place))
        self.problems.extend(found)
        return not found

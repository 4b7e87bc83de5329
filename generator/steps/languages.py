"""Makes the catalogue in each of the clinic's languages, and says which language cannot be published.

A language without complete safety texts or without the generator's own words is withheld, never mixed.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass, replace
from pathlib import Path
from typing import Any

from generator.body.shown import facts_of
from generator.catalogue.base import Text, TextState
from generator.catalogue.exercise import Exercise
from generator.catalogue.values import Catalogue
from generator.checks import readability, translated, typed_doses
from generator.problems import Place, Problem, Rule, Severity, has_errors
from generator.review.evidence import with_read_evidence
from generator.review.standing import Standing, Subject, signed_texts, standings
from generator.steps import glyphs
from generator.steps.unreviewed import safety_unsigned, unreviewed
from generator.wording.filling import Facts
from generator.wording.localise import NO_TRANSLATIONS, Translations, exercise_in_use, localise
from generator.wording.own_words import Words, own_word_problems, own_words_in
from generator.wording.po import read_translations
from generator.wording.voice import Voice, unknown_languages, voice

UseKey = tuple[str, int, str]

WITHHELD = Rule(
    "language-withheld",
    "A language is left out of what is published.",
    "Its safety texts are not complete or not signed, or the generator's own words are not complete.",
    "complete and sign the translation; the other languages are published meanwhile",
    severity=Severity.WARNING,
    safety=True,
)
RULES = (WITHHELD, *glyphs.RULES)


@dataclass(frozen=True)
class Spoken:
    """The catalogue in one language, and what it was made from.

    facts: angles of the poses, by item. standings: what sign-offs are worth, those of this language included.
    """

    voice: Voice
    catalogue: Catalogue
    translations: Translations
    facts: Facts = field(default_factory=dict)
    standings: Mapping[Subject, Standing] = field(default_factory=dict)

    @property
    def own(self) -> Words | None:
        """Return the generator's words that the content brings for a language the generator does not ship."""
        return own_words_in(self.voice.code, self.translations)

    def in_use(self) -> Mapping[UseKey, Exercise]:
        """Return each exercise in the words of the dose with which each phase begins."""
        found: dict[UseKey, Exercise] = {}
        for programme in self.catalogue.programmes.values():
            for phase in programme.phases:
                for use in phase.uses:
                    key = (programme.id, phase.number, use.use)
                    exercise = self.catalogue.exercises[use.use]
                    found[key] = exercise_in_use(
                        exercise, use.dose_steps[0], self.catalogue, self.voice, self.translations, self.facts
                    )
        return found


def speak(
    catalogue: Catalogue, content: Path, *, unsigned: bool = False, only: Collection[str] = ()
) -> tuple[tuple[Spoken, ...], tuple[Problem, ...]]:
    """Return the catalogue in every language that can be published, the source language first.

    unsigned: whether it is only looked at, so that what nobody has signed yet can be read before it is.
    only: of the clinic's languages; empty means all.
    """
    clinic = catalogue.clinic
    unknown = tuple(
        problem
        for position, code in enumerate(clinic.languages)
        for problem in unknown_languages([code], clinic.at("languages", position))
    )
    if unknown:
        return (), unknown
    facts = facts_of(catalogue)
    spoken: list[Spoken] = []
    problems: list[Problem] = []
    for position, code in enumerate(clinic.languages):
        if only and code not in only:
            continue
        one, found = speak_one(catalogue, code, content, facts)
        problems += found
        reasons = (_why_withheld(catalogue, one), "" if unsigned else _why_unsigned(catalogue, one))
        reason = "; and ".join(why for why in reasons if why)
        if reason:
            problems.append(WITHHELD.at(clinic.at("languages", position), f"'{code}' is withheld: {reason}"))
        else:
            spoken.append(one)
    stops = (
        () if unsigned else tuple(unreviewed(catalogue, [(one.voice.code, one.standings) for one in spoken]))
    )
    return () if has_errors(stops) else tuple(spoken), (*problems, *stops)


def speak_one(
    catalogue: Catalogue, code: str, content: Path, facts: Facts
) -> tuple[Spoken, tuple[Problem, ...]]:
    """Return the catalogue in one known language, whether or not it can be published, and what was found."""
    translations = NO_TRANSLATIONS
    problems: tuple[Problem, ...] = ()
    path = content / "translations" / f"{code}.po"
    if code != catalogue.source_language and path.exists():
        translations, problems = read_translations(path)
    speaker = voice(code, own_words_in(code, translations))
    words = {} if code == catalogue.source_language else {code: translations.current}
    stands = standings(catalogue, words)
    # Workers get copies of the catalogue, and none of them reads the ledger.
    readable = replace(with_read_evidence(catalogue, stands), ledger=replace(catalogue.ledger, signed=()))
    localised, found = localise(readable, speaker, translations, facts)
    denials = translated.check(catalogue, code, translations, signed_texts(stands, code))
    hard = readability.check_language(localised, code) if code != catalogue.source_language else ()
    doses = typed_doses.check_language(catalogue, code, translations)
    one = Spoken(speaker, localised, translations, facts, stands)
    boxes = (
        *glyphs.undrawn_letters(texts_of(localised), code),
        *glyphs.undrawn_own_letters(one.own, code, Place(str(path))),
    )
    return one, (*problems, *found, *denials, *hard, *doses, *boxes)


def _why_withheld(catalogue: Catalogue, spoken: Spoken) -> str:
    """Return why a language cannot be published, or an empty text."""
    own = next(iter(own_word_problems(spoken.voice.code, spoken.own)), None)
    if own is not None:
        return own.message
    if spoken.voice.code == catalogue.source_language:
        return ""
    missing = [text for text in texts_of(spoken.catalogue.safety) if text.state is not TextState.TRANSLATED]
    if missing:
        first = missing[0].place
        return f"{len(missing)} safety texts are not translated, the first is in {first}"
    return ""


def _why_unsigned(catalogue: Catalogue, spoken: Spoken) -> str:
    """Return why a translation must not be published before it is signed, or an empty text."""
    code = spoken.voice.code
    if code == catalogue.source_language or not safety_unsigned(catalogue, spoken.standings, code):
        return ""
    return f"its safety texts are not signed; run: review sign safety --language {code} --role ..."


_Inside = Callable[[Any], Iterable[Any]]


class _Parts(dict[type, "_Inside | None"]):
    """Knows how the parts of each kind of value are had, the last one first; nothing where it has none.

    A catalogue has hundreds of thousands of values of a few kinds, so each kind is looked at only once.
    """

    def __missing__(self, kind: type) -> _Inside | None:
        self[kind] = found = self._way(kind)
        return found

    def _way(self, kind: type) -> _Inside | None:
        if is_dataclass(kind):
            names = tuple(item.name for item in reversed(fields(kind)))
            return lambda one: [getattr(one, name) for name in names]
        if issubclass(kind, Mapping):
            return lambda one: reversed(tuple(one.values()))
        return reversed if issubclass(kind, list | tuple) else None


_PARTS = _Parts()


def texts_of(value: Any) -> Iterator[Text]:
    """Yield every text inside a catalogue value, in its order."""
    waiting = [value]
    while waiting:
        one = waiting.pop()
        if isinstance(one, Text):
            yield one
        elif (inside := _PARTS[type(one)]) is not None:
            waiting.extend(inside(one))

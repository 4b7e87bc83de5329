"""Says how hard the texts are that a patient reads, and which sentences make them so.

Each language has the measure that was made for it; LIX serves every language that writes words apart.
The words of the glossary and of the muscles' plain names are known words (see `counting.count`).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from generator.catalogue.base import Text
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import Caution, Exercise
from generator.catalogue.programme import Phase, Programme
from generator.catalogue.values import Catalogue
from generator.problems import NOWHERE, Place
from generator.wording import formulas
from generator.wording.counting import count, sentences, words_of
from generator.wording.formulas import Counts, Formula
from generator.wording.isolation import plain

# The American Medical Association's grade for patients: 4th to 6th (retold in a report on a study in JAMA
# Intern Med) or 5th to 6th (retold in AAFP 2015); NIH asks for less than 8th (PMC6334864).
TARGET_GRADE = 6.0
HARDEST = 3
# A formula over fewer words says more about one long word than about the sentence.
_LEAST_WORDS = 4
_SPACELESS = ("zh", "ja", "th", "lo", "km", "my", "bo", "dz")


@dataclass(frozen=True)
class Measure:
    """What a language is measured with: the value to reach, and formulas that are shown beside it.

    rising: whether a higher value is harder. beside: further formulas by name.
    """

    name: str
    formula: Formula
    target: float
    rising: bool = True
    beside: Mapping[str, Formula] = field(default_factory=dict)

    def too_hard(self, value: float) -> bool:
        """Return whether a value, rounded as it is shown, misses the target."""
        shown = round(value, 1)
        return shown > self.target if self.rising else shown < self.target

    def hardness(self, value: float) -> float:
        """Return the distance beyond the target; the harder the text, the higher."""
        return value - self.target if self.rising else self.target - value


# Björnsson 1968: about 40 is normal prose, below 25 very easy.
LIX = Measure("LIX", formulas.lix, 40.0)
MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        "en": Measure(
            "Flesch-Kincaid grade",
            formulas.flesch_kincaid_grade,
            TARGET_GRADE,
            beside={"Flesch reading ease": formulas.flesch_reading_ease, "SMOG": formulas.smog},
        ),
        # A school year, so the same year is asked for as in English.
        "de": Measure(
            "Wiener Sachtextformel 1",
            formulas.wiener_1,
            TARGET_GRADE,
            beside={
                "Wiener Sachtextformel 2": formulas.wiener_2,
                "Wiener Sachtextformel 3": formulas.wiener_3,
                "Wiener Sachtextformel 4": formulas.wiener_4,
                "Amstad": formulas.amstad,
            },
        ),
        # INFLESZ: 55 and more is normal; the target for patients (Barrio-Cantalejo et al. 2008).
        "es": Measure(
            "Szigriszt-Pazos",
            formulas.szigriszt_pazos,
            55.0,
            rising=False,
            beside={"Fernández Huerta": formulas.fernandez_huerta},
        ),
        # 1 to 6 is primary school.
        "pl": Measure("FOG", formulas.fog_polish, TARGET_GRADE),
        # 70 and more is easy (Ateşman 1997).
        "tr": Measure("Ateşman", formulas.atesman, 70.0, rising=False),
    }
)


@dataclass(frozen=True)
class Sentence:
    """One sentence with its place and its own value in the language's measure."""

    words: str
    place: Place
    value: float


@dataclass(frozen=True)
class Level:
    """How hard one thing's texts are.

    kind: exercise, daily-life, programme, phase, booklet (a phase with its exercises), or safety.
    id: its id; a phase is ``programme/2``. value: in the language's measure. unexplained: the same if no word
    were known. beside: further formulas by name. hardest: the hardest sentences, hardest first.
    """

    kind: str
    id: str
    counts: Counts
    value: float
    unexplained: float
    lix: float
    beside: Mapping[str, float]
    hardest: tuple[Sentence, ...]
    place: Place = NOWHERE


def measure_of(language: str) -> Measure | None:
    """Return the measure of a language; None where words are not written apart, so nothing can be counted."""
    main = language.partition("-")[0]
    return None if main in _SPACELESS else MEASURES.get(main, LIX)


def known_words(catalogue: Catalogue) -> frozenset[str]:
    """Return the words, in small letters, that the glossary and the muscles' plain names explain."""
    told = [str(term.term) for term in catalogue.glossary.values()]
    told += [str(muscle.plain) for muscle in catalogue.muscles.values()]
    return frozenset(word.lower().replace("’", "'") for words in told for word in words_of(words))


def levels(catalogue: Catalogue, language: str) -> tuple[Level, ...]:
    """Return the level of every thing that a patient reads, hardest first.

    `catalogue` is localised (`localise`), or holds the sources of `language`. Texts that have no words in
    this language are left out, and so are things without any text in it.
    """
    measure = measure_of(language)
    if measure is None:
        return ()
    known = known_words(catalogue)
    found = (
        _level(kind, id_, tuple(_spoken(texts, language)), language, known)
        for kind, id_, texts in _things(catalogue)
    )
    rated = [level for level in found if level is not None]
    return tuple(sorted(rated, key=lambda level: (-measure.hardness(level.value), level.kind, level.id)))


def _level(
    kind: str, id_: str, texts: tuple[Text, ...], language: str, known: frozenset[str]
) -> Level | None:
    counts = _counts(texts, language, known)
    measure = measure_of(language)
    if not counts.words or measure is None:
        return None
    return Level(
        kind=kind,
        id=id_,
        counts=counts,
        value=measure.formula(counts),
        unexplained=measure.formula(_counts(texts, language, frozenset())),
        lix=formulas.lix(counts),
        beside=MappingProxyType({name: formula(counts) for name, formula in measure.beside.items()}),
        hardest=_hardest(texts, language, known, measure),
        place=texts[0].place,
    )


def _counts(texts: Iterable[Text], language: str, known: frozenset[str]) -> Counts:
    return sum((count(str(text), language, known) for text in texts), Counts())


def _hardest(
    texts: Iterable[Text], language: str, known: frozenset[str], measure: Measure
) -> tuple[Sentence, ...]:
    found: dict[str, Sentence] = {}
    for text in texts:
        for shown, counts in _sentences(str(text), language, known):
            if shown not in found:
                found[shown] = Sentence(shown, text.place, measure.formula(counts))
    ranked = sorted(found.values(), key=lambda item: (-measure.hardness(item.value), item.place, item.words))
    return tuple(ranked[:HARDEST])


@lru_cache(maxsize=16_384)
def _sentences(words: str, language: str, known: frozenset[str]) -> tuple[tuple[str, Counts], ...]:
    """Return each sentence that is long enough to be judged, as it is shown, with its counts."""
    counted = ((one, count(one, language, known)) for one in sentences(words))
    return tuple(
        (re.sub(r"\s+", " ", plain(one)), counts) for one, counts in counted if counts.words >= _LEAST_WORDS
    )


def _spoken(texts: Iterable[Text], language: str) -> Iterator[Text]:
    """Yield the texts that have words in this language: a source shown in place of a translation has none."""
    for text in texts:
        if text.language in ("", language):
            yield text


def _things(catalogue: Catalogue) -> Iterator[tuple[str, str, tuple[Text, ...]]]:
    """Yield kind, id and texts of everything; names and other headings are no sentences and stay out."""
    for exercise in catalogue.exercises.values():
        yield "exercise", exercise.id, tuple(_of_exercise(exercise))
    for item in catalogue.daily_life.values():
        yield "daily-life", item.id, tuple(_of_daily_life(item))
    for programme in catalogue.programmes.values():
        yield "programme", programme.id, tuple(_of_programme(programme))
        for phase in programme.phases:
            own = tuple(_of_phase(phase))
            used = [catalogue.exercises.get(use.use) for use in phase.uses]
            texts = (text for exercise in used if exercise for text in _of_exercise(exercise))
            yield "phase", f"{programme.id}/{phase.number}", own
            yield "booklet", f"{programme.id}/{phase.number}", (*own, *texts)
    yield "safety", "safety", tuple(_all(catalogue.safety))


def _all(value: Any) -> Iterator[Text]:
    """Yield every text inside a value that holds nothing but sentences."""
    if isinstance(value, Text):
        yield value
    elif isinstance(value, tuple):
        for item in value:
            yield from _all(item)
    elif hasattr(value, "__dataclass_fields__"):
        for name in value.__dataclass_fields__:
            yield from _all(getattr(value, name))


def _cautions(cautions: Iterable[Caution]) -> Iterator[Text]:
    for caution in cautions:
        yield from (caution.hazard, caution.consequence, caution.avoid)


def _of_exercise(exercise: Exercise) -> Iterator[Text]:
    yield exercise.purpose
    yield from _all(exercise.helper_role)
    yield from (*exercise.set_up, exercise.start, *exercise.steps, *exercise.limits)
    yield from (exercise.feel, exercise.not_feel, *exercise.mistakes)
    yield from _cautions(exercise.cautions)
    for variation in exercise.variations.values():
        yield variation.change
        yield from _cautions(variation.cautions)


def _of_daily_life(item: DailyLife) -> Iterator[Text]:
    yield item.purpose
    yield from _all(item.helper_role)
    yield from (*item.steps, *item.avoid)
    yield from _cautions(item.cautions)


def _of_programme(programme: Programme) -> Iterator[Text]:
    yield from (programme.operation, programme.summary, *programme.delay_reasons)
    for restriction in programme.restrictions:
        yield from (restriction.words, restriction.why)


def _of_phase(phase: Phase) -> Iterator[Text]:
    yield from (phase.summary, *phase.goals, *phase.avoid, phase.weight_bearing, phase.walking_aid)
    yield from _all(phase.brace)
    yield phase.going_up
    for milestone in phase.milestones:
        yield from (milestone.goal, milestone.test, milestone.passed)
    for use in phase.uses:
        yield from _all((use.when, use.note))
        yield from _cautions(use.cautions)

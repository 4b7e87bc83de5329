"""Fills the phrases in braces, so that a number stands once in the content and never in a sentence."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any

from generator.catalogue.clinic import Clinic
from generator.catalogue.dose import DoseStep
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase
from generator.catalogue.terms import Joint, Movement
from generator.problems import Place, Problem, Rule, nearest
from generator.wording.doses import hold_seconds, lift_time, lower_time
from generator.wording.isolation import isolate
from generator.wording.phrases import angle, duration, pain
from generator.wording.voice import Voice

UNKNOWN_PHRASE = Rule(
    "unknown-phrase",
    "A phrase in braces is not known here.",
    "The name is misspelt, or the phrase belongs to another kind of text.",
    "write one of the phrases that this text can take",
)
PHRASE_WITHOUT_VALUE = Rule(
    "phrase-without-value",
    "A phrase in braces has no number to say.",
    "The exercise's dose or its poses leave out the value that the sentence speaks of.",
    "add the value to the dose or to a pose, or take the phrase out of the sentence",
)
STRAY_BRACE = Rule(
    "stray-brace",
    "A brace is not part of a phrase.",
    "Braces only mark whole phrases such as {hold}; one is missing, or the name holds other characters.",
    "close the phrase, or write the sentence without braces",
)
PHRASES_DIFFER = Rule(
    "phrases-differ",
    "A translation does not hold the same phrases as its source.",
    "A phrase in braces was left out, added, or its name was translated.",
    "write every phrase in braces as in the source, as often as there",
)

PHRASE = re.compile(r"\{([a-z][a-z.\-]*)\}")

_JOINTS, _MOVEMENTS = (
    "|".join(member.value.replace(" ", "-") for member in kind) for kind in (Joint, Movement)
)
# The largest angle that the poses show: of the operated side, or of the other one.
_ANGLE = re.compile(rf"(?:other\.)?(?:{_JOINTS})\.(?:{_MOVEMENTS})")
_ANGLE_MEANING = "the largest angle that the picture shows, such as: 30°"

# What each phrase will say, for translators.
MEANINGS = {
    "hold": "how long to hold, such as: 5 seconds",
    "rest": "how long to rest between sets, such as: 1 minute",
    "tempo.lift": "how long lifting takes, such as: 2 seconds",
    "tempo.lower": "how long lowering takes, such as: 2 seconds",
    "pain.during": "the most pain while exercising, such as: 2 of 10",
    "pain.after": "the most pain after exercising, such as: 2 of 10",
    "pain.next-morning": "the most pain the next morning, such as: 2 of 10",
    "telephone.clinic": "the clinic's telephone number",
    "telephone.out-of-hours": "the telephone number outside the clinic's hours",
    "telephone.emergency": "the emergency number",
}

# What a phrase says where it stands; None where its value is missing.
Phrases = Mapping[str, str | None]
# Largest angles in degrees by their names in texts, such as ``hip.abduction``.
Angles = Mapping[str, float]
# The same for each item with poses: exercise, ``exercise/variation``, daily-life item.
Facts = Mapping[str, Angles]


def is_angle(name: str) -> bool:
    """Return whether a phrase says how far a joint goes."""
    return _ANGLE.fullmatch(name) is not None


def meaning_of(name: str) -> str | None:
    """Return what a phrase will say, for translators; None where it is no phrase."""
    return _ANGLE_MEANING if is_angle(name) else MEANINGS.get(name)


def angle_phrases(voice: Voice, angles: Angles) -> Phrases:
    """Return what the poses of an exercise, variation or daily-life item give to its texts."""
    return {name: angle(voice, degrees) for name, degrees in angles.items()}


def phrases_of(value: Any, voice: Voice, step: DoseStep | None) -> Phrases:
    """Return the phrases that texts inside `value` can take besides those of what surrounds it.

    An exercise gives its dose (`step` comes before its usual values), a phase its pain limits.
    """
    if isinstance(value, Exercise):
        held = hold_seconds(step, value.dose)
        return {
            "hold": duration(voice, held) if held else None,
            "rest": duration(voice, value.dose.rest) if value.dose.rest else None,
            "tempo.lift": lift_time(voice, value.dose.tempo),
            "tempo.lower": lower_time(voice, value.dose.tempo),
        }
    if isinstance(value, Phase):
        return {
            "pain.during": pain(voice, value.pain.during),
            "pain.after": pain(voice, value.pain.after),
            "pain.next-morning": pain(voice, value.pain.next_morning),
        }
    return {}


def clinic_phrases(clinic: Clinic) -> Phrases:
    """Return the phrases that every text can take: the telephone numbers, each stated once."""
    return {
        "telephone.clinic": isolate(clinic.telephone.clinic),
        "telephone.out-of-hours": isolate(clinic.telephone.out_of_hours),
        "telephone.emergency": isolate(clinic.telephone.emergency),
    }


def has_braces(words: str) -> bool:
    """Return whether there is anything to fill or to complain about."""
    return "{" in words or "}" in words


def fill(words: str, phrases: Phrases) -> str:
    """Return the words with every phrase that has a value filled; the rest stays as typed."""
    return PHRASE.sub(lambda found: phrases.get(found.group(1)) or found.group(), words)


def source_problems(source: str, phrases: Phrases, place: Place) -> Iterator[Problem]:
    """Yield what is wrong with the braces of an editor's sentence."""
    for name in dict.fromkeys(PHRASE.findall(source)):
        if phrases.get(name) is not None:
            continue
        if name in phrases:
            message = f"{{{name}}} says {MEANINGS[name]}, but the dose has no such value"
            yield PHRASE_WITHOUT_VALUE.at(place, message)
        elif is_angle(name):
            message = f"{{{name}}} says {_ANGLE_MEANING}, but no pose shows it"
            yield PHRASE_WITHOUT_VALUE.at(place, message)
        else:
            yield _unknown(name, phrases, place)
    yield from _stray(source, place)


def translation_problems(source: str, translation: str, place: Place) -> Iterator[Problem]:
    """Yield where a translation's braces differ from its source's."""
    wanted, found = Counter(PHRASE.findall(source)), Counter(PHRASE.findall(translation))
    for name in sorted(wanted | found):
        if wanted[name] > found[name]:
            yield PHRASES_DIFFER.at(place, f"{{{name}}} is in the source but not in the translation")
        elif wanted[name] < found[name]:
            yield PHRASES_DIFFER.at(place, f"{{{name}}} is in the translation but not in the source")
    yield from _stray(translation, place)


def _unknown(name: str, phrases: Phrases, place: Place) -> Problem:
    near = nearest(name, phrases)
    known = ", ".join(f"{{{item}}}" for item in sorted(phrases))
    remedy = f"did you mean {{{near}}}? " if near else ""
    return UNKNOWN_PHRASE.at(
        place, f"{{{name}}} is not a phrase of this text", f"{remedy}known here: {known}"
    )


def _stray(words: str, place: Place) -> Iterator[Problem]:
    rest = PHRASE.sub("", words)
    for char in dict.fromkeys(char for char in rest if char in "{}"):
        yield STRAY_BRACE.at(place, f"the brace {char} is not part of a phrase in {words!r}")


RULES = (UNKNOWN_PHRASE, PHRASE_WITHOUT_VALUE, STRAY_BRACE, PHRASES_DIFFER)

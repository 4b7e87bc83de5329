"""Finds doses typed into a sentence, in digits or in words, which stay as they are when the dose changes.

Number words of languages and the words that they count are from memory of the languages; those for 2 to 60
were held against num2words 0.5.14 by hand. "One" is left out where it is also the article. In a language
without a list only sets by repetitions are found.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from types import MappingProxyType

# Number words, then the words they count, as patterns; together they are a dose.
_WORDS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "en": (
            r"one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen"
            r"|seventeen|eighteen|nineteen|(?:twenty|thirty|forty|fifty|sixty)(?:-\w+)?",
            r"sets?|repetitions?|reps?|times|seconds?|minutes?",
        ),
        "de": (
            r"zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|elf|zwölf|(?:drei|vier|fünf|sech|sieb|acht|neun)zehn"
            r"|(?:\w+und)?(?:zwanzig|dreißig|vierzig|fünfzig|sechzig)",
            r"sätzen?|wiederholungen|mal|sekunden|minuten",
        ),
        "es": (
            r"dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|doce|trece|catorce|quince|diecis[eé]is"
            r"|dieci(?:siete|ocho|nueve)|veint(?:e|i\w+)|(?:treinta|cuarenta|cincuenta|sesenta)(?: y \w+)?",
            r"series|repeticiones|veces|segundos|minutos",
        ),
        "pl": (
            r"dwa|dwie|dwóch|trzy|trzech|cztery|czterech|pięć|sześć|siedem|osiem|dziewięć|dziesięć|jedenaście"
            r"|dwanaście|trzynaście|czternaście|piętnaście|szesnaście|siedemnaście|osiemnaście|dziewiętnaście"
            r"|(?:dwadzieścia|trzydzieści|czterdzieści|pięćdziesiąt|sześćdziesiąt)(?: \w+)?",
            r"seri[ei]|powtórze[nń]\w*|razy|sekund\w*|minut\w*",
        ),
        "ar": (
            r"[وفبل]?(?:ال)?(?:(?:واحد|أحد|إحدى|اثنت?(?:ان?|ين?)|ثلاثة?|أربعة?|خمسة?|ستة?|سبعة?|ثماني?ة?|تسعة?)"
            r"(?: عشرة?| و ?(?:عشر|ثلاث|أربع|خمس|ست)(?:ون|ين))?|عشرة?|(?:عشر|ثلاث|أربع|خمس|ست)(?:ون|ين))",
            r"مجموعات|مجموعة|تكرارات|تكرار\w*|مرات|مرة|ثوان\w*|ثانية|دقائق|دقيقة",
        ),
    }
)
# Doses in one word.
_WHOLE: Mapping[str, str] = MappingProxyType(
    {
        "en": r"(?:once|twice) (?:a|an|each|every) (?:day|hour)",
        "de": r"(?:zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn)mal",
        "ar": r"مجموعت(?:ان|ين)|تكرار(?:ان|ين)|مرت(?:ان|ين)|ثانيت(?:ان|ين)|دقيقت(?:ان|ين)",
    }
)
# So many sets of so many, as a step of a dose is written.
_SETS = r"\d+ ?[x×] ?\d+"


def typed_doses(words: str, language: str) -> Iterator[str]:
    """Yield each dose that stands in a sentence, as it was typed."""
    for found in _pattern(language.partition("-")[0]).finditer(words):
        yield found.group()


@cache
def _pattern(language: str) -> re.Pattern[str]:
    parts = [_SETS]
    if language in _WORDS:
        numbers, counted = _WORDS[language]
        parts.append(rf"(?:\d+|{numbers})\s+(?:{counted})")
    if language in _WHOLE:
        parts.append(_WHOLE[language])
    return re.compile(rf"(?<!\w)(?:{'|'.join(parts)})(?!\w)", re.IGNORECASE)

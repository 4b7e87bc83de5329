"""Finds prohibitions that a translation lost: a "not" in a safety text that the other language does not say.

The words are those by which each language denies or forbids (from memory of the languages, no source);
a language without a list is not judged, and is known as such.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from generator.problems import Place, Problem, Rule

LOST_NEGATION = Rule(
    "negation-lost",
    "A safety text denies or forbids something in the source, but not in the translation.",
    "A word such as 'not' was left out, or the translation says it in a way that is not known here.",
    "say the prohibition as plainly as the source; when it is right as it is, let a reader sign the text "
    "in this language",
    safety=True,
)

_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "en": r"not|no|never|nothing|none|nobody|neither|nor|without|cannot|\w+n['’]t",
        "de": r"nicht|nichts|kein\w*|nie|niemals|niemand\w*|weder|ohne|keinesfalls|vermeid\w+",
        "es": r"no|nunca|jamás|nada|nadie|ningun\w*|ningún|ni|sin|tampoco|evit\w+",
        "pl": r"nie|nigdy|nikt|nikogo|nic|niczego|żad\w+|ani|bez|unika\w*",
        # The article and prefixes are written together with the word.
        "ar": r"[وفب]?(?:لا|لم|لن|ليس\w*|لست|دون|بدون|بلا|غير|عدم|ألا|ألّا|لئلا|كيلا|ممنوع\w*|يمنع|تجنّ?ب\w*)",
        "tr": r"değil\w*|yok|hiç\w*|asla|olmadan|\w+m[ae]y[ıi]n\w*|\w+maz|\w+mez|\w+m[ae]\b",
        "uk": r"не|ні|ніколи|ніхто|нічого|жодн\w+|без|немає",
    }
)
# The end of a sentence in any of these scripts.
_END = re.compile(r"[.!?؟。]+\s+")
_SHOWN = 90


def knows(language: str) -> bool:
    """Return whether the words of denial of a language are known here."""
    return language.partition("-")[0] in _WORDS


def denials(words: str, language: str) -> int:
    """Return how many words of denial a text in a known language holds.

    Raises:
        KeyError: the language is not known; ask `knows` first.

    """
    base = language.partition("-")[0]
    pattern = rf"(?<!\w)(?:{_WORDS[base]})(?!\w)"
    return len(re.findall(pattern, _bare(words), re.IGNORECASE))


def negation_problems(
    source: str, source_language: str, translation: str, language: str, place: Place
) -> Iterator[Problem]:
    """Yield a finding where a sentence of `source` denies and its counterpart in `translation` does not.

    Sentences are compared one by one where both texts have as many, else the texts as wholes.
    """
    if not (knows(source_language) and knows(language)):
        return
    here, there = _END.split(source.strip()), _END.split(translation.strip())
    if len(here) != len(there):
        here, there = [source], [translation]
    for one, other in zip(here, there, strict=True):
        if denials(one, source_language) and not denials(other, language):
            yield LOST_NEGATION.at(place, f"{_short(one)} has become {_short(other)}")


def _bare(words: str) -> str:
    """Return words without Arabic vowel signs, which are written or left out at will."""
    return re.sub("[\u064b-\u0650\u0652\u0640]", "", words)


def _short(words: str) -> str:
    return repr(words if len(words) <= _SHOWN else f"{words[: _SHOWN - 1]}…")


RULES = (LOST_NEGATION,)

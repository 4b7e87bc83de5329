"""Holds the published readability formulas as pure functions of counts, so that each can be checked by hand.

Sources are given with each formula; the numbers were compared in two independent programs unless a docstring
says otherwise. A formula knows no text: `counting` counts, `readability` says what is asked of a text.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import sqrt


@dataclass(frozen=True)
class Counts:
    """What the formulas need to know about a text; sums of texts are sums of counts.

    words, sentences: both at least 1 for a formula to be defined. polysyllables: words of three or more
    syllables. one_syllable: words of one. long_words: words of more than six letters. four_syllables: words
    of four or more. Letters are counted without digits and signs.
    """

    words: int = 0
    sentences: int = 0
    syllables: int = 0
    polysyllables: int = 0
    one_syllable: int = 0
    long_words: int = 0
    letters: int = 0
    four_syllables: int = 0

    def __add__(self, other: Counts) -> Counts:
        """Return the counts of both texts together."""
        return Counts(
            self.words + other.words,
            self.sentences + other.sentences,
            self.syllables + other.syllables,
            self.polysyllables + other.polysyllables,
            self.one_syllable + other.one_syllable,
            self.long_words + other.long_words,
            self.letters + other.letters,
            self.four_syllables + other.four_syllables,
        )

    @property
    def words_a_sentence(self) -> float:
        """Return the mean length of a sentence in words."""
        return self.words / self.sentences

    @property
    def syllables_a_word(self) -> float:
        """Return the mean length of a word in syllables."""
        return self.syllables / self.words

    def percent(self, some: int) -> float:
        """Return `some` words in percent of all."""
        return 100 * some / self.words


Formula = Callable[[Counts], float]


def flesch_reading_ease(counts: Counts) -> float:
    """Return Flesch's reading ease for English, higher is easier (Flesch 1948, J Appl Psychol 32:221-233)."""
    return 206.835 - 1.015 * counts.words_a_sentence - 84.6 * counts.syllables_a_word


def flesch_kincaid_grade(counts: Counts) -> float:
    """Return the US school grade for English (Kincaid, Fishburne, Rogers and Chissom 1975, Navy RBR 8-75)."""
    return 0.39 * counts.words_a_sentence + 11.8 * counts.syllables_a_word - 15.59


def smog(counts: Counts) -> float:
    """Return the SMOG grade for English (McLaughlin 1969, J Reading 12:639-646).

    It was made for 30 sentences; on fewer it is only a hint.
    """
    return 3.1291 + 1.0430 * sqrt(counts.polysyllables * 30 / counts.sentences)


def fog(counts: Counts) -> float:
    """Return the FOG index for English; hard is a word of three or more syllables (Gunning 1952)."""
    return 0.4 * (counts.words_a_sentence + counts.percent(counts.polysyllables))


def fog_polish(counts: Counts) -> float:
    """Return the FOG index for Polish; hard is a word of four or more syllables (Pisarek; Seretny)."""
    return 0.4 * (counts.words_a_sentence + counts.percent(counts.four_syllables))


def lix(counts: Counts) -> float:
    """Return LIX, for any language (Björnsson 1968): below 25 very easy, above 55 very hard."""
    return counts.words_a_sentence + counts.percent(counts.long_words)


def amstad(counts: Counts) -> float:
    """Return Amstad's reading ease for German, higher is easier (Amstad 1978)."""
    return 180 - counts.words_a_sentence - 58.5 * counts.syllables_a_word


def wiener_1(counts: Counts) -> float:
    """Return the first Wiener Sachtextformel for German, a school year (Bamberger and Vanecek 1984).

    That long words have more than six letters, and that the result is a school year, is from memory.
    """
    return (
        0.1935 * counts.percent(counts.polysyllables)
        + 0.1672 * counts.words_a_sentence
        + 0.1297 * counts.percent(counts.long_words)
        - 0.0327 * counts.percent(counts.one_syllable)
        - 0.875
    )


def wiener_2(counts: Counts) -> float:
    """Return the second Wiener Sachtextformel (Bamberger and Vanecek 1984); as the first."""
    return (
        0.2007 * counts.percent(counts.polysyllables)
        + 0.1682 * counts.words_a_sentence
        + 0.1373 * counts.percent(counts.long_words)
        - 2.779
    )


def wiener_3(counts: Counts) -> float:
    """Return the third Wiener Sachtextformel (Bamberger and Vanecek 1984)."""
    return 0.2963 * counts.percent(counts.polysyllables) + 0.1905 * counts.words_a_sentence - 1.1144


def wiener_4(counts: Counts) -> float:
    """Return the fourth Wiener Sachtextformel (Bamberger and Vanecek 1984)."""
    return 0.2744 * counts.percent(counts.polysyllables) + 0.2656 * counts.words_a_sentence - 1.693


def szigriszt_pazos(counts: Counts) -> float:
    """Return Szigriszt-Pazos' perspicuity for Spanish, higher is easier (Szigriszt 1993)."""
    return 206.835 - 62.3 * counts.syllables_a_word - counts.words_a_sentence


def fernandez_huerta(counts: Counts) -> float:
    """Return Fernández Huerta's reading ease for Spanish, higher is easier (1959; also with 206.835)."""
    return 206.84 - 60 * counts.syllables_a_word - 1.02 * counts.words_a_sentence


def atesman(counts: Counts) -> float:
    """Return Ateşman's reading ease for Turkish, higher is easier (Ateşman 1997, Dil Dergisi 58:71-74)."""
    return 198.825 - 40.175 * counts.syllables_a_word - 2.610 * counts.words_a_sentence


_INFLESZ = ((40, "very hard"), (55, "somewhat hard"), (65, "normal"), (80, "fairly easy"))


def inflesz(ease: float) -> str:
    """Return the words for a Szigriszt-Pazos value on the INFLESZ scale.

    A value on a border belongs to the easier side; values beyond 0 and 100 are as the ends. Source:
    Barrio-Cantalejo et al. 2008, An Sist Sanit Navar 31(2):135-152.
    """
    return next((words for end, words in _INFLESZ if ease < end), "very easy")

"""Counts words, sentences and syllables as a reader meets them: a number or a phrase is one word."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

from generator.wording.filling import PHRASE
from generator.wording.formulas import Counts
from generator.wording.isolation import ISOLATED, isolate_numbers
from generator.wording.syllables import counts_syllables, syllables

# What a telephone number, a dose, an angle or a phrase such as {hold} is read as: one short word.
_NUMBER = "0"
_LONG = 6
MOST_SYLLABLES_OF_KNOWN = 2
# Most languages bend the end of a word: Polish "operacja", "operacji", "operacją". A word is known when it
# shares all but so many last letters of a known one; a shorter beginning would join words of other meaning.
_BENT = 2
_LEAST_BEGINNING = 5
_MOST_LONGER = 3
# Full stop, question and exclamation mark, with those of Arabic and Devanagari, and closing quotes.
_END = re.compile("(?<=[.!?…؟।])[\"'”’»)]*\\s+(?=\\S)")
# A lone letter, or one of these, keeps its full stop to itself.
_SHORT = re.compile("(?:^|[\\s(])(?:[^\\W\\d_]|Dr|Mr|Mrs|Ms|Nr|approx|incl|vs|ca|bzw|Std|Min)\\.$")
_BREAK = re.compile("[\\s/–—]+")


def sentences(words: str) -> tuple[str, ...]:
    """Return the sentences of a text; a text without an end mark is one sentence.

    An end mark before a small letter, after a single letter or after a common abbreviation ends nothing.
    """
    found: list[str] = []
    start = 0
    for gap in _END.finditer(words):
        before = words[start : gap.start()]
        if words[gap.end()].islower() or _SHORT.search(before):
            continue
        found.append(words[start : gap.end()].strip())
        start = gap.end()
    rest = words[start:].strip()
    return (*found, rest) if rest else tuple(found)


@lru_cache(maxsize=16_384)
def count(words: str, language: str, known: frozenset[str] = frozenset()) -> Counts:
    """Return the counts of a text; syllables are 0 where there is no rule for the language.

    Kept, since a sentence is counted for its own level, for its exercise and for each booklet that has it.

    known: words in small letters that the reader has been told. Such a word counts as at most two syllables
    and never as a long one, since it was explained and cannot be avoided; an English plural belongs to its
    singular; in other languages a word with another ending belongs to it too.
    """
    total = Counts()
    for sentence in sentences(words):
        counted = Counts(sentences=1)
        for word in words_of(sentence):
            counted += _of_word(word, language, known)
        if counted.words:
            total += counted
    return total


@lru_cache(maxsize=16_384)
def words_of(sentence: str) -> tuple[str, ...]:
    """Return the words of a sentence; every number, isolate or phrase in braces comes as ``0``.

    Kept, since each sentence is counted with and without explained words, and for its own level.
    """
    return tuple(_words(sentence))


def _words(sentence: str) -> Iterator[str]:
    numbered = ISOLATED.sub(f" {_NUMBER} ", isolate_numbers(PHRASE.sub(f" {_NUMBER} ", sentence)))
    for part in _BREAK.split(numbered):
        word = "".join(char for char in part if unicodedata.category(char)[0] in "LMN" or char in "-‑'’")
        word = word.strip("-‑'’")
        if any(char.isdigit() for char in word):
            yield _NUMBER
        elif word:
            yield word


@lru_cache(maxsize=65_536)
def _of_word(word: str, language: str, known: frozenset[str]) -> Counts:
    if word == _NUMBER:
        return Counts(words=1, syllables=1 if counts_syllables(language) else 0, one_syllable=1)
    letters = sum(char.isalpha() for char in word)
    spoken = syllables(word, language) if counts_syllables(language) else 0
    easy = _is_known(word.lower().replace("’", "'"), language, known)
    if easy:
        spoken = min(spoken, MOST_SYLLABLES_OF_KNOWN)
    return Counts(
        words=1,
        syllables=spoken,
        polysyllables=int(spoken >= 3),
        one_syllable=int(spoken == 1),
        long_words=int(letters > _LONG and not easy),
        letters=letters,
        four_syllables=int(spoken >= 4),
    )


def _is_known(word: str, language: str, known: frozenset[str]) -> bool:
    if word in known:
        return True
    if language.partition("-")[0] != "en":
        return any(_is_form_of(word, base) for base in known)
    plural = word.endswith(("s", "'s"))
    return plural and (word.removesuffix("s").removesuffix("'") in known or word.removesuffix("es") in known)


def _is_form_of(word: str, base: str) -> bool:
    beginning = base[:-_BENT]
    long_enough = len(beginning) >= _LEAST_BEGINNING and len(word) <= len(base) + _MOST_LONGER
    return long_enough and word.startswith(beginning)

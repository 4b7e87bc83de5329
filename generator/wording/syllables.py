"""Counts syllables by each language's spelling, so that plain language can be measured without a download.

English spelling tells least, yet the rule here agrees with the CMU Pronouncing Dictionary in more words than
any library under a licence that suits this project (measured; see DEVELOPERS.md). German, Spanish, Polish and
Turkish spell their syllables out, so their rules are those of the language.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from types import MappingProxyType

# First halves that keep their own syllables: some-thing, side-ways, mile-stone, knee-cap.
_ENGLISH_FIRST = re.compile(
    "(some|there|where|home|house|fore|side|mile|like|safe|life|time|knee|bare|base|face|hand|wide|type)"
    "(?=[a-z]{3})(?!le[ds])"
)
_SOUNDED_ES = re.compile("(?:[sxz]|[cs]h|[cg])es$")
_SOUNDED_LE = re.compile("[^aeiouylrwn]le[ds]?$")
_SILENT_E = re.compile(
    "(?<=[^aeiouy])e(?=(?:ly|ness|ments?|ful|fully|less|some|ty)$)"
    "|(?<=[^aeiou])e$|(?<=[^aeiouy])e(?=s$)|(?<=[^aeiouydt])e(?=d$)"
)
# Two vowels in a row that are spoken apart: easi-er, ly-ing, usu-al, ser-i-ous.
_APART = re.compile(
    "(?<![tscgx])i(?=a)|(?<=[td])i(?=at[ei])|(?<=ss)i(?=at)|(?<=c)i(?=at[ei])|(?<![tscgxnh])i(?=o)"
    "|(?<=[rdlvsn])i(?=um|us)|i(?=e(?:r|st|rs|ty)$)|(?<![tc])i(?=e(?:nt|nts|nce)$)|[aeiouy](?=ing)"
    "|(?<=[^qg])u(?=al|ou|at|ary|a$|ity)|(?<=cr)e(?=at)|(?<=ar)e(?=a$|as$)|y(?=o)"
)
_ENGLISH_VOWELS = re.compile("[aeiouy]+")
_ENGLISH_ODD: Mapping[str, int] = MappingProxyType(
    {
        word: count
        for count, words in (
            (2, "being cafe diet driveway fluid giant poem quiet science tire tired"),
            (3, "average averages heroine idea ideas quietly ratio recipe"),
            (4, "experience posterior reality"),
            (5, "orientation"),
        )
        for word in words.split()
    }
)


def _english(word: str) -> int:
    if word.endswith(("'s", "s'")):
        hissing = re.search("(?:[sxz]|[cs]h|[scgz]e)'s$", word)
        return _english(word.rstrip("s").rstrip("'") or word[0]) + (1 if hissing else 0)
    word = word.replace("'", "")
    if word in _ENGLISH_ODD:
        return _ENGLISH_ODD[word]
    for first, count in (("any", 2), ("every", 2)):
        if word.startswith(first) and len(word) > len(first) + 2:
            return count + _english(word[len(first) :])
    joint = _ENGLISH_FIRST.match(word)
    if joint:
        return _english(joint.group()) + _english(word[joint.end() :])
    core = word
    if not (_SOUNDED_LE.search(core) or _SOUNDED_ES.search(core)):
        core = _SILENT_E.sub("", core)
    core = re.sub("^y(?=[aeiou])", "", core)
    core = re.sub("(?<=ic)a(?=lly$)", "", core)
    core = re.sub("(?<=s|h)m(?=s?$)", "·em", core)
    return len(_ENGLISH_VOWELS.findall(_APART.sub(lambda found: found.group() + "·", core)))


# Duden, rules on dividing words (from memory): ai ay au äu ei ey eu ie and doubled vowels are one sound.
_GERMAN = re.compile("aa|ee|oo|ai|ay|au|äu|ei|ey|eu|ie|[aeiouyäöüéèàáóê]")
_GERMAN_APART = re.compile("(^be|^ge)(?=e[^rt])|(famili|studi|arteri|seri|feri|^lini)(?=e)")


def _german(word: str) -> int:
    word = re.sub("(?<=q)u", "", word)
    return len(_GERMAN.findall(_GERMAN_APART.sub(lambda found: found.group() + "·", word)))


# Real Academia Española, Ortografía (2010), on diphthong and hiatus (from memory): a strong
# vowel with a weak one is one syllable unless the weak one bears the accent; h between them changes nothing.
_SPANISH = re.compile("[iuü]?[aeoáéó][iuüy]?|[iu][íú]|[iuü][iuüy]|[iuüíúy]")


def _spanish(word: str) -> int:
    word = re.sub("(?<=q)u|(?<=g)u(?=[eiéí])", "", word)
    word = re.sub("y(?=[aeiouáéíóú])|(?<=[aeiouáéíóú])h(?=[aeiouáéíóú])", lambda m: "j" * (m[0] == "y"), word)
    return len(_SPANISH.findall(word))


# In Polish an i before a vowel only softens; au begins a word as one syllable, eu is one but for -eum.
_POLISH = re.compile("^au|eu(?!m)|i(?![aeouyąęó])|[aeouyąęó]")
_TURKISH = re.compile("[aeıioöuüâîû]")

_RULES: Mapping[str, Callable[[str], int]] = MappingProxyType(
    {
        "de": _german,
        "en": _english,
        "es": _spanish,
        "pl": lambda word: len(_POLISH.findall(word)),
        "tr": lambda word: len(_TURKISH.findall(word)),
    }
)


def counts_syllables(language: str) -> bool:
    """Return whether there is a rule for the language (BCP 47; regions share their language's rule)."""
    return language.partition("-")[0] in _RULES


@lru_cache(maxsize=20_000)
def syllables(word: str, language: str) -> int:
    """Return the number of syllables of a word, at least 1; the parts of a word with hyphens add up.

    Raises:
        KeyError: there is no rule for the language.

    """
    main = language.partition("-")[0]
    # The Turkish capital I is the dotless vowel; elsewhere it is the usual one.
    lower = (word.replace("I", "ı").replace("İ", "i") if main == "tr" else word).lower().replace("’", "'")
    return sum(max(1, _RULES[main](part)) for part in re.split("[-‑]", lower) if part) or 1

"""What the generator cannot say in a language is known before a sheet mixes in English."""

from __future__ import annotations

from io import StringIO

from babel.messages import Catalog
from babel.messages.pofile import read_po

from generator.wording.own_words import TEMPLATE, own_word_problems
from generator.wording.voice import LOCALES
from tests.wording.pseudo import pseudo


def complete(language: str) -> Catalog:
    """Return the generator's words in a language, all in the pretend language."""
    words = Catalog(locale=language)
    for message in read_po(StringIO(TEMPLATE.read_text(encoding="utf-8"))):
        if isinstance(message.id, str):
            if message.id:
                words.add(message.id, pseudo(message.id), context=message.context)
        else:
            forms = (message.id[1],) * words.num_plurals
            words.add(message.id, tuple(map(pseudo, forms)), context=message.context)
    return words


def test_english_needs_no_translation() -> None:
    """The words are English in the code."""
    assert list(own_word_problems("en")) == []
    assert list(own_word_problems("en-GB")) == []


def test_a_complete_language_has_no_findings() -> None:
    """Every message with every form, and every value in place."""
    assert list(own_word_problems("ar", complete("ar"))) == []


def test_every_shipped_language_is_complete() -> None:
    """No page falls back to English, and no value is lost or misspelt."""
    shipped = [path.stem for path in LOCALES.glob("*.po")]
    assert [problem for language in shipped for problem in own_word_problems(language)] == []


def test_a_language_without_words_is_one_finding() -> None:
    """A clinic that adds a language learns it at once, not message by message."""
    found = list(own_word_problems("eu"))
    assert [problem.code for problem in found] == ["own-words-missing"]
    assert found[0].safety


def test_outdated_and_half_filled_messages_count_as_missing() -> None:
    """A fuzzy entry and a plural form left empty would both come out in English."""
    words = complete("pl")
    outdated, half = words.get("every day"), words.get(("{number} page", "{number} pages"))
    assert outdated is not None
    assert half is not None
    outdated.flags.add("fuzzy")
    half.string = ("{number} strona", "", "{number} stron")
    found = list(own_word_problems("pl", words))
    assert [problem.message.split(" of ")[0] for problem in found] == ["pl: 2"]


def test_a_lost_or_misspelt_value_is_named() -> None:
    """The number of a dose must not vanish; a form for one or two may do without it (Arabic, CLDR)."""
    words = complete("ar")
    message = words.get(("{number} page", "{number} pages"))
    assert message is not None
    message.string = ("{number} ص", "صفحة", "صفحتان", "{number} ص", "{number} ص", "{number} ص")
    assert list(own_word_problems("ar", words)) == []
    message.string = ("{number} ص", "صفحة", "صفحتان", "{number} ص", "{nombre} ص", "ص")
    found = [problem.message for problem in own_word_problems("ar", words)]
    assert found == [
        "{nombre} is not a value of '{number} pages'",
        "{number} is missing in the translation of '{number} pages'",
    ]

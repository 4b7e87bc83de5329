"""Arabic text is read out of a booklet as it was written, whatever shape its letters took."""

from __future__ import annotations

import io
import unicodedata

import pikepdf
import pytest

from generator.booklets.examine import _words_stand
from generator.booklets.fonts import font_rules
from generator.booklets.html import PARTING, TEMPLATES
from generator.booklets.layout import squeezed
from generator.booklets.letters import letters_of
from generator.booklets.pdf import to_pdf
from generator.booklets.reading_back import read_back

# Everyday words from memory; the first two are "no, not" and "do not turn", which must never be lost.
WORDS = ("لا", "لا تلفّ", "شيئًا", "متجاوزًا", "واخطُ", "ثوانٍ", "الأسبوع", "الآن", "إلى", "رُكبتك")
SHEET = (
    "<!doctype html><html lang='{lang}' dir='{dir}'><head><title>x</title><style>{fonts}"
    "body {{ font-family: 'Phasebook Digits', 'Atkinson Hyperlegible', 'Tajawal' }}</style></head>"
    "<body>{body}</body></html>"
)


def printed(body: str, lang: str = "ar", direction: str = "rtl") -> bytes:
    """Return a sheet with these words as a PDF."""
    return to_pdf(SHEET.format(lang=lang, dir=direction, fonts=font_rules(), body=body))


@pytest.mark.parametrize("weight", [400, 700])
def test_every_shape_of_a_letter_is_that_letter(weight: int) -> None:
    """No glyph is a mere shape (UnicodeData.txt), but for lam-alef, whose order readers would turn round."""
    letters = set(letters_of("Tajawal", weight).values())
    for first, last in ((0x621, 0x63A), (0x64B, 0x652), (0xFEF5, 0xFEFC)):
        assert {chr(code) for code in range(first, last + 1)} <= letters
    shapes = {one for one in letters if unicodedata.normalize("NFKC", one) != one}
    assert [one for one in shapes if len(unicodedata.normalize("NFKC", one)) == 1] == []


@pytest.mark.parametrize("word", WORDS)
def test_a_word_is_read_back_letter_by_letter(word: str) -> None:
    """Letters and lam-alef come back in their order, in both weights, beside a word that bears a sign."""
    text = read_back(printed(f"<p>{word}</p><p><b>{word}</b> شيئًا</p>")).pages[0].text
    if word.isalpha():
        assert text.split().count(word) == 2
    assert _words_stand(word, text)


def test_a_right_to_left_booklet_is_bound_on_the_right() -> None:
    """ISO 32000-1, table 150: Direction R2L also says how sheets lie side by side."""
    with pikepdf.open(io.BytesIO(printed("<p>لا</p>"))) as file:
        assert file.Root.ViewerPreferences.Direction == "/R2L"
    with pikepdf.open(io.BytesIO(printed("<p>no</p>", "en", "ltr"))) as file:
        assert "/Direction" not in file.Root.ViewerPreferences


def test_a_lost_not_is_missed() -> None:
    """A sentence without its "not" is not the sentence."""
    text = read_back(printed("<p>تلفّ ركبتك الآن</p>")).pages[0].text
    assert not _words_stand("لا تلفّ ركبتك", text)


@pytest.mark.parametrize(
    ("language", "word", "parts"),
    [
        ("de", "Rehabilitationsübungen", True),
        ("es", "aproximadamente", True),
        ("pl", "fizjoterapeutycznych", True),
        ("ar", "المستشفيات", False),
    ],
)
def test_long_words_part_where_their_language_has_rules(language: str, word: str, parts: bool) -> None:
    """In a narrow column a word goes on on the next line and is still read as one; Arabic parts no word."""
    rules = (TEMPLATES / PARTING).read_text(encoding="utf-8") + ".column { width: 9em }"
    fill = "lado" if language != "ar" else "إلى"
    html = SHEET.format(
        lang=language,
        dir="rtl" if language == "ar" else "ltr",
        fonts=font_rules() + rules,
        body=f"<p class='column'>{fill} {word}</p>",
    )
    page = read_back(to_pdf(html)).pages[0]
    assert ("\ufffe" in page.text) is parts
    assert squeezed(word) in squeezed(page.text)

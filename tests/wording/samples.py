"""Small translations of the generator's own words, as a translator would type them, for tests only."""

from __future__ import annotations

from io import StringIO

from babel.messages.pofile import read_po

from generator.wording.voice import Voice, voice

# Plural forms as in the CLDR plural rules of these languages:
# https://www.unicode.org/cldr/charts/latest/supplemental/language_plural_rules.html
# The words themselves are from memory and only serve tests.
POLISH = r"""
msgid ""
msgstr ""
"Language: pl\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2);\n"

msgctxt "before of this many repetitions"
msgid "{number} set"
msgid_plural "{number} sets"
msgstr[0] "{number} seria"
msgstr[1] "{number} serie"
msgstr[2] "{number} serii"

msgctxt "after sets of"
msgid "{number} repetition"
msgid_plural "{number} repetitions"
msgstr[0] "{number} powtórzeniu"
msgstr[1] "{number} powtórzenia"
msgstr[2] "{number} powtórzeń"

msgctxt "dose in words"
msgid "{sets} of {repetitions}"
msgstr "{sets} po {repetitions}"

msgctxt "for how long"
msgid "{number} second"
msgid_plural "{number} seconds"
msgstr[0] "{number} sekundę"
msgstr[1] "{number} sekundy"
msgstr[2] "{number} sekund"

#, fuzzy
msgid "every day"
msgstr "co drugi dzień"
"""
GERMAN = r"""
msgid ""
msgstr ""
"Language: de\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\n"

msgctxt "for how long"
msgid "{number} second"
msgid_plural "{number} seconds"
msgstr[0] "{number} Sekunde"
msgstr[1] "{number} Sekunden"

msgid "weeks {start} to {end}"
msgstr "Woche {start} bis {end}"

msgctxt "signal word"
msgid "Warning"
msgstr "Warnung"

msgid "Page %(number)s"
msgstr "Seite %(number)s"
"""
ARABIC = r"""
msgid ""
msgstr ""
"Language: ar\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Plural-Forms: nplurals=6; plural=(n==0 ? 0 : n==1 ? 1 : n==2 ? 2 : n%100>=3 && n%100<=10 ? 3 : n%100>=11 "
"&& n%100<=99 ? 4 : 5);\n"

msgctxt "for how long"
msgid "{number} second"
msgid_plural "{number} seconds"
msgstr[0] "{number} ثانية (صفر)"
msgstr[1] "ثانية واحدة"
msgstr[2] "ثانيتين"
msgstr[3] "{number} ثوانٍ"
msgstr[4] "{number} ثانيةً"
msgstr[5] "{number} ثانية"

msgid "weeks {start} to {end}"
msgstr "الأسابيع {start} إلى {end}"
"""


def speaking(language: str, po: str) -> Voice:
    """Return the voice of a language whose own words are the given PO text."""
    words = read_po(StringIO(po.lstrip()), locale=language, abort_invalid=True)
    return voice(language, words)

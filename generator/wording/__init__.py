"""Gives every sentence, number and date in one language at a time; nothing here knows a page or a sheet.

In reading order:

- `voice`: one language: direction, own name, the generator's own words.
  ``voice(language, words=None) -> Voice``, ``direction_of(language)``, ``unknown_languages(codes, place)``
- `isolation`: keeps numbers in order inside right-to-left lines.
  ``isolate(text)``, ``isolate_numbers(text)``, ``plain(words)``
- `phrases`: numbers, durations, angles, loads, frequencies, lists as whole phrases.
  ``number, percent, angle, height, duration, minutes, frequency, load, pain, place_of, list_of ...``
- `weeks`: weeks on both tracks, days, dates, weekdays.
  ``weeks(voice, window), delayed_weeks, both_tracks, from_week, not_before_week, days, date, weekdays``
- `doses`: what a patient does, large and in words.
  ``dose(voice, step, exercise_dose) -> DosePhrase(big, unit, spoken, load, hold, tempo, rest, lines)``
- `terms`: the trade's fixed words in everyday language, some also in the clinician's.
  ``term(voice, member)``, ``clinical_term(voice, member)``
- `restrictions`: a restriction in the clinician's words.
  ``concerned(voice, rule)``, ``allowed(voice, rule)``
- `reporting`: what a programme answers to an item of a reporting checklist.
  ``answer_words(voice, answer)``
- `html`: words to markup.
  ``as_html(words)``, ``text_html(text, page_language)``
- `jinja`: the same for templates, without importing the template library.
  ``install(environment, voice)``: ``gettext`` and its kin, filters ``words`` and ``plain``
- `messages`: what translators get.
  ``translatable(catalogue) -> Iterator[Message]``
- `localise`: the catalogue in one language, phrases such as ``{hold}`` filled (by `filling`).
  ``localise(catalogue, voice, translations) -> (Catalogue, problems)``,
  ``exercise_in_use(exercise, step, catalogue, voice, translations) -> Exercise``
- `po`: translations from files.
  ``read_translations(path) -> (Translations, problems)``
- `soundness`, `negations`: what a translation must share with its source.
  ``soundness_problems(source, translation, place)``, ``negation_problems(...)``
- `export`: texts for translators.
  ``content_catalogue(catalogue, language, translations)``, ``po_text(catalogue) -> str``
- `merging`, `exchange`: out to translators and back, without losing their work.
  ``export_texts(catalogue, language, here, page_of) -> Exchange``, ``import_texts(...)``
- `extract`: the generator's own words as a template for translators.
  ``extract_messages() -> str``, ``updated_locale(language) -> str``
- `syllables`: how many syllables a word has, by each language's spelling.
  ``syllables(word, language) -> int``, ``counts_syllables(language)``
- `formulas`: the published readability formulas, over counts.
  ``Counts``, ``flesch_kincaid_grade(counts)``, ``smog``, ``lix``, ``wiener_1`` ... ``szigriszt_pazos`` ...
- `counting`: text to counts; a number or a phrase is one word.
  ``count(words, language, known) -> Counts``, ``sentences(words)``
- `readability`: how hard each exercise, phase, programme and booklet is to read.
  ``levels(catalogue, language) -> tuple[Level, ...]``, ``measure_of(language) -> Measure | None``
- `own_words`: what the generator cannot say in a language yet.
  ``own_word_problems(language)``
"""

from __future__ import annotations

from generator.problems import Rule
from generator.wording import exchange, filling, negations, own_words, po, soundness, voice

RULES: tuple[Rule, ...] = (
    *exchange.RULES,
    *filling.RULES,
    *negations.RULES,
    *own_words.RULES,
    *po.RULES,
    *soundness.RULES,
    *voice.RULES,
)

__all__ = ["RULES"]

"""Translators' work goes out and comes back without a sentence lost, whatever changed meanwhile."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from generator.catalogue.values import Catalogue
from generator.wording.exchange import Exchange, File, export_texts, import_texts
from generator.wording.export import no_page
from generator.wording.own_words import own_word_problems, own_words_in
from generator.wording.po import parse_translations
from generator.wording.voice import voice
from tests.content import FILES, catalogue_of, with_change

FIRST = "Lower slowly."
EXERCISE = "exercises/heel-raise.yml"


def out(catalogue: Catalogue, before: str = "", language: str = "de") -> str:
    """Return what an export writes."""
    found = export_texts(catalogue, language, File(f"{language}.po", before.encode("utf-8")), no_page)
    assert found.text is not None, found.problems
    return found.text


def back(here: str, given: str) -> Exchange:
    """Return what an import into the German file makes of a translator's file."""
    files = File("de.po", here.encode("utf-8")), File("new.po", given.encode("utf-8"))
    return import_texts(catalogue_of(FILES), "de", *files, no_page)


def filled(text: str, source: str, words: str) -> str:
    """Return a PO text with a translation typed in, as a translator does."""
    empty = f'msgid "{source}"\nmsgstr ""\n'
    assert empty in text
    return text.replace(empty, f'msgid "{source}"\nmsgstr "{words}"\n')


def test_an_export_again_changes_nothing() -> None:
    """What was translated stays, comments of translators included, byte for byte."""
    text = filled(out(catalogue_of(FILES)), FIRST, "Langsam senken.")
    text = text.replace(
        'msgctxt "exercise/heel-raise/steps"', '# ask Anna\nmsgctxt "exercise/heel-raise/steps"', 1
    )
    once = out(catalogue_of(FILES), text)
    assert "# ask Anna" in once
    assert "Langsam senken." in once
    assert out(catalogue_of(FILES), once) == once


def test_a_reworded_sentence_is_marked_and_shows_what_it_was() -> None:
    """The old translation is offered as outdated, with the sentence it belonged to."""
    text = filled(out(catalogue_of(FILES)), FIRST, "Langsam senken.")
    changed = catalogue_of(with_change(FILES, EXERCISE, FIRST, "Lower very slowly."))
    again = out(changed, text)
    assert f'#| msgid "{FIRST}"' in again
    translations, problems = parse_translations("de.po", again.encode("utf-8"), "de")
    assert (translations.current, problems) == ({}, ())
    assert list(translations.outdated.values()) == ["Langsam senken."]


def test_a_sentence_that_is_gone_is_set_aside_and_comes_back() -> None:
    """Its translation is history in the file; when the sentence returns, it is offered as outdated."""
    text = filled(out(catalogue_of(FILES)), FIRST, "Langsam senken.")
    gone = out(catalogue_of(with_change(FILES, EXERCISE, f"  - {FIRST}\n", "")), text)
    assert '#~ msgstr "Langsam senken."' in gone
    assert (
        "Langsam senken." not in parse_translations("de.po", gone.encode("utf-8"), "de")[0].current.values()
    )


def test_a_renamed_exercise_keeps_its_translations_as_offers() -> None:
    """The same sentence under another id is offered, marked so that a reader looks at it."""
    text = filled(out(catalogue_of(FILES)), FIRST, "Langsam senken.")
    files = {
        name.replace("heel-raise", "calf-lift"): words.replace("heel-raise", "calf-lift")
        for name, words in FILES.items()
    }
    translations, _ = parse_translations("de.po", out(catalogue_of(files), text).encode("utf-8"), "de")
    assert translations.outdated["exercise/calf-lift/steps", FIRST] == "Langsam senken."


def test_an_import_takes_what_it_has_and_nothing_away() -> None:
    """An empty entry of the imported file leaves the translation that is there."""
    empty = out(catalogue_of(FILES))
    mine = filled(empty, FIRST, "Langsam senken.")
    done = back(mine, empty)
    assert (done.text, done.changed) == (mine, 0)
    done = back(mine, filled(empty, FIRST, "Langsam ablassen."))
    assert done.changed == 1
    assert "Langsam ablassen." in (done.text or "")


def test_an_entry_of_no_text_is_named_and_nothing_is_imported() -> None:
    """A sentence that was reworded after the export would be lost in silence."""
    empty = out(catalogue_of(FILES))
    stranger = f'{empty}\nmsgctxt "exercise/heel-raise/steps"\nmsgid "Hop."\nmsgstr "Hüpfen."\n'
    done = back(empty, stranger)
    assert done.text is None
    [problem] = done.problems
    assert problem.code == "translation-of-nothing"
    assert problem.place.line == stranger[: stranger.index('msgid "Hop."')].count("\n") + 1


def test_a_language_the_generator_does_not_speak_gets_its_words_in_the_same_file() -> None:
    """Plural forms are asked for as the language has them, with examples for 1, 2, 3, 5 and 11."""
    text = out(catalogue_of(FILES), language="uk")
    assert 'msgctxt "generator"\nmsgid "every day"' in text
    assert "For 1, 2, 3, 5, 11: 1 page · 2 pages · 3 pages · 5 pages · 11 pages" in text
    done = text.replace('msgid "every day"\nmsgstr ""', 'msgid "every day"\nmsgstr "щодня"')
    forms = 'msgid "{number} page"\nmsgid_plural "{number} pages"\nmsgstr[0] ""\nmsgstr[1] ""\nmsgstr[2] ""\n'
    assert forms in done
    done = done.replace(
        forms,
        forms.replace('[0] ""', '[0] "{number} сторінка"')
        .replace('[1] ""', '[1] "{number} сторінки"')
        .replace('[2] ""', '[2] "{number} сторінок"'),
    )
    translations, problems = parse_translations("uk.po", done.encode("utf-8"), "uk")
    assert problems == ()
    own = own_words_in("uk", translations)
    speaker = voice("uk", own)
    assert speaker.gettext("every day") == "щодня"
    # CLDR: 1 is "one", 3 "few", 11 "many" in Ukrainian.
    pages = [speaker.ngettext("{number} page", "{number} pages", count) for count in (1, 3, 11)]
    assert pages == ["{number} сторінка", "{number} сторінки", "{number} сторінок"]
    assert [problem.code for problem in own_word_problems("uk", own)] == ["own-words-missing"]


def test_half_a_plural_is_refused() -> None:
    """A form left empty would come out in English for some numbers."""
    text = out(catalogue_of(FILES), language="uk")
    forms = 'msgid_plural "{number} pages"\nmsgstr[0] ""'
    spoilt = text.replace(forms, 'msgid_plural "{number} pages"\nmsgstr[0] "{number} сторінка"', 1)
    _, problems = parse_translations("uk.po", spoilt.encode("utf-8"), "uk")
    assert [problem.code for problem in problems] == ["plural-forms-differ"]


def test_a_header_with_other_plurals_is_refused() -> None:
    """CLDR gives Polish more than two forms."""
    text = 'msgid ""\nmsgstr ""\n"Language: pl\\n"\n"Content-Type: text/plain; charset=UTF-8\\n"\n'
    spoilt = f'{text}"Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n'
    _, problems = parse_translations("pl.po", spoilt.encode("utf-8"), "pl")
    assert [problem.code for problem in problems] == ["plural-forms-differ"]


@pytest.mark.parametrize("language", ["de", "uk", "ar"])
def test_gettext_itself_accepts_an_export(tmp_path: Path, language: str) -> None:
    """GNU gettext's msgfmt --check, an outside reader, finds nothing wrong."""
    path = tmp_path / f"{language}.po"
    path.write_text(out(catalogue_of(FILES), language=language), encoding="utf-8")
    done = subprocess.run(
        ["msgfmt", "--check", "--output-file", "/dev/null", str(path)],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr

"""Translations come from PO files, and what cannot be trusted is named with file and line."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import Place
from generator.wording import po
from generator.wording.export import content_catalogue, po_text
from generator.wording.localise import NO_TRANSLATIONS, Translations
from generator.wording.messages import translatable
from generator.wording.po import parse_translations, read_translations
from tests.content import catalogue_of
from tests.wording.pseudo import pseudo_translations

HEAD = 'msgid ""\nmsgstr ""\n"Language: de\\n"\n"Content-Type: text/plain; charset=UTF-8\\n"\n\n'
FORMS = HEAD[:-1] + '"Plural-Forms: nplurals={}; plural=0;\\n"\n'
STEPS = "exercise/heel-raise/steps"
LOWER = f'msgctxt "{STEPS}"\nmsgid "Lower slowly."\nmsgstr "Langsam senken."\n'


def parsed(text: str) -> tuple[Translations, list[str]]:
    """Return what is read, and the findings as code and place."""
    translations, found = parse_translations("de.po", text.encode("utf-8"), "de")
    return translations, [f"{problem.code} {problem.place}" for problem in found]


def test_an_entry_is_found_by_context_and_source() -> None:
    """The place of each entry is the line of its msgid."""
    translations, found = parsed(HEAD + LOWER)
    key = (STEPS, "Lower slowly.")
    assert translations == Translations({key: "Langsam senken."}, {}, {key: Place("de.po", 7, 1)})
    assert found == []


def test_a_fuzzy_entry_is_outdated_and_an_empty_one_is_none() -> None:
    """Neither counts as a translation."""
    entry = f'#, fuzzy\n{LOWER}\nmsgctxt "{STEPS}"\nmsgid "Push up onto your toes."\nmsgstr ""\n'
    translations, found = parsed(HEAD + entry)
    assert (translations.current, list(translations.outdated), found) == ({}, [(STEPS, "Lower slowly.")], [])


def test_a_second_translation_of_a_message_is_refused() -> None:
    """Babel keeps the first in silence; the same source under another context is another message."""
    other = LOWER.replace(STEPS, "exercise/other/steps")
    assert parsed(HEAD + LOWER + "\n" + other)[1] == []
    _, found = parsed(HEAD + LOWER + "\n" + LOWER.replace("Langsam", "Schnell"))
    assert found == ["translation-twice de.po:11:1"]


def test_entries_set_aside_by_an_editor_are_not_read() -> None:
    """An obsolete entry neither translates nor counts as a second translation."""
    set_aside = "".join(f"#~ {line}\n" for line in LOWER.splitlines())
    translations, found = parsed(HEAD + LOWER + "\n" + set_aside)
    assert (list(translations.current.values()), found) == (["Langsam senken."], [])


def test_long_entries_over_several_lines_are_one_sentence() -> None:
    """PO editors break lines; no-break spaces stay."""
    entry = (
        f'msgctxt "{STEPS}"\nmsgid ""\n"Lower "\n"slowly."\nmsgstr ""\n"Langsam\\n"\n"senken, 3\u00a0s."\n'
    )
    assert parsed(HEAD + entry)[0].current == {(STEPS, "Lower slowly."): "Langsam senken, 3\u00a0s."}


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        (HEAD + LOWER.replace('senken."', "senken."), "translation-unreadable de.po:8:1"),
        (HEAD + LOWER.replace('msgid "Lower', 'msgid Lower"'), "translation-unreadable de.po:7:1"),
        (HEAD + LOWER.replace("msgstr", "msgst"), "translation-unreadable de.po:8:1"),
        (HEAD + LOWER.replace('msgid "Lower slowly."\n', ""), "translation-unreadable de.po:7:1"),
        (HEAD + LOWER.replace('msgstr "Langsam senken."\n', ""), "translation-unreadable de.po:7:1"),
        (HEAD + LOWER.replace("Langsam", "\u202eLangsam"), "translation-unreadable de.po:8:1"),
        (HEAD + LOWER.replace(f'msgctxt "{STEPS}"\n', ""), "translation-without-context de.po:6:1"),
        (HEAD.replace("Language: de", "Language: pl") + LOWER, "translation-header de.po:1:1"),
        (HEAD.replace("UTF-8", "latin-1") + LOWER, "translation-header de.po:1:1"),
        (LOWER, "translation-header de.po:1:1"),
        ("", "translation-header de.po:1:1"),
    ],
)
def test_a_damaged_file_is_named_with_its_line(text: str, finding: str) -> None:
    """Each damage is one that an editor or a merge leaves behind."""
    assert parsed(text)[1] == [finding]


def test_an_entry_with_plural_forms_belongs_to_no_text() -> None:
    """Texts of the content have no plural forms; phrases bring them."""
    entry = f'msgctxt "{STEPS}"\nmsgid "a"\nmsgid_plural "b"\nmsgstr[0] "c"\nmsgstr[1] "d"\n'
    assert parsed(HEAD + entry)[1] == ["translation-without-context de.po:7:1"]


def test_a_file_that_is_not_utf8_or_not_there_is_a_finding(tmp_path: Path) -> None:
    """No traceback reaches the translator."""
    path = tmp_path / "de.po"
    assert [problem.code for problem in read_translations(path)[1]] == ["translation-unreadable"]
    path.write_bytes(HEAD.encode() + b'msgctxt "a"\nmsgid "b"\nmsgstr "\xff"\n')
    translations, found = read_translations(path)
    assert translations == NO_TRANSLATIONS
    assert [(problem.code, problem.place.line) for problem in found] == [("translation-unreadable", 8)]


@given(st.text(alphabet=st.sampled_from('msgidtrcx"\\n#~, \n[0]_plu')))
def test_no_text_at_all_makes_the_reader_fail(text: str) -> None:
    """Whatever stands in a file, the answer is a value."""
    for whole in (text, HEAD + text, HEAD + LOWER + text):
        parse_translations("de.po", whole.encode("utf-8"), "de")


def test_what_is_written_is_read_back() -> None:
    """Current and outdated translations survive; no clock stands in the file."""
    catalogue = catalogue_of()
    everything = pseudo_translations(catalogue).current
    outdated_key = (STEPS, "Lower slowly.")
    current = {key: words for key, words in everything.items() if key != outdated_key}
    outdated = {outdated_key: everything[outdated_key]}
    text = po_text(content_catalogue(catalogue, "de", Translations(current, outdated)))
    read, found = parsed(text)
    assert (read.current, read.outdated, found) == (current, outdated, [])
    assert "Date" not in text


def test_the_file_shows_place_and_notes_in_the_order_of_the_content() -> None:
    """A translator reads step after step, with the file and line beside each."""
    catalogue = catalogue_of()
    text = po_text(content_catalogue(catalogue))
    sources = [message.source for message in translatable(catalogue)]
    positions = [text.index(f'"{source}"') for source in sources[:20]]
    assert positions == sorted(positions)
    place = catalogue.exercises["heel-raise"].steps[1].place
    assert f"#: {place.path}:{place.line}\n" in text
    assert "#. {hold} stands for how long to hold" in text


@pytest.mark.parametrize("language", ["de", "pl", "ar", "pt-BR"])
def test_gettext_itself_accepts_the_file(language: str, tmp_path: Path) -> None:
    """GNU gettext's msgfmt --check, an outside reader, finds nothing wrong."""
    catalogue = catalogue_of()
    path = tmp_path / f"{language}.po"
    text = po_text(content_catalogue(catalogue, language, pseudo_translations(catalogue)))
    path.write_text(text, encoding="utf-8", newline="\n")
    command = ["msgfmt", "--check", "--output-file", "/dev/null", str(path)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    # The clock is left out on purpose: a date would change the file with every run.
    complaints = [line for line in done.stderr.splitlines() if "header field" not in line]
    assert (done.returncode, complaints) == (0, [])


@pytest.mark.parametrize(
    ("spoilt", "says"),
    [
        (FORMS.format(1_000_000_000), "1000000000 plural forms"),
        (FORMS.format(11), "11 plural forms"),
        (HEAD + 'msgid "a"\nmsgstr "b"\n' * (po.MOST_ENTRIES + 1), "100,000 entries"),
        ("#" * (po.MOST_BYTES + 1), "20 MB"),
    ],
)
def test_a_bomb_is_stopped_by_counting(spoilt: str, says: str) -> None:
    """A header that asks for a thousand million forms, or a file without end, costs no memory to refuse."""
    translations, found = parse_translations("de.po", spoilt.encode("utf-8"), "de")
    assert translations == NO_TRANSLATIONS
    assert [(problem.code, says in problem.message) for problem in found] == [
        ("translation-unreadable", True)
    ]
    assert found[0].remedy


def test_translations_are_never_read_from_elsewhere(tmp_path: Path) -> None:
    """A link that leads out of the folder, and a pipe that would keep the reader waiting, are refused."""
    (tmp_path / "secret.po").write_text(HEAD + LOWER, encoding="utf-8")
    folder = tmp_path / "translations"
    folder.mkdir()
    (folder / "de.po").symlink_to(tmp_path / "secret.po")
    os.mkfifo(folder / "pl.po")
    for name in ("de.po", "pl.po"):
        translations, found = read_translations(folder / name)
        assert translations == NO_TRANSLATIONS
        assert [problem.code for problem in found] == ["translation-unreadable"]

"""The demonstration in all its languages: nothing lost on the way to paper, every sheet in its place."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from generator.booklets.examine import stands
from generator.booklets.reading_back import PageRead, read_back
from generator.catalogue.base import Text
from generator.catalogue.exercise import Exercise
from generator.pipeline import check_catalogue
from generator.publish.sheets import read
from generator.publish.text import doses_in, plain
from generator.steps.languages import Spoken, speak
from tests.whole.command import PROJECT

pytestmark = pytest.mark.slow


@cache
def spoken() -> tuple[Spoken, ...]:
    """Return the demonstration in all its languages."""
    catalogue = check_catalogue(PROJECT / "content").catalogue
    assert catalogue is not None
    return speak(catalogue, PROJECT / "content")[0]


@cache
def pages(path: Path) -> tuple[PageRead, ...]:
    """Return what stands on the sheets of a PDF."""
    return read_back(path.read_bytes()).pages


def booklets() -> Iterator[tuple[str, int]]:
    """Yield programme and number of every phase."""
    for programme in spoken()[0].catalogue.programmes.values():
        for phase in programme.phases:
            yield programme.id, phase.number


def sentences(exercise: Exercise) -> Iterator[Text]:
    """Yield what a sheet says of an exercise in whole sentences."""
    yield from (exercise.purpose, *exercise.set_up, exercise.start, *exercise.steps, *exercise.limits)
    yield from (exercise.feel, exercise.not_feel, *exercise.mistakes)
    for caution in exercise.cautions:
        yield from (caution.hazard, caution.consequence, caution.avoid)


def test_the_demonstration_speaks_five_languages(demo: Path) -> None:
    """English, German, Spanish, Arabic and Polish are published whole, none withheld."""
    codes = [one.voice.code for one in spoken()]
    assert codes == ["en", "de", "es", "ar", "pl"]
    names = {f"{programme}-phase-{phase}.pdf" for programme, phase in booklets()}
    names |= {f"{programme}-protocol.pdf" for programme in spoken()[0].catalogue.programmes}
    for code in codes:
        assert names <= {path.name for path in (demo / code / "booklets").glob("*.pdf")}


def test_every_page_leads_to_itself_in_every_language(demo: Path) -> None:
    """The choice of language stays on the page wherever the page exists, by links that need no server."""
    for one in spoken():
        for path in sorted((demo / one.voice.code).rglob("*.html")):
            page = BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")
            (root,) = page.select("html")
            assert (root["lang"], root["dir"]) == (one.voice.code, one.voice.direction)
            inside = path.relative_to(demo / one.voice.code)
            for link in page.select(".pb-languages a"):
                target = (path.parent / str(link["href"])).resolve()
                assert target.is_file(), (path, link["href"])
                same = (demo / str(link["lang"]) / inside).resolve()
                assert target == same or not same.exists()


@pytest.mark.parametrize("code", ["en", "de", "es", "ar", "pl"])
def test_every_sentence_of_every_exercise_is_read_back(demo: Path, code: str) -> None:
    """What the catalogue says in a language stands in the booklet of each phase that uses it."""
    one = next(one for one in spoken() if one.voice.code == code)
    in_use = one.in_use()
    for programme, phase in booklets():
        sheets = pages(demo / code / "booklets" / f"{programme}-phase-{phase}.pdf")
        for (where, number, name), exercise in in_use.items():
            if (where, number) == (programme, phase):
                lost = [str(text) for text in sentences(exercise) if not _on_one_of(str(text), sheets)]
                assert lost == [], (programme, phase, name)


@pytest.mark.parametrize("code", ["de", "es", "ar", "pl"])
def test_the_same_exercise_has_the_same_figures_on_the_same_sheet(demo: Path, code: str) -> None:
    """A clinician who cannot read the language finds each dose where the English booklet has it.

    Compared as the eye meets them, so a dose that is turned round in a right-to-left line is another dose.
    """
    for programme, phase in booklets():
        name = f"{programme}-phase-{phase}.pdf"
        english, other = (_doses(demo / language / "booklets" / name) for language in ("en", code))
        texts = [page.text for page in pages(demo / "en" / "booklets" / name)]
        first = next(number for number, text in enumerate(texts) if "Exercise 1 of" in text)
        last = max(number for number, found in enumerate(english) if found)
        assert other[first : last + 1] == english[first : last + 1], name


def test_no_language_makes_the_others_wait_on_sheets_for_notes(demo: Path) -> None:
    """Cover, phase, warnings and session take 1, 2, 2 and 1 sheets, an exercise one leaf, in all languages.

    The languages share their sheets, so that the English booklet would show it if any other needed more.
    """
    english = spoken()[0].catalogue
    for programme, phase in booklets():
        texts = [page.text for page in pages(demo / "en" / "booklets" / f"{programme}-phase-{phase}.pdf")]
        begins = [number for number, text in enumerate(texts, 1) if "Exercise 1 of" in text]
        uses = english.programmes[programme].phase(phase).uses
        assert begins[0] == 1 + 2 + 2 + 1 + 1, (programme, phase)
        ends = max(number for number, text in enumerate(texts, 1) if f"Exercise {len(uses)} of" in text)
        assert ends == begins[0] + 2 * len(uses) - 1, (programme, phase)


@pytest.mark.parametrize("code", ["en", "de", "es", "ar", "pl"])
def test_every_sheet_has_the_telephone_number_in_its_order(demo: Path, code: str) -> None:
    """The clinic's number stands on one line, its digits from left to right, in every language."""
    number = spoken()[0].catalogue.clinic.telephone.clinic.replace(" ", "")
    for programme, phase in booklets():
        for page in pages(demo / code / "booklets" / f"{programme}-phase-{phase}.pdf"):
            assert any(number in line for line in page.lines), (programme, phase)


def _on_one_of(words: str, sheets: tuple[PageRead, ...]) -> bool:
    return not words or any(stands(words, page) for page in sheets)


@cache
def _doses(path: Path) -> tuple[frozenset[str], ...]:
    """Return the doses of each sheet as the eye meets them."""
    facts = read(path, path.name, visual=True)
    return tuple(frozenset(doses_in(plain(sheet.visual))) for sheet in facts.sheets)

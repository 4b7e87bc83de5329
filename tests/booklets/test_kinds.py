"""The kinds of booklet: large print, pocket and its sheets to fold, the sheet of a session."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from pdfua.validator import Validator

from generator.booklets.formats import KINDS, LARGE, POCKET, SHEET, format_of
from generator.booklets.imposition import impose
from generator.booklets.make import make_booklet
from generator.booklets.page_lock import locked, most_sheets, unlike, with_sheets
from generator.booklets.reading_back import read_back
from generator.booklets.values import BookletJob, BookletResult
from generator.catalogue.terms import Paper
from generator.wording.isolation import plain
from tests.booklets.builders import catalogue, clinic, job

POINTS_A_MM = 72 / 25.4


def _job(folder: Path, kind: str) -> BookletJob:
    return replace(job(folder / f"{kind}.pdf"), kind=kind)


@pytest.fixture(scope="module")
def kinds(tmp_path_factory: pytest.TempPathFactory) -> dict[str, BookletResult]:
    """Return the booklet of phase 2 in every kind."""
    folder = tmp_path_factory.mktemp("kinds")
    return {kind: make_booklet(_job(folder, kind)) for kind in KINDS}


def _result(path: str, taken: dict[str, int]) -> BookletResult:
    return BookletResult(Path(path), sum(taken.values()), (), (), taken=taken)


@pytest.mark.slow
@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_is_sound(kinds: dict[str, BookletResult], kind: str) -> None:
    """Nothing overflows or is lost, and pdfua 0.1.3 (a part of the Matterhorn Protocol) finds nothing."""
    assert kinds[kind].problems == ()
    report = Validator().validate(str(kinds[kind].path))
    assert [outcome for outcome in report.outcomes if outcome.findings] == []


@pytest.mark.slow
def test_nothing_in_large_print_is_below_18_points(kinds: dict[str, BookletResult]) -> None:
    """At least 18 points: American Council of the Blind, best practices for large print; APH agrees."""
    read = read_back(kinds[LARGE].path.read_bytes())
    assert min(page.smallest[0] for page in read.pages) >= 17.95


@pytest.mark.slow
@pytest.mark.parametrize(
    ("kind", "width", "height"),
    [("standard", 210, 297), (LARGE, 210, 297), (SHEET, 210, 297), (POCKET, 148, 210)],
)
def test_each_kind_has_its_paper(
    kinds: dict[str, BookletResult], kind: str, width: float, height: float
) -> None:
    """A4 and A5 by ISO 216, in millimetres, to half a millimetre."""
    with pikepdf.open(kinds[kind].path) as pdf:
        box = [float(edge) / POINTS_A_MM for edge in pdf.pages[0].mediabox]
    assert box[2:] == pytest.approx([width, height], abs=0.5)


def test_a_clinic_with_letter_folds_letter() -> None:
    """Half of 11 by 8.5 inches (ANSI Y14.1) is 5.5 by 8.5: two of them fill a sheet."""
    pocket = format_of(POCKET, Paper.LETTER)
    assert (pocket.width / 25.4, pocket.height / 25.4) == pytest.approx((5.5, 8.5))


@pytest.mark.slow
def test_the_sheet_of_a_session_is_one_leaf_with_every_dose(kinds: dict[str, BookletResult]) -> None:
    """It hangs on a door: doses, stop rule and note stand on one side of one leaf."""
    assert kinds[SHEET].pages == 1
    (fact,) = kinds[SHEET].sheets
    text = " ".join(read_back(kinds[SHEET].path.read_bytes()).pages[0].text.split())
    assert fact.required
    assert "Stop if pain" in text


@pytest.mark.slow
def test_a_pocket_booklet_fills_whole_sheets_with_noted_pages(kinds: dict[str, BookletResult]) -> None:
    """Four pages a folded sheet; what is missing are pages to write on, each with the note."""
    assert kinds[POCKET].pages % 4 == 0
    notes = str(job().catalogue.safety.deferral)
    for page in read_back(kinds[POCKET].path.read_bytes()).pages:
        assert "".join(notes.split()) in "".join(page.text.split())


@pytest.mark.slow
def test_the_file_to_fold_keeps_every_page_with_its_note(kinds: dict[str, BookletResult]) -> None:
    """Each side shows two pages whose numbers sum to one more than there are (saddle stitching)."""
    pages, folded = kinds[POCKET].pages, impose(kinds[POCKET].path.read_bytes())
    document = pypdfium2.PdfDocument(folded)
    assert len(document) == pages // 2
    for side in document:
        text = side.get_textpage().get_text_bounded()
        numbers = [int(found) for found in re.findall(rf"Page (\d+) of {pages}", text)]
        assert sum(numbers) == pages + 1
        assert text.count(plain(job().edition)) >= 2


@pytest.mark.slow
def test_letter_paper_loses_nothing_in_any_kind(tmp_path: Path) -> None:
    """Letter is lower than A4, so the narrow page of large print has the least room of all."""
    letter = catalogue(clinic=clinic(paper=Paper.LETTER))
    for kind in (LARGE, POCKET, SHEET):
        assert make_booklet(replace(_job(tmp_path, kind), catalogue=letter)).problems == ()


def test_the_language_that_needs_most_sheets_decides() -> None:
    """The front and the exercises are locked; what follows them may differ."""
    english = _result("en.pdf", {"cover": 1, "phase": 2, "exercise-heel-slide": 1, "diary": 1, "words": 2})
    german = _result("de.pdf", {"cover": 1, "phase": 3, "exercise-heel-slide": 2, "diary": 1, "words": 3})
    assert most_sheets([english, german]) == {"cover": 1, "phase": 3, "exercise-heel-slide": 2}
    assert "words" not in locked(german)


def test_sheets_that_differ_are_an_error_with_its_place() -> None:
    """A clinician would point at the wrong exercise."""
    english, german = _result("en.pdf", {"cover": 1, "phase": 2}), _result("de.pdf", {"cover": 1, "phase": 3})
    ((result, problem),) = unlike([english, german])
    assert result is english
    assert problem.code == "booklet-page-lock"
    assert "phase on 2 instead of 3" in problem.message
    assert list(unlike([german, german])) == []


@pytest.mark.slow
def test_a_language_takes_the_sheets_of_another(kinds: dict[str, BookletResult], tmp_path: Path) -> None:
    """What it does not fill becomes lines to write on, and the booklet stays sound."""
    taken = dict(kinds["standard"].taken)
    wanted = {**locked(kinds["standard"]), "phase": taken["phase"] + 1, "exercise-bridge-both-legs": 2}
    again = make_booklet(with_sheets(_job(tmp_path, "standard"), wanted))
    assert again.problems == ()
    assert locked(again) == wanted

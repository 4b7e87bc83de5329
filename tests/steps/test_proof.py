"""``proof`` shows what a build would publish: every language on the same sheets, and the files to fold."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from generator.pipeline import check_catalogue
from generator.problems import has_errors
from generator.steps.kinds import FOLD, LARGE, POCKET, SHEET, STANDARD, Kinds
from generator.steps.languages import Spoken, speak
from generator.steps.proof import Wanted, proof_sheets
from generator.wording.voice import voice
from tests.booklets.builders import ASSETS, job
from tests.content import catalogue_of, write_content


def in_two_languages(folder: Path) -> tuple[Spoken, Spoken]:
    """Return the small content in English, and in a second language that needs many more words."""
    (spoken,), _ = speak(catalogue_of(), folder)
    pump = spoken.catalogue.exercises["ankle-pump"]
    wordy = {**spoken.catalogue.exercises, "ankle-pump": replace(pump, steps=pump.steps * 7)}
    catalogue = replace(spoken.catalogue, exercises=wordy)
    return spoken, replace(spoken, voice=voice("de"), catalogue=catalogue)


@pytest.mark.parametrize(
    ("wanted", "kinds"),
    [
        (Wanted(), Kinds.USUAL),
        (Wanted(language="de"), Kinds.USUAL),
        (Wanted(kind=SHEET), Kinds.USUAL),
        (Wanted(kind=LARGE, language="en"), Kinds.USUAL),
        (Wanted(kind=FOLD, language="en"), Kinds.USUAL),
        (Wanted(kind=LARGE), Kinds.ALL),
        (Wanted(kind=FOLD, language="de"), Kinds.ALL),
    ],
)
def test_the_smallest_build_that_publishes_it(wanted: Wanted, kinds: Kinds, tmp_path: Path) -> None:
    """Large print and pocket in a translation come with all kinds only, so there all languages have them."""
    assert wanted.kinds(in_two_languages(tmp_path)) is kinds


def test_a_file_to_fold_needs_its_pocket_booklet() -> None:
    """What is folded is printed as a pocket booklet first, in whatever language is asked for."""
    wanted = Wanted(phase=2, kind=FOLD, language="de")
    assert wanted.printed(replace(job(), kind=POCKET))
    assert not wanted.printed(replace(job(), kind=STANDARD))
    assert not replace(wanted, phase=1).printed(replace(job(), kind=POCKET))


def looked_at(spoken: tuple[Spoken, ...], wanted: Wanted, output: Path) -> dict[str, int]:
    """Return the booklets that were shown, with the width of their rows together, in pixels."""
    checked = check_catalogue(write_content(output / "content"))
    made = proof_sheets(spoken, checked.orders, wanted, ASSETS, output)
    assert not has_errors(made.problems)
    shown: dict[str, int] = {}
    for picture in made.pictures:
        booklet = picture.parent.relative_to(output).as_posix()
        with Image.open(picture) as row:
            shown[booklet] = shown.get(booklet, 0) + row.width
    return shown


@pytest.mark.slow
def test_one_language_is_shown_on_the_sheets_it_shares(tmp_path: Path) -> None:
    """An exercise over two sheets in another language leaves a sheet to write on in the one looked at."""
    both, wanted = in_two_languages(tmp_path), Wanted(phase=1, kind=STANDARD, language="en")
    ((name, alone),) = looked_at(both[:1], wanted, tmp_path / "alone").items()
    ((same, locked),) = looked_at(both, wanted, tmp_path / "locked").items()
    assert name == same == "en/booklets/tendon-repair-phase-1"
    assert locked > alone


@pytest.mark.slow
def test_a_file_to_fold_is_shown_by_itself(tmp_path: Path) -> None:
    """Whoever asks for the print file sees its sides, and not the pocket booklet again."""
    shown = looked_at(in_two_languages(tmp_path)[:1], Wanted(phase=1, kind=FOLD), tmp_path / "proof")
    assert list(shown) == ["en/booklets/tendon-repair-phase-1-pocket-fold"]

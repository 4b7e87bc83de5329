"""``booklet`` prints one phase for one patient, and refuses before anything is rendered."""

from __future__ import annotations

from pathlib import Path

import click
import pypdf
import pytest
from click.testing import CliRunner, Result

from generator.cli.booklet import booklet
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from tests.content import FILES, with_change, write_content

PROGRAMME = "programmes/tendon-repair.yml"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """Return the folder of the small content."""
    return write_content(tmp_path / "content")


def run(content: Path, *options: str, programme: str = "tendon-repair", phase: str = "2") -> Result:
    """Return what the command prints and its exit code; the booklet goes beside the content."""
    arguments = [programme, phase, "--content", str(content), *options]
    if "--output" not in options:
        arguments += ["--output", str(content.parent / "booklet.pdf")]
    return CliRunner().invoke(booklet, arguments, catch_exceptions=False, standalone_mode=False)


def files_beside(content: Path) -> list[str]:
    """Return what lies beside the content, the unfinished file of a booklet included."""
    return sorted(path.name for path in content.parent.iterdir() if path != content)


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--surgery-date", "1989-12-31"), "before 1990"),
        (("--surgery-date", "9999-12-31"), "a year ahead"),
        (("--surgery-date", "31.12.2025"), "such as 2028-02-29"),
        (("--delayed",), "add --surgery-date"),
        (("--output", "/nowhere/at/all/booklet.pdf"), "there is no folder '/nowhere/at/all'"),
        (("--output", "/tmp"), "does not end in .pdf"),
        (("--language", "eng"), "no booklet in the language 'eng'; did you mean 'en'?"),
        (("--kind", "huge"), "'huge' is not"),
    ],
)
def test_arguments_that_cannot_be_meant(content: Path, options: tuple[str, ...], says: str) -> None:
    """The command does not start, says what to type, and writes nothing."""
    with pytest.raises(click.UsageError) as raised:
        run(content, *options)
    assert raised.value.exit_code == NOT_STARTED
    assert says in raised.value.format_message()
    assert files_beside(content) == []


@pytest.mark.parametrize(
    ("programme", "phase", "says"),
    [("tendon-repai", "2", "did you mean 'tendon-repair'?"), ("tendon-repair", "3", "has phases 1 to 2")],
)
def test_unknown_programme_or_phase(content: Path, programme: str, phase: str, says: str) -> None:
    """The nearest id, or how many phases there are."""
    with pytest.raises(click.UsageError) as raised:
        run(content, programme=programme, phase=phase)
    assert says in raised.value.format_message()


@pytest.mark.parametrize(
    ("options", "code"),
    [
        (("--side", "north"), "patient-unknown"),
        (("--limit", "hip"), "patient-notation"),
        (("--limit", "ankle.plantarflexion=99"), "patient-wider"),
        (("--dose", "heel-raise=3x12"), "patient-dose"),
        (("--side", "both"), "patient-both-sides"),
        (("--without", "heel-raise"), "patient-empty"),
    ],
)
def test_wishes_that_cannot_be_met(content: Path, options: tuple[str, ...], code: str) -> None:
    """Said with its code and a remedy; the booklet that is there stays as it was."""
    old = content.parent / "booklet.pdf"
    old.write_bytes(b"the old one")
    result = run(content, *options)
    assert result.return_value == NOT_STARTED
    assert f": {code}: " in result.output
    assert old.read_bytes() == b"the old one"
    assert files_beside(content) == ["booklet.pdf"]


def test_a_folder_that_cannot_be_written_to(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Found before anything is read, with the folder's name."""

    def full(**_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("generator.steps.one_patient.tempfile.TemporaryFile", full)
    with pytest.raises(click.UsageError) as raised:
        run(content)
    assert "No space left on device" in raised.value.format_message()


def test_content_with_errors_is_printed_for_nobody(tmp_path: Path) -> None:
    """The checks of the programme come first."""
    files = with_change(FILES, PROGRAMME, "dose-steps: [2 x 8,", "dose-steps: [9 x 8,")
    result = run(write_content(tmp_path / "content", files))
    assert result.return_value == PROBLEMS
    assert "dose-not-permitted" in result.output


def text_of(path: Path) -> str:
    """Return the words of a PDF."""
    return " ".join(" ".join(page.extract_text().split()) for page in pypdf.PdfReader(path).pages)


@pytest.mark.slow
def test_a_booklet_for_one_patient(content: Path) -> None:
    """It says side and days, has the alternative instead, tells the clinician why, and names nobody."""
    surgery = ("--surgery-date", "2024-02-29", "--delayed")
    result = run(content, "--side", "left", "--avoid", "knee", "--limit", "ankle.dorsiflexion=10", *surgery)
    assert result.return_value == DONE
    assert "Out: heel-raise: strains what is to be spared (knee); instead: ankle-pump" in result.output
    assert files_beside(content) == ["booklet.pdf"]
    said = text_of(content.parent / "booklet.pdf")
    for words in (
        "Operated side: left",
        "This phase: not before 25 April 2024.",
        "Date of operation: 29 February 2024",
        "Ankle, pulling the foot up: no further than 10°.",
        "Heel raise with both legs To be spared: Knee. Instead: Ankle pump.",
        "Ankle dorsiflexion: only up to 10°",
    ):
        assert words in said, words
    assert "Operated side: left right" not in said
    assert "may be the other one" not in said
    assert "Your name:" in said


@pytest.mark.slow
def test_the_edition_tells_booklets_apart(content: Path) -> None:
    """Each wish that changes the sheets changes the code; the same wishes give the same bytes."""
    made: dict[str, bytes] = {}
    for wishes in ((), ("--side", "right"), ("--dose", "heel-raise=3x8"), ("--side", "right")):
        result = run(content, *wishes)
        code = result.output.split("edition ")[1].split()[0]
        pdf = (content.parent / "booklet.pdf").read_bytes()
        assert code in text_of(content.parent / "booklet.pdf")
        assert made.setdefault(code, pdf) == pdf
    assert len(made) == 3


@pytest.mark.slow
def test_a_booklet_that_is_not_right_does_not_replace_the_old(content: Path) -> None:
    """Whatever the examination finds, the file at the path stays and nothing else is left beside it."""
    word = "Donaudampfschifffahrtsgesellschaftskapitänswitwenundwaisenkassenvorstandssitzungsprotokoll"
    write_content(
        content,
        with_change(FILES, "exercises/heel-raise.yml", "name: Heel raise with both legs", f"name: {word}"),
    )
    old = content.parent / "booklet.pdf"
    old.write_bytes(b"the old one")
    result = run(content)
    assert result.return_value == PROBLEMS
    assert "booklet-overflow" in result.output
    assert old.read_bytes() == b"the old one"
    assert files_beside(content) == ["booklet.pdf"]


@pytest.mark.slow
def test_the_sheet_of_a_session_has_no_last_sheet_to_read(content: Path) -> None:
    """It is one sheet with the side, and the command says nothing of a sheet for the clinician."""
    result = run(content, "--kind", "sheet", "--side", "left")
    assert result.return_value == DONE
    assert "booklet.pdf, 1 sheet, edition" in result.output
    assert "last sheet" not in result.output
    assert "Operated side: left" in text_of(content.parent / "booklet.pdf")

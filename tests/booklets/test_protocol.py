"""The finished protocol: sound, two to four sheets, readable, right in Arabic and on Letter."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from pdfua.validator import Validator

from generator.booklets import rules
from generator.booklets.layout import squeezed
from generator.booklets.print_run import make_all
from generator.booklets.protocol import make_protocol
from generator.booklets.protocol_exercises import exercise_groups
from generator.booklets.reading_back import PdfRead, read_back
from generator.booklets.values import BookletResult
from generator.catalogue.terms import Paper
from tests.booklets.protocols import DEMO, Arabic, arabic_voice, demo, job_of, small_job
from tests.content import FILES, with_change

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, BookletResult]:
    """Return the protocols of the demonstration."""
    folder: Path = tmp_path_factory.mktemp("protocols")
    jobs = [job_of(demo(), name, folder / f"{name}.pdf") for name in DEMO]
    return dict(zip(DEMO, make_all(jobs, workers=2), strict=True))


def text_of(result: BookletResult) -> tuple[PdfRead, str]:
    """Return a finished protocol as read back, and its words without blanks."""
    found = read_back(result.path.read_bytes())
    return found, squeezed("".join(page.text for page in found.pages))


@pytest.mark.parametrize("name", DEMO)
def test_a_protocol_takes_two_to_four_sheets_and_has_no_finding(
    made: Mapping[str, BookletResult], name: str
) -> None:
    """Silence is asserted: nothing overflows, nothing is lost, the library does not complain."""
    assert made[name].problems == ()
    assert 2 <= made[name].pages <= 4


@pytest.mark.parametrize("name", DEMO)
def test_every_sheet_bears_notes_number_and_edition(made: Mapping[str, BookletResult], name: str) -> None:
    """Deferral, demonstration line, clinic line, page n of m and edition stand on every sheet."""
    safety, clinic = demo().safety, demo().clinic
    found, _ = text_of(made[name])
    for number, page in enumerate(found.pages, 1):
        words = squeezed(page.text)
        for said in (
            safety.deferral.source,
            safety.demonstration.source,
            clinic.telephone.clinic,
            f"Page {number} of {len(found.pages)}",
            "Edition 7KQ2-M0XP",
        ):
            assert squeezed(said) in words


@pytest.mark.parametrize("name", DEMO)
def test_the_sheets_hold_every_rule_milestone_and_exercise(
    made: Mapping[str, BookletResult], name: str
) -> None:
    """Each restriction's words, each milestone's pass mark, each exercise with its dose steps can be read."""
    _, words = text_of(made[name])
    programme = demo().programmes[name]
    wanted = [rule.words.source for rule in programme.restrictions]
    for phase in programme.phases:
        wanted += [phase.weight_bearing.source, phase.walking_aid.source, phase.pain.set_by]
        wanted += [text for one in phase.milestones for text in (one.passed.source, one.test.source)]
    for group in exercise_groups(job_of(demo(), name)):
        wanted += [f"{row.name}" for row in group.rows]
        wanted += ["".join(row.steps) for row in group.rows]
    assert [said for said in wanted if squeezed(said) not in words] == []


@pytest.mark.parametrize("name", DEMO)
def test_the_file_passes_what_pdfua_checks(made: Mapping[str, BookletResult], name: str) -> None:
    """Checked with pdfua 0.1.3, which covers a part of the Matterhorn Protocol (ISO 14289-1)."""
    report = Validator().validate(str(made[name].path))
    assert [outcome for outcome in report.outcomes if outcome.findings] == []


def test_two_runs_give_the_same_bytes(made: Mapping[str, BookletResult], tmp_path: Path) -> None:
    """What was handed to a surgeon can be made again byte for byte."""
    again = make_protocol(job_of(demo(), "knee-replacement", tmp_path / "again.pdf"))
    assert again.path.read_bytes() == made["knee-replacement"].path.read_bytes()


def test_in_arabic_the_weeks_run_from_the_right(tmp_path: Path) -> None:
    """A right-to-left protocol is sound, and a dose keeps its order from left to right."""
    job = job_of(demo(), "knee-replacement", tmp_path / "ar.pdf", arabic_voice(), Arabic())
    result = make_protocol(job)
    found, _ = text_of(result)
    assert {problem.code for problem in result.problems} <= {rules.LONG_PROTOCOL.code}
    assert found.language == "ar"
    weeks = next(line for line in found.pages[0].lines if "10" in line and "20" in line)
    assert weeks.index("20") < weeks.index("10")
    seen = [line for page in found.pages for line in page.lines]
    assert any("2×10" in line for line in seen)
    assert not any("10×2" in line for line in seen)


def test_on_letter_paper_nothing_is_lost(tmp_path: Path) -> None:
    """Letter is narrower and shorter than A4 on its side: more sheets may be needed, nothing overflows."""
    job = job_of(demo(), "knee-replacement", tmp_path / "letter.pdf")
    clinic = replace(job.catalogue.clinic, paper=Paper.LETTER)
    result = make_protocol(replace(job, catalogue=replace(job.catalogue, clinic=clinic)))
    assert result.problems == ()


def test_a_protocol_that_nobody_reads_at_a_glance_is_named(tmp_path: Path) -> None:
    """More than four sheets is a warning; what stands on them is complete all the same."""
    milestone = "      - goal: You can stand on your toes.\n"
    many = "".join(
        f"      - goal: Goal {number} of many.\n        test: {'Stand on your toes at the worktop. ' * 8}\n"
        "        passed: Ten times.\n        tester: at home\n"
        for number in range(60)
    )
    files = with_change(FILES, "programmes/tendon-repair.yml", milestone, many + milestone)
    result = make_protocol(replace(small_job(files), output=tmp_path / "long.pdf"))
    assert {problem.code for problem in result.problems} == {rules.LONG_PROTOCOL.code}
    assert result.pages > 4

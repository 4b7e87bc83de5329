"""A booklet for one patient is held to the checks of the programme, and is written whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.body.shown import with_angles
from generator.catalogue.one_patient import Wishes
from generator.catalogue.values import Catalogue
from generator.progression.one_patient import narrow
from generator.reading import read_content
from generator.steps.one_patient import phase_problems, why_not_there
from tests.content import FILES, catalogue_of, with_change
from tests.progression.test_one_patient import PHASES, PROJECT, WISHES


@pytest.fixture(scope="module")
def demo() -> Catalogue:
    """Return the demonstration with the angles that its poses show."""
    catalogue = read_content(PROJECT / "content").catalogue
    assert catalogue is not None
    return with_angles(catalogue)


@pytest.mark.slow
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(wishes=WISHES, which=st.sampled_from(PHASES))
def test_what_is_narrowed_passes_the_checks(demo: Catalogue, wishes: Wishes, which: tuple[str, int]) -> None:
    """Whatever is wished, the checks of content find no error in the phase that is left."""
    found = narrow(demo, *which, wishes)
    assert list(phase_problems(found.catalogue, *which)) == []


def test_the_checks_see_the_phase() -> None:
    """A dose that no exercise permits is found in its own phase, and only there."""
    files = with_change(FILES, "programmes/tendon-repair.yml", "dose-steps: [2 x 8,", "dose-steps: [9 x 8,")
    catalogue = catalogue_of(files)
    assert [one.code for one in phase_problems(catalogue, "tendon-repair", 2)] == ["dose-not-permitted"]
    assert list(phase_problems(catalogue, "tendon-repair", 1)) == []


def test_where_a_booklet_can_be_written(tmp_path: Path) -> None:
    """A new file in a folder that is there, or one that is replaced; looking leaves nothing behind."""
    old = tmp_path / "old.pdf"
    old.write_bytes(b"old")
    assert why_not_there(tmp_path / "new.pdf") == ""
    assert why_not_there(old) == ""
    (tmp_path / "folder.pdf").mkdir()
    assert "is a folder" in why_not_there(tmp_path / "folder.pdf")
    assert "does not end in .pdf" in why_not_there(tmp_path / "booklet.doc")
    assert "there is no folder" in why_not_there(tmp_path / "none" / "booklet.pdf")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["folder.pdf", "old.pdf"]

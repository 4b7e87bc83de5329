"""What growth and rebuilding are measured on: copies that are sound, and a change of one sentence alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from click import BadParameter
from click.testing import CliRunner

from generator.cli.measure import Sizes, measure
from generator.pipeline import check_catalogue
from generator.problems import has_errors
from generator.reading import read_content, read_files
from generator.steps.again import other_sentence
from generator.steps.excerpt import content_files, excerpt, write_files
from generator.steps.growth import copied

CONTENT = Path(__file__).parents[2] / "content"


@pytest.mark.slow
def test_copies_of_a_programme_are_a_sound_catalogue(tmp_path: Path) -> None:
    """Three copies have three times the programmes and exercises, and pass the checks."""
    catalogue = read_content(CONTENT).catalogue
    assert catalogue is not None
    small = excerpt(content_files(CONTENT), catalogue)
    one, three = (read_files(files).catalogue for files in (small, copied(small, 3)))
    assert one is not None
    assert three is not None
    assert len(three.programmes) == 3 * len(one.programmes)
    assert len(three.exercises) == 3 * len(one.exercises)
    named = [
        {use.use.endswith("-3") for phase in programme.phases for use in phase.uses}
        for programme in three.programmes.values()
    ]
    assert sorted(map(tuple, named)) == [(False,), (False,), (True,)]
    assert not has_errors(check_catalogue(write_files(copied(small, 3), tmp_path)).problems)


def test_one_sentence_of_one_language_is_changed() -> None:
    """In the last language of the demonstration one sentence ends with another sign."""
    catalogue = read_content(CONTENT).catalogue
    assert catalogue is not None
    files = content_files(CONTENT)
    name, changed = other_sentence(files, catalogue)
    assert name == f"translations/{catalogue.clinic.languages[-1]}.po"
    pairs = zip(files[name].split(b"\n"), changed.split(b"\n"), strict=True)
    ((before, after),) = [(old, new) for old, new in pairs if old != new]
    assert after == before.replace(b".", b"!", 1)


def test_without_a_translation_the_sentence_is_the_editors() -> None:
    """A content in one language has the sentence changed where the editor wrote it."""
    catalogue = read_content(CONTENT).catalogue
    assert catalogue is not None
    files = excerpt(content_files(CONTENT), catalogue)
    alone = read_files(files).catalogue
    assert alone is not None
    name, changed = other_sentence(files, alone)
    assert name.startswith("exercises/")
    assert len(changed) == len(files[name])
    assert changed != files[name]


@pytest.mark.parametrize("wrong", ["", "1,", "3,1", "0,5", "a", "1;2", "2,2", "-1"])
def test_sizes_that_do_not_rise_are_refused(wrong: str) -> None:
    """The message shows what was typed and how to write it."""
    with pytest.raises(BadParameter, match="write for example 1,10,50"):
        Sizes().convert(wrong, None, None)
    assert Sizes().convert("1,10,50", None, None) == (1, 10, 50)


def test_where_no_sentence_can_be_changed_the_reason_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """The command ends with a sentence and without a traceback; nothing is built for it."""
    monkeypatch.setattr("generator.cli.trials.content_files", lambda _: {})
    done = CliRunner().invoke(measure, ["--again", "--content", str(CONTENT)])
    assert done.exit_code == 1
    assert done.output == "Error: nothing was measured: no exercise has what it is good for on one line\n"

"""Spoilt content ends in findings with place and remedy, or in a catalogue; never in an error of Python."""

from __future__ import annotations

import time
from functools import lru_cache
from pathlib import Path

import pytest

from generator import reading
from generator.problems import Place, Rule
from generator.reading import content as reader
from generator.reading.findings import Findings
from generator.steps import fuzzing
from generator.steps.excerpt import content_files, excerpt
from generator.steps.fuzzing import End, Ground, counts, ground_of
from generator.steps.mutations import mutant
from generator.steps.rebuilt import rebuild
from generator.steps.reread import differences
from tests.content import FILES

PROJECT = Path(__file__).parents[2]
# A usual dose of one exercise, a word of another, a safety text, and a dose step of the programme.
FOUR = (18, 97, 209, 2844)
SMALL = {name: text.encode() for name, text in FILES.items()}


@lru_cache(maxsize=1)
def small() -> Ground:
    """Return the small content as ground."""
    return ground_of(SMALL)


def judged(ground: Ground, seeds: range) -> dict[str, float]:
    """Return the counts of some seeds, which show no fault."""
    verdicts = [ground.judge(seed) for seed in seeds]
    assert [f"{one.seed}: {one.done}: {one.failure}" for one in verdicts if one.failure] == []
    return counts(verdicts)


@pytest.mark.slow
def test_the_small_content_spoilt_280_times() -> None:
    """Whatever is done to a file, each finding has a place in it and a remedy; only some still pass."""
    found = judged(small(), range(280))
    assert found["spoilt files"] == 280
    assert found[End.READING.value] > 100
    assert found[End.PASSED.value] > 10


@pytest.mark.slow
def test_the_demonstration_spoilt_20_times() -> None:
    """The same for the shortest programme of the demonstration, with a file of translations."""
    files = content_files(PROJECT / "content")
    catalogue = reading.read_content(PROJECT / "content").catalogue
    assert catalogue is not None
    entries = files["translations/de.po"].split(b"\n\n")[:60]
    ground = ground_of({**excerpt(files, catalogue), "translations/de.po": b"\n\n".join(entries) + b"\n"})
    assert judged(ground, range(1000, 1020))["spoilt files"] == 20


@pytest.mark.slow
def test_what_passes_is_published_with_its_safety_texts_and_its_own_doses(tmp_path: Path) -> None:
    """Four spoilt files in one build: read back, page and paper say what the catalogue says and no more.

    A dose that is turned round, a count and a note that are lost after the build are noticed.
    """
    built = rebuild(SMALL, FOUR, PROJECT, PROJECT / ".phasebook", tmp_path)
    assert (built.published, built.failure) == (True, "")
    assert len({one.partition(":")[0] for one in built.done.split("; ")}) == len(FOUR)
    site, catalogue = tmp_path / "site", reading.read_content(tmp_path / "content").catalogue
    assert catalogue is not None
    for name, old, new, told in (
        ("exercises/heel-raise.html", "3\u00a0×\u00a06", "6 × 3", "the dose 6×3 is not in the catalogue"),
        ("exercises/heel-raise.html", "3\u00a0×\u00a06", "3 x 16", "the dose 3×16 is not in the catalogue"),
        ("exercises/heel-raise.html", "3\u00a0×\u00a06", "3 times", "the dose 3×6 is missing"),
        ("glossary.html", "Demonstration, not for", "For", "the text 'Demonstration, not for treatment.' is"),
    ):
        page = site / "en" / name
        sound = page.read_text(encoding="utf-8")
        page.write_text(sound.replace(old, new), encoding="utf-8")
        assert any(told in one for one in differences(site, catalogue)), told
        page.write_text(sound, encoding="utf-8")
    assert list(differences(site, catalogue)) == []


def test_a_seed_gives_the_same_mutant_anywhere() -> None:
    """What a run has found can be found again by its seed; different seeds spoil different files."""
    backwards = dict(sorted(SMALL.items(), reverse=True))
    assert [mutant(seed, SMALL) for seed in range(40)] == [mutant(seed, backwards) for seed in range(40)]
    assert {mutant(seed, SMALL).name for seed in range(100)} == set(SMALL)
    changed = sum(mutant(seed, SMALL).data != SMALL[mutant(seed, SMALL).name] for seed in range(100))
    assert changed > 90


def _silent(_: str, __: Place, findings: Findings) -> str:
    findings.problems.append(Rule("bad-id", "x", "y", "z").at(Place("other.yml", 3, 1), "no such file"))
    return "x"


def _mute(_: str, place: Place, findings: Findings) -> str:
    findings.problems.append(Rule("bad-id", "x", "y", " ").at(place, "what now?"))
    return "x"


def _raise(*_: object) -> str:
    raise KeyError("knee")


def _sleep(*_: object) -> str:
    started = time.process_time()
    while time.process_time() < started + 5:
        pass
    return "x"


@pytest.mark.parametrize(
    ("fault", "says"),
    [(_silent, "no such place"), (_mute, "without message"), (_raise, "KeyError"), (_sleep, "more than 0.5")],
)
def test_a_fault_of_the_program_is_found(monkeypatch: pytest.MonkeyPatch, fault: object, says: str) -> None:
    """A reader that points nowhere, gives no remedy, raises, or runs for ever is accused, with the seed."""
    monkeypatch.setattr(fuzzing, "MOST_SECONDS", 0.5)
    ground = small()
    monkeypatch.setattr(reader, "check_id", fault)
    verdict = ground.judge(0)
    assert says in verdict.failure
    assert verdict.seed == 0

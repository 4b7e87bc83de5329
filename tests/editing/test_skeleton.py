"""A new file can be read and checked before an editor has written a word, and shows all that can be said."""

from __future__ import annotations

import re

import pytest

from generator.catalogue.dose import DoseStep
from generator.editing import new_file
from generator.editing.examples import usual_step
from generator.problems import Severity
from generator.reading.content import FOLDERS
from generator.reading.doses import parse_step
from tests.content import FILES, catalogue_of, findings_of, read, with_change

CATALOGUE = catalogue_of()
WITH_DAILY_LIFE = {**FILES, "daily-life/some-item.yml": new_file("daily-life", CATALOGUE)}
RAISE = "exercises/heel-raise.yml"


@pytest.mark.parametrize("folder", FOLDERS)
def test_a_new_file_has_no_errors(folder: str) -> None:
    """Beside the content that is there, a new file is found to lack nothing but its words and a phase."""
    files = {**FILES, f"{folder}/new-one.yml": new_file(folder, CATALOGUE)}
    found = {(one.code, one.severity) for one in findings_of(files)}
    assert found - {("in-no-phase", Severity.NOTE)} == {("text-not-written", Severity.WARNING)}


@pytest.mark.parametrize("folder", FOLDERS)
def test_every_commented_key_can_be_made_live(folder: str) -> None:
    """Taking the mark away before a key, and before the lines under it, gives a file that can be read."""
    text = new_file(folder, catalogue_of(WITH_DAILY_LIFE))
    lines = text.split("\n")
    tried = 0
    for at, line in enumerate(lines):
        key = re.fullmatch(r"( *)# (?!yaml-language-server)([a-z-]+):.*", line)
        if not key or (at and lines[at - 1].strip() == "# for example:"):
            continue
        tried += 1
        live = [*lines[:at], line.replace("# ", "", 1)]
        rest = iter(lines[at + 1 :])
        for following in rest:
            if not following.startswith(f"{key[1]}#   "):
                live += [following, *rest]
                break
            live.append(following.replace("# ", "", 1))
        found = read({**WITH_DAILY_LIFE, f"{folder}/new-one.yml": "\n".join(live)}).problems
        assert found == (), key[2]
    assert tried > 3


def test_every_example_of_an_empty_list_can_be_read() -> None:
    """The entry that is shown under an empty list can stand in it."""
    text = new_file("programmes", CATALOGUE)
    shown = re.search(r"restrictions: \[\]\n# for example:\n((?:# .*\n)+)", text)
    assert shown is not None
    live = re.sub("^# ", "", shown[1], flags=re.MULTILINE)
    files = {**FILES, "programmes/new-one.yml": text.replace(shown[0], live)}
    reading = read(files)
    assert reading.problems == ()
    assert reading.catalogue is not None
    assert len(reading.catalogue.programmes["new-one"].restrictions) == 1


@pytest.mark.parametrize("folder", FOLDERS)
def test_every_key_is_shown_with_its_meaning(folder: str) -> None:
    """Each key of the field reference stands in the file, live or commented out, with its help above it."""
    lines = [line.strip() for line in new_file(folder, CATALOGUE).split("\n")]
    for item in FOLDERS[folder].fields:
        at = next(n for n, line in enumerate(lines) if line.removeprefix("# ").startswith(f"{item.key}:"))
        first = at
        while lines[first - 1].startswith("# "):
            first -= 1
        above = " ".join(line.removeprefix("# ").strip() for line in lines[first:at])
        assert above.startswith(item.help)


@pytest.mark.parametrize("folder", FOLDERS)
def test_a_new_file_claims_no_source(folder: str) -> None:
    """No example says that a source was read."""
    live = [line for line in new_file(folder, CATALOGUE).split("\n") if not line.strip().startswith("#")]
    assert not any("read in source" in line for line in live)


def test_a_programme_uses_what_there_is() -> None:
    """The example use is an exercise of the catalogue, with its own usual dose."""
    text = new_file("programmes", CATALOGUE)
    assert "- use: ankle-pump\n" in text
    assert "dose-steps: [10 times an hour]\n" in text


@pytest.mark.parametrize(
    ("dose", "expected"),
    [
        ("  kind: holds\n  sets: 2\n  holds: 5\n  hold: 10 s\n", "2 x 5 holds of 10 s"),
        ("  kind: holds\n  sets: 1\n  holds: 5\n  hold: 10 s\n", "5 holds of 10 s"),
        ("  kind: minutes\n  minutes: 12\n", "12 min"),
        ("  kind: steps walked\n  steps: 900\n", "900 steps"),
        ("  kind: sets and repetitions\n  sets: 3\n  repetitions: 8\n", "3 x 8"),
        ("  kind: times an hour\n  times: 9\n", "9 times an hour"),
    ],
)
def test_a_usual_dose_is_written_as_it_is_read(dose: str, expected: str) -> None:
    """The notation made from a dose is the one that the reader turns back into it."""
    before = FILES["exercises/ankle-pump.yml"].partition("dose:\n")[0]
    reading = read({**FILES, "exercises/ankle-pump.yml": f"{before}dose:\n{dose}"})
    assert reading.catalogue is not None
    permitted = reading.catalogue.exercises["ankle-pump"].dose
    assert usual_step(permitted) == expected
    hold = permitted.hold.usual if permitted.hold else None
    assert parse_step(expected) == DoseStep(permitted.kind, permitted.sets.usual, permitted.count.usual, hold)


def test_a_catalogue_without_strains_can_have_a_new_exercise() -> None:
    """Where nothing of a kind exists yet the example names none, so nothing refers to nowhere."""
    files = with_change({**FILES, "precautions.yml": "{}\n"}, RAISE, "strains: [knee]", "strains: []")
    files["exercises/new-one.yml"] = new_file("exercises", catalogue_of(files))
    assert {found.code for found in findings_of(files)} == {"text-not-written", "in-no-phase"}

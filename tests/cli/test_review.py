"""A reviewer signs what was read, all or nothing; the status says what is still worth something."""

from __future__ import annotations

import datetime
import json
from pathlib import Path
from typing import Any

import pytest
from babel.messages.pofile import read_po, write_po
from click.testing import CliRunner, Result

from generator.cli import commands
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from generator.pipeline import check_catalogue
from generator.steps.languages import speak
from tests.content import CLINIC, write_content

RAISE = "exercise/heel-raise"


def run(content: Path, *words: str) -> Result:
    """Return what a command prints and its exit code."""
    return CliRunner().invoke(
        commands, [*words, "--content", str(content)], catch_exceptions=False, standalone_mode=False
    )


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """Return the small content, of which nothing is signed."""
    return write_content(tmp_path / "content")


def sign(content: Path, *words: str) -> Result:
    """Sign as a physiotherapist on a given day."""
    return run(content, "review", "sign", *words, "--role", "physiotherapist", "--date", "2026-03-02")


def states(content: Path, *words: str) -> dict[tuple[str, str], str]:
    """Return how each item stands in each scope (with its language)."""
    printed = run(content, "review", "status", "--format", "json", *words).output
    found: list[dict[str, Any]] = json.loads(printed)["items"]
    return {(one["item"], f"{one['scope']} {one['language'] or ''}".strip()): one["state"] for one in found}


def edit(content: Path, name: str, old: str, new: str) -> None:
    """Change a file as an editor would."""
    path = content / name
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), encoding="utf-8", newline="\n")


def translated(content: Path, **instead: str) -> None:
    """Let German be complete: every text says "nicht" and itself, but those given otherwise."""
    assert run(content, "new", "language", "de").return_value == DONE
    path = content / "translations" / "de.po"
    with path.open("rb") as file:
        catalogue = read_po(file)
    for message in catalogue:
        if isinstance(message.id, str) and message.id:
            message.string = instead.get(message.id, f"nicht {message.id}")
    with path.open("wb") as file:
        write_po(file, catalogue, width=0)


def test_a_signature_ends_with_the_sentence_and_returns_with_it(content: Path) -> None:
    """Signed, changed since, and signed again when the sentence is as it was; nothing else is touched."""
    assert sign(content, RAISE, "use/*/heel-raise", "--next", "2028-11").return_value == DONE
    before = states(content)
    assert before[RAISE, "content"] == before["use/tendon-repair/2/heel-raise", "content"] == "signed"
    assert before[RAISE, "evidence"] == before["exercise/ankle-pump", "content"] == "never"
    edit(content, "exercises/heel-raise.yml", "Lower slowly.", "Sink slowly.")
    assert {key for key, state in states(content).items() if state != before[key]} == {(RAISE, "content")}
    assert states(content)[RAISE, "content"] == "changed since"
    edit(content, "exercises/heel-raise.yml", "Sink slowly.", "Lower slowly.")
    assert states(content) == before


def test_the_ledger_grows_at_its_end_and_keeps_what_a_person_wrote(content: Path) -> None:
    """Comments and earlier sign-offs stay byte for byte; what was given stands in one line."""
    sign(content, RAISE)
    path = content / "reviews.yml"
    before = path.read_text(encoding="utf-8") + "# A note by hand.\n"
    path.write_text(before, encoding="utf-8")
    words = ("--document", "SOP-12", "--initials", "AB", "--next", "2028-11")
    assert sign(content, "safety", *words).return_value == DONE
    text = path.read_text(encoding="utf-8")
    (line,) = set(text.splitlines()) - set(before.splitlines())
    assert text.replace(f"{line}\n", "") == before
    for part in (
        "item: safety",
        "date: 2026-03-02",
        "document: SOP-12",
        "initials: AB",
        "next-review: 2028-11",
    ):
        assert part in line
    assert run(content, "check").return_value == DONE


def test_a_review_is_due_from_its_month_on(content: Path) -> None:
    """In the month that was planned, and ever after, it is due; before that it is not."""
    today = datetime.date.today()
    soon, later = f"{today:%Y-%m}", f"{today.year + 1}-{today:%m}"
    sign(content, RAISE, "--next", soon)
    sign(content, "safety", "--next", later)
    found = states(content)
    assert (found[RAISE, "content"], found["safety", "content"]) == ("due", "signed")
    assert (RAISE, "content") in states(content, "--open")
    assert ("safety", "content") not in states(content, "--open")


def test_a_later_sign_off_of_the_same_role_counts(content: Path) -> None:
    """Who reads again in time is no longer due."""
    sign(content, RAISE, "--next", "2026-03")
    assert states(content)[RAISE, "content"] == "due"
    words = ("--role", "physiotherapist", "--date", "2026-03-03", "--next", "2126-01")
    assert run(content, "review", "sign", RAISE, *words).return_value == DONE
    assert states(content)[RAISE, "content"] == "signed"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("exercise/heel-rise",), "did you mean 'exercise/heel-raise'?"),
        ((RAISE, "exercise/nothing-*"), "there is no such item"),
        (("exercise/ankle-pump", "--scope", "evidence"), "it has nothing to sign as evidence"),
        ((RAISE, "--scope", "language"), "a translation is signed, but not which"),
        ((RAISE, "--scope", "content", "--language", "de"), "only a translation has one"),
        ((RAISE, "--language", "en"), "no language that the clinic translates into"),
        ((RAISE, "--next", "2026-02"), "the next review lies before this one"),
    ],
)
def test_what_cannot_be_signed_is_told_and_nothing_is_written(
    content: Path, words: tuple[str, ...], said: str
) -> None:
    """One wrong name spoils all: no ledger appears, and the message says what to do."""
    result = sign(content, *words)
    assert result.return_value == PROBLEMS
    assert said in result.output
    assert "Nothing was signed." in result.output
    assert not (content / "reviews.yml").exists()


@pytest.mark.parametrize(
    ("option", "value", "said"),
    [
        ("--next", "11/2028", "is no month"),
        ("--date", "2999-01-01", "has not come yet"),
        ("--document", "a{b", "cannot be written"),
        ("--initials", "A. B.", "cannot be written"),
    ],
)
def test_options_are_refused_before_anything_is_read(
    content: Path, option: str, value: str, said: str
) -> None:
    """What the ledger could not hold, or nobody can have done, is a wrong argument (2)."""
    words = ["review", "sign", RAISE, "--role", "surgeon", option, value, "--content", str(content)]
    result = CliRunner().invoke(commands, words)
    assert result.exit_code == NOT_STARTED
    assert said in result.output


def test_an_item_with_errors_is_not_signed(content: Path) -> None:
    """Neither one that cannot be read nor one that a check refuses; others can be."""
    edit(content, "exercises/heel-raise.yml", "role: strength", "role: strenth")
    edit(content, "safety.yml", "id: sudden-pop", "id: calf-swelling")
    broken = sign(content, RAISE)
    assert broken.return_value == PROBLEMS
    assert "'exercise/heel-raise' cannot be read" in broken.output
    assert "did you mean 'strength'?" in broken.output
    assert "the id 'calf-swelling' stands twice" in sign(content, "safety").output
    assert sign(content, "exercise/ankle-pump").return_value == DONE


def test_a_ledger_edited_into_nonsense_is_not_added_to(content: Path) -> None:
    """It is told with its place, and stays as it is."""
    sign(content, RAISE)
    edit(content, "reviews.yml", "role: physiotherapist", "role: wizard")
    before = (content / "reviews.yml").read_bytes()
    result = sign(content, "safety")
    assert result.return_value == PROBLEMS
    assert "reviews.yml:5:" in result.output
    assert "'wizard' is not known here" in result.output
    assert (content / "reviews.yml").read_bytes() == before


def test_a_translation_is_signed_by_language_and_counted(content: Path) -> None:
    """A gap refuses it, a complete one is signed; the status of translations counts its texts."""
    translated(content, **{"Lower slowly.": ""})
    result = sign(content, RAISE, "--language", "de")
    assert result.return_value == PROBLEMS
    assert "is not complete in 'de': 'Lower slowly.'" in result.output
    translated(content, **{"Lower slowly.": "Langsam senken."})
    assert sign(content, RAISE, "--language", "de").return_value == DONE
    assert states(content)[RAISE, "language de"] == "signed"
    status = json.loads(run(content, "translate", "status", "de", "--format", "json").output)
    signed = {part["part"]: part["signed"] for part in status["languages"]["de"]}
    assert signed["safety"] == 0
    assert signed["tendon-repair phase 2"] == signed["all"] > 10
    assert signed["generator's words"] is None
    edit(content, "translations/de.po", "Langsam senken.", "Ganz langsam senken.")
    assert states(content)[RAISE, "language de"] == "changed since"
    assert states(content)[RAISE, "content"] == "never"


def test_a_signed_translation_settles_a_doubt_about_a_lost_not(content: Path) -> None:
    """A prohibition without a known word of denial is an error until a reader signs that it is right."""
    translated(content, **{"Do not jump or run.": "Springen und Laufen sind verboten."})
    first = run(content, "check")
    assert first.return_value == PROBLEMS
    assert "negation-lost" in first.output
    assert sign(content, "programme/tendon-repair", "--language", "de").return_value == DONE
    assert "negation-lost" not in run(content, "check").output
    edit(content, "translations/de.po", "Springen und Laufen sind verboten.", "Springen und Laufen.")
    assert "negation-lost" in run(content, "check").output


def test_recalled_numbers_are_listed_with_their_place_until_signed(content: Path) -> None:
    """The status of evidence names what rests on memory; a signature after reading the source ends that."""
    edit(content, "exercises/heel-raise.yml", "read: [mean, sd]", "read: [mean]")
    before = run(content, "review", "status", "--evidence").output
    assert "heel-raise.yml:58:5: exercise/heel-raise: calf, invented-2001: sd 11" in before
    assert sign(content, RAISE, "--scope", "evidence").return_value == DONE
    after = run(content, "review", "status", "--evidence").output
    assert "sd 11" not in after
    assert "signed         exercise/heel-raise" in after


def test_outside_a_demonstration_safety_texts_must_be_signed(content: Path) -> None:
    """Unsigned they stop everything in the language of the content, and hold back a translation."""
    translated(content)
    edit(content, "clinic.yml", "demo: yes", "demo: no")
    first = run(content, "check")
    assert first.return_value == PROBLEMS
    assert "safety-not-signed" in first.output
    sign(content, "safety")
    second = run(content, "check").output
    assert "safety-not-signed" not in second
    assert "its safety texts are not signed; run: review sign safety --language de" in second
    sign(content, "safety", "--language", "de")
    assert "its safety texts are not signed" not in run(content, "check").output
    edit(content, "clinic.yml", 'emergency: "112"', 'emergency: "113"')
    assert "safety-not-signed" in run(content, "check").output


def test_reviewed_only_stops_with_the_list(content: Path) -> None:
    """Every item that is not signed as it is now is named, with the words to sign it; signed, all is well."""
    write_content(content, {"clinic.yml": f"{CLINIC}publish: reviewed-only\n"})
    first = run(content, "check")
    assert first.return_value == PROBLEMS
    assert "'exercise/heel-raise': its evidence is not signed (never)" in first.output
    assert "review sign phase/tendon-repair/2 --scope content --role" in first.output
    sign(content, "*")
    sign(content, "*", "--scope", "evidence")
    assert run(content, "check").return_value == DONE
    edit(content, "exercises/heel-raise.yml", "Lower slowly.", "Sink slowly.")
    (line,) = [line for line in run(content, "check").output.splitlines() if "not-reviewed" in line]
    assert "'exercise/heel-raise': its content is not signed (changed since)" in line


@pytest.mark.slow
def test_a_ledger_of_many_years_is_read_and_added_to(content: Path) -> None:
    """Ten thousand sign-offs, more than any other file may hold of values, are no hindrance."""
    sign(content, RAISE)
    path = content / "reviews.yml"
    head, _, line = path.read_text(encoding="utf-8").rpartition("  - {")
    path.write_text(head + f"  - {{{line}" * 10_000, encoding="utf-8")
    assert sign(content, "safety").return_value == DONE
    found = states(content)
    assert found[RAISE, "content"] == found["safety", "content"] == "signed"


def test_a_build_of_what_was_not_read_publishes_nothing(content: Path, tmp_path: Path) -> None:
    """The old site stays; a preview still shows the draft, so that it can be read before it is signed."""
    write_content(content, {"clinic.yml": f"{CLINIC}publish: reviewed-only\n"})
    output = tmp_path / "site"
    result = run(content, "build", "--output", str(output))
    assert result.return_value == PROBLEMS
    assert "'safety': its content is not signed (never)" in result.output
    assert "Not published" in result.output
    assert not output.exists()
    checked = check_catalogue(content).catalogue
    assert checked is not None
    assert speak(checked, content)[0] == ()
    assert [one.voice.code for one in speak(checked, content, unsigned=True)[0]] == ["en"]

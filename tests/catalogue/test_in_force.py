"""Restrictions hold until week and phase are reached, and of two limits of weight the stricter speaks.

The rules are the trade's, common practice with no source; the content is that of `tests.content`.
"""

from __future__ import annotations

import pytest

from generator.catalogue.in_force import in_force, outlasts
from generator.catalogue.programme import Programme
from tests.content import FILES, catalogue_of, with_change

FILE = "programmes/tendon-repair.yml"
USUAL = "{week: 6, delayed-week: 8, phase: 2}"


def programme(until: str = USUAL, more: str = "") -> Programme:
    """Return the small programme with another end of its first restriction, and more restrictions."""
    files = with_change(FILES, FILE, USUAL, until)
    files = with_change(files, FILE, "\nphases:\n", f"\n{more}phases:\n")
    return catalogue_of(files).programmes["tendon-repair"]


def weight(id_: str, allows: str, until: str) -> str:
    """Return a limit of weight as an editor types it."""
    return (
        f"  - {{kind: weight-bearing, id: {id_}, leg: operated, allows: {allows}, words: Words.,\n"
        f"     why: It heals., until: {until}, source: {{text: Invented for tests, status: invented}}}}\n"
    )


def named(one: Programme, phase: int) -> list[str]:
    """Return the ids of what is in force in a phase."""
    return [rule.id for rule in in_force(one, one.phase(phase))]


@pytest.mark.parametrize(
    ("until", "holds", "lasts"),
    [
        # Phase 2 runs from week 6 to the end, on the delayed track from week 8.
        ("{week: 6, delayed-week: 8, phase: 2}", False, True),
        ("{week: 7, delayed-week: 8, phase: 2}", True, True),
        ("{week: 6, delayed-week: 9, phase: 2}", True, True),
        ("{week: 4, delayed-week: 5, phase: 2}", False, True),
        ("{week: 4, delayed-week: 5, phase: 1}", False, False),
        ("{week: 4, delayed-week: 5, release: your surgeon}", True, False),
    ],
)
def test_a_restriction_ends_with_week_and_phase_or_by_a_person(until: str, holds: bool, lasts: bool) -> None:
    """holds: in phase 2; lasts: through the whole of phase 1."""
    one = programme(until)
    assert ("no-stretch" in named(one, 2)) is holds
    assert outlasts(one.restrictions[0], one, one.phase(1)) is lasts


def test_the_last_phase_has_no_end_to_outlast() -> None:
    """What holds there has an end of its own, which the reader must be told."""
    one = programme()
    assert not outlasts(one.restrictions[1], one, one.phase(2))


def test_of_two_limits_of_weight_the_stricter_speaks_while_it_holds_throughout() -> None:
    """When it ends within the phase, both are said: the looser takes over there."""
    loose = weight("half", "partial", "{week: 9, delayed-week: 12, phase: 2}")
    throughout = weight("touch", "touch", "{week: 6, delayed-week: 8, phase: 2}") + loose
    within = weight("touch", "touch", "{week: 3, delayed-week: 3, phase: 1}") + loose
    assert [id_ for id_ in named(programme(more=throughout), 1) if id_ in ("touch", "half")] == ["touch"]
    assert [id_ for id_ in named(programme(more=throughout), 2) if id_ in ("touch", "half")] == ["half"]
    assert [id_ for id_ in named(programme(more=within), 1) if id_ in ("touch", "half")] == ["touch", "half"]

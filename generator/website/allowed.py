"""Shows what is allowed when: for patients phase by phase in words, for clinicians week by week."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.arranged import Hold, RestrictionCell, RestrictionRow, Window
from generator.catalogue.base import Text
from generator.catalogue.programme import Programme
from generator.catalogue.restricted import Track
from generator.website.values import SiteInput
from generator.wording.phrases import number
from generator.wording.phrases import phase as phase_words
from generator.wording.terms import term
from generator.wording.voice import Voice
from generator.wording.weeks import until_week

DAYS = 7


@dataclass(frozen=True)
class Cell:
    """How a restriction stands in one column: its kind for the look, and the same in words."""

    kind: str
    text: str


@dataclass(frozen=True)
class PatientRow:
    """A restriction as said to the patient, who lifts it (or nothing), and one cell for each phase."""

    words: Text
    release: Text | None
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class PatientTable:
    """What is allowed when, in words: the phases, and a row for each restriction."""

    phases: tuple[str, ...]
    rows: tuple[PatientRow, ...]


@dataclass(frozen=True)
class WeekRow:
    """A restriction through the weeks of one track."""

    id: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class WeekTable:
    """Weeks × restrictions on one track; a column runs from one week in which something ends to the next."""

    track: str
    weeks: tuple[str, ...]
    rows: tuple[WeekRow, ...]


def patient_table(site: SiteInput, programme: Programme) -> PatientTable | None:
    """Return what is allowed in each phase; None where it was not worked out."""
    known = {row.id: row for row in site.tables.get(programme.id, ())}
    if not known:
        return None
    windows = site.orders[programme.id].windows
    rows = tuple(
        PatientRow(
            rule.words,
            rule.until.release,
            tuple(_cell(site.voice, cell, windows[cell.phase - 1]) for cell in known[rule.id].cells),
        )
        for rule in programme.restrictions
    )
    return PatientTable(tuple(phase_words(site.voice, one.number) for one in programme.phases), rows)


def _cell(voice: Voice, cell: RestrictionCell, window: Window) -> Cell:
    usual = _on_track(voice, cell.hold, cell.until, window.start)
    delayed = _on_track(voice, cell.hold, cell.delayed_until, window.delayed_start)
    if usual == delayed:
        return Cell(cell.hold.value, voice.opening(usual))
    words = voice.gettext("{weeks}; if your start was delayed: {delayed}")
    return Cell(cell.hold.value, voice.opening(words.format(weeks=usual, delayed=delayed)))


def _on_track(voice: Voice, hold: Hold, until: int | None, start: int) -> str:
    if until is not None and until > start:
        words = voice.pgettext("a rule", "holds {until}")
        return words.format(until=until_week(voice, until))
    return _stands(voice, hold if until is None else Hold.LIFTED)


def _stands(voice: Voice, hold: Hold) -> str:
    """Return how a rule stands; the rule itself says what is forbidden and what is allowed up to where."""
    if hold is Hold.LIFTED:
        return voice.pgettext("a rule", "no longer holds")
    return voice.pgettext("a rule", "holds")


def week_tables(site: SiteInput, programme: Programme) -> tuple[WeekTable, ...]:
    """Return the table of weeks and restrictions on both tracks; none where it was not worked out."""
    rows = site.tables.get(programme.id, ())
    if not rows:
        return ()
    windows = site.orders[programme.id].windows
    return (
        _week_table(site.voice, Track.USUAL, rows, [window.start for window in windows]),
        _week_table(site.voice, Track.DELAYED, rows, [window.delayed_start for window in windows]),
    )


def _week_table(voice: Voice, track: Track, rows: tuple[RestrictionRow, ...], starts: list[int]) -> WeekTable:
    ends = {row.id: (row.end_day if track is Track.USUAL else row.delayed_end_day) // DAYS for row in rows}
    bounds = sorted({0, *starts, *ends.values()})
    return WeekTable(
        voice.opening(term(voice, track)),
        tuple(_weeks(voice, bounds, at) for at in range(len(bounds))),
        tuple(
            WeekRow(row.id, tuple(_in_week(voice, row, week >= ends[row.id]) for week in bounds))
            for row in rows
        ),
    )


def _weeks(voice: Voice, bounds: list[int], at: int) -> str:
    start = number(voice, bounds[at])
    if at + 1 == len(bounds):
        return voice.pgettext("head of a column", "from {week}").format(week=start)
    words = voice.pgettext("head of a column", "{start} to {end}")
    return words.format(start=start, end=number(voice, bounds[at + 1]))


def _in_week(voice: Voice, row: RestrictionRow, over: bool) -> Cell:
    """Return how a restriction stands; over: its week and phase are reached, which no release replaces."""
    hold = next((cell.hold for cell in row.cells if cell.hold is not Hold.LIFTED), Hold.LIFTED)
    if over and not row.by_release:
        hold = Hold.LIFTED
    if over and row.by_release:
        return Cell(hold.value, voice.pgettext("a rule", "until released"))
    ended = voice.pgettext("a rule", "ended")
    return Cell(hold.value, ended if hold is Hold.LIFTED else voice.pgettext("a rule", "holds"))

"""Draws "what is allowed when" as rows of bars over weeks, so that one look down a week's line answers.

Restrictions on weight stand first, the others in the order in which they end: below the stairs that this
makes, nothing is allowed yet.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.booklets.protocol_values import ProtocolJob
from generator.catalogue.arranged import RestrictionRow, Window
from generator.catalogue.programme import (
    LoadRestriction,
    MovementRestriction,
    PositionRestriction,
    Restriction,
    WeightRestriction,
)
from generator.catalogue.restricted import Track
from generator.catalogue.terms import Leg
from generator.wording.phrases import list_of, number, parts_of
from generator.wording.restrictions import allowed, concerned
from generator.wording.terms import clinical_term, term
from generator.wording.voice import Voice

_DAYS_IN_A_WEEK = 7
# So few rows may be set larger.
_FEW_ROWS = 11
# Weeks drawn after the last end, so that its bar is seen to stop.
_AIR = 2
# Labels of weeks need this many millimetres, bars this many to hold words.
_LABEL_MM = 5.0
_WORDS_MM = 26.0
# A letter of a lane takes at most so much, and its cell loses so much to line and padding.
_LETTER_MM = 2.2
_LANE_AIR_MM = 2.5

Drawn = tuple[Restriction, RestrictionRow]
"""A restriction with when it holds."""


@dataclass(frozen=True)
class Segment:
    """A stretch of a row.

    kind: ``forbidden``, ``limited``, ``later`` (only on the delayed track), ``free``, ``here`` (a phase).
    weeks: its length. words: what it says; end: the week at its end.
    """

    kind: str
    weeks: int
    words: str = ""
    end: str = ""


@dataclass(frozen=True)
class ChartRow:
    """A restriction: its number in the protocol, what it concerns, and its bars."""

    number: str
    rule: Restriction
    what: str
    weight: bool
    segments: tuple[Segment, ...]


@dataclass(frozen=True)
class Lane:
    """Something that goes from phase to phase, such as the phases of one track."""

    name: str
    segments: tuple[Segment, ...]


@dataclass(frozen=True)
class Chart:
    """All rows over the same weeks. week_mm: width of a week. ticks: labels of weeks; starts: of phases."""

    weeks: int
    week_mm: float
    ticks: tuple[Segment, ...]
    starts: tuple[int, ...]
    lanes: tuple[Lane, ...]
    rows: tuple[ChartRow, ...]

    @property
    def roomy(self) -> bool:
        """Return whether there is room for larger rows."""
        return len(self.rows) <= _FEW_ROWS


def chart_of(job: ProtocolJob, width_mm: float) -> Chart:
    """Return the chart of a programme, drawn over `width_mm` millimetres."""
    windows, drawn = job.order.windows, in_chart_order(job)
    weeks = _last(job.table, windows) + _AIR
    week_mm = width_mm / weeks
    return Chart(
        weeks=weeks,
        week_mm=round(week_mm, 3),
        ticks=_ticks(job.voice, weeks, week_mm),
        starts=tuple(window.start for window in windows),
        lanes=_lanes(job, weeks, week_mm),
        rows=tuple(_row(job, drawn, index, weeks, week_mm) for index in range(len(drawn))),
    )


def in_chart_order(job: ProtocolJob) -> list[Drawn]:
    """Return the restrictions with their rows as the protocol numbers them."""
    facts = {row.id: row for row in job.table}
    pairs = [(rule, facts[rule.id]) for rule in job.stages.restrictions]
    return sorted(pairs, key=lambda pair: (not _is_weight(pair[0]), *_ends(pair[1])))


def ends_of(row: RestrictionRow) -> tuple[int, int]:
    """Return the weeks in which a restriction can end, on the usual and the delayed track."""
    return row.end_day // _DAYS_IN_A_WEEK, row.delayed_end_day // _DAYS_IN_A_WEEK


def _ends(row: RestrictionRow) -> tuple[bool, int, int]:
    return (row.by_release, *ends_of(row))


def _is_weight(rule: Restriction) -> bool:
    return isinstance(rule, WeightRestriction)


def _last(table: Iterable[RestrictionRow], windows: Iterable[Window]) -> int:
    """Return the last week in which anything ends or begins."""
    ends = [max(ends_of(row)) for row in table]
    starts = [max(window.start, window.delayed_start) for window in windows]
    return max((*ends, *starts), default=0)


def _ticks(voice: Voice, weeks: int, week_mm: float) -> tuple[Segment, ...]:
    step = next((one for one in (1, 2, 4, 8) if one * week_mm >= _LABEL_MM), 13)
    return tuple(
        Segment("tick", min(step, weeks - start), number(voice, start)) for start in range(0, weeks, step)
    )


def _lanes(job: ProtocolJob, weeks: int, week_mm: float) -> tuple[Lane, ...]:
    """Return the phases of both tracks, once where they agree, and the highest demands where they fit."""
    voice, phases, windows = job.voice, job.stages.phases, job.order.windows
    usual = [window.start for window in windows]
    delayed = [window.delayed_start for window in windows]
    names = [(number(voice, phase.number), str(phase.name)) for phase in phases]
    demands = [("", clinical_term(voice, phase.demand)) for phase in phases]
    lanes = [Lane(voice.opening(term(voice, Track.USUAL)), _stretched(names, usual, weeks, week_mm))]
    if delayed != usual:
        lane = _stretched(names, delayed, weeks, week_mm)
        lanes.append(Lane(voice.opening(term(voice, Track.DELAYED)), lane))
    lane = _stretched(demands, usual, weeks, week_mm)
    if all(segment.words for segment in lane):
        lanes.append(Lane(voice.gettext("Highest demand (usual start)"), lane))
    return tuple(lanes)


def _stretched(
    said: Sequence[tuple[str, str]], starts: Sequence[int], weeks: int, week_mm: float
) -> tuple[Segment, ...]:
    """Return what is said of each phase over its weeks, without words whose longest would not fit."""
    segments = []
    for (mark, words), start, end in zip(said, starts, (*starts[1:], weeks), strict=True):
        longest = max((len(word) for word in words.split()), default=0)
        fits = longest * _LETTER_MM <= (end - start) * week_mm - _LANE_AIR_MM
        if end > start:
            segments.append(Segment("here", end - start, words if fits else "", mark))
    return tuple(segments)


def _row(job: ProtocolJob, drawn: Sequence[Drawn], index: int, weeks: int, week_mm: float) -> ChartRow:
    voice, (rule, facts) = job.voice, drawn[index]
    what, left = voice.opening(concerned(voice, rule)), allowed(voice, rule)
    if left and not facts.by_release and ends_of(facts)[0] * week_mm < _WORDS_MM:
        # The bar is too short to say it.
        what = parts_of(voice, (what, left))
    if facts.by_release:
        segments = _released(voice, rule, facts, weeks)
    else:
        segments = _dated(voice, rule, facts, weeks, week_mm, _after(voice, drawn, index))
    return ChartRow(number(voice, index + 1), rule, what, _is_weight(rule), segments)


def _after(voice: Voice, drawn: Sequence[Drawn], index: int) -> str:
    """Return what follows a bar: ``lifted``, or the rows that still hold for the same movement or load."""
    rule, facts = drawn[index]
    still = [
        place
        for place, (other, later) in enumerate(drawn, 1)
        if place != index + 1 and overlap(rule, other) and _ends(later) > _ends(facts)
    ]
    if not still:
        return voice.gettext("lifted")
    rows = list_of(voice, (number(voice, place) for place in still))
    return voice.gettext("then see {rows}").format(rows=rows)


def overlap(one: Restriction, other: Restriction) -> bool:
    """Return whether two restrictions can forbid the same thing of the same leg."""
    if one.leg is not other.leg and Leg.BOTH not in (one.leg, other.leg):
        return False
    if isinstance(one, MovementRestriction) and isinstance(other, MovementRestriction):
        same = (one.joint, one.movement) == (other.joint, other.movement)
        return same and bool(set(one.how) & set(other.how))
    if isinstance(one, LoadRestriction) and isinstance(other, LoadRestriction):
        return bool(set(one.loads) & set(other.loads))
    if isinstance(one, PositionRestriction) and isinstance(other, PositionRestriction):
        return one.position is other.position
    return _is_weight(one) and _is_weight(other)


def _released(voice: Voice, rule: Restriction, facts: RestrictionRow, weeks: int) -> tuple[Segment, ...]:
    """Return one bar to the end: no week ends it, only a person does."""
    usual, delayed = ends_of(facts)
    words = voice.gettext("{state} until this has happened, and not before week {week} (delayed: {delayed}):")
    said = words.format(
        state=allowed(voice, rule) or voice.gettext("not allowed"),
        week=number(voice, usual),
        delayed=number(voice, delayed),
    )
    kind = "limited" if allowed(voice, rule) else "forbidden"
    return (Segment(kind, weeks, f"{said} {rule.until.release}"),)


def _dated(
    voice: Voice, rule: Restriction, facts: RestrictionRow, weeks: int, week_mm: float, after: str
) -> tuple[Segment, ...]:
    usual, delayed = ends_of(facts)
    left = allowed(voice, rule)
    words = left or voice.gettext("not allowed")
    said = words if usual * week_mm >= _WORDS_MM else ""
    segments = [Segment("limited" if left else "forbidden", usual, said, number(voice, usual))]
    if delayed > usual:
        segments.append(Segment("later", delayed - usual, "", number(voice, delayed)))
    segments.append(Segment("free", weeks - max(usual, delayed), after))
    return tuple(segment for segment in segments if segment.weeks)

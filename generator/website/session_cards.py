"""Lays a session out as cards, one for each exercise, so that it can be worked through on one page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from generator.catalogue.arranged import Day
from generator.catalogue.dose import DoseKind
from generator.catalogue.exercise import Exercise
from generator.catalogue.programme import Phase, Programme, Use
from generator.website.figure_view import FigureView, figure_of
from generator.website.phase_items import Item
from generator.website.session import turn_words
from generator.website.shared import Warned, warned
from generator.website.step_back import Back, step_back_of
from generator.website.values import SiteInput
from generator.wording.doses import DosePhrase, dose, told_apart
from generator.wording.phrases import number
from generator.wording.terms import term


@dataclass(frozen=True)
class Amount:
    """One dose step of a card: in words, as short as it can be told apart, and how many sets to tick."""

    dose: DosePhrase
    short: str
    sets: int


@dataclass(frozen=True)
class Card:
    """An exercise to do: key for what is ticked, place in the session, all dose steps, times a day to tick.

    exercise: in the words of the first dose. why: why it comes here, where that needs saying.
    """

    key: str
    place: str
    item: Item
    exercise: Exercise
    figure: FigureView | None
    amounts: tuple[Amount, ...]
    times: int
    why: str
    cautions: tuple[Warned, ...]
    back: Back | None

    @property
    def most_sets(self) -> int:
        """Return how many sets the largest dose step has."""
        return max(amount.sets for amount in self.amounts)


@dataclass
class Group:
    """What is done in one position of the body, in order; an empty heading: all through the day."""

    where: str
    cards: list[Card] = field(default_factory=list)


def session_groups(
    site: SiteInput, programme: Programme, phase: Phase, items: tuple[Item, ...]
) -> tuple[Group, ...]:
    """Return all exercises of a phase in the order of a session, as on paper; done in passing last."""
    day = site.days.get((programme.id, phase.number))
    by_id = {item.exercise.id: item for item in items}
    passing = {use.use for use in phase.uses if use.dose_steps[0].kind is DoseKind.HOURLY}
    groups: list[Group] = []
    for turn in site.turns.get((programme.id, phase.number), ()):
        where = site.voice.opening(term(site.voice, turn.surface))
        if not groups or groups[-1].where != where:
            groups.append(Group(where))
        place = number(site.voice, 1 + sum(len(group.cards) for group in groups))
        groups[-1].cards.append(_card(site, programme, phase, by_id[turn.exercise], place, day))
    if passing:
        rest = [_card(site, programme, phase, by_id[one], "", day) for one in by_id if one in passing]
        groups.append(Group("", rest))
    return tuple(groups)


def _card(
    site: SiteInput, programme: Programme, phase: Phase, item: Item, place: str, day: Day | None
) -> Card:
    use = next(one for one in phase.uses if one.use == item.exercise.id)
    own = item.variation.cautions if item.variation else ()
    return Card(
        key=use.use,
        place=place,
        item=item,
        exercise=item.exercise,
        figure=figure_of(site, item.exercise, item.variation) or figure_of(site, item.exercise),
        amounts=tuple(_amounts(site, use, item.exercise)),
        times=1 if use.dose_steps[0].kind is DoseKind.HOURLY else use.times_a_day,
        why=turn_words(site, use.use, day),
        cautions=warned(site.voice, (*item.exercise.cautions, *own, *use.cautions)),
        back=step_back_of(site, programme, phase, use),
    )


def _amounts(site: SiteInput, use: Use, exercise: Exercise) -> Iterator[Amount]:
    short = told_apart(site.voice, use.dose_steps, exercise.dose)
    for step, name in zip(use.dose_steps, short, strict=True):
        yield Amount(dose(site.voice, step, exercise.dose), name, step.sets)

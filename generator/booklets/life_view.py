"""Words daily life in a phase, the helper's part, and how high a band is tied."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from generator.booklets.columns import Halves, halves, lines
from generator.booklets.exercise_sheet import ExerciseSheet, need
from generator.booklets.pictures import Series, series
from generator.booklets.safety_view import Warned, warned
from generator.booklets.values import BookletJob
from generator.catalogue.base import Text
from generator.catalogue.clinic import HelperPage
from generator.catalogue.daily_life import DailyLife
from generator.catalogue.exercise import HelperRole
from generator.catalogue.terms import Helper, Landmark
from generator.wording.phrases import list_of, number
from generator.wording.terms import term


@dataclass(frozen=True)
class LifeItem:
    """Something done every day, as it is printed. facts: things needed, and whether a helper is near."""

    item: DailyLife
    facts: tuple[str, ...]
    cautions: tuple[Warned, ...]
    pictures: Series | None

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find: steps, what to avoid, every warning."""
        said = (str(text) for text in (*self.item.steps, *self.item.avoid))
        cautions = (text for one in self.cautions for text in one.texts)
        return (*said, *cautions)


@dataclass(frozen=True)
class Helped:
    """Where a second person helps: in what, what to do and not to do.

    needed: said where it must not be done alone.
    """

    name: Text
    needed: str
    role: HelperRole


@dataclass(frozen=True)
class HelperSheet:
    """All that a helper needs on one sheet. advice: None where the clinic wrote none."""

    advice: HelperPage | None
    where: Halves[Helped]

    @property
    def required(self) -> tuple[str, ...]:
        """Return what the audit must find: everything that a helper must not do."""
        never = self.advice.must_not if self.advice else ()
        return tuple(str(text) for text in (*never, *(one.role.must_not for one in self.where.all)))


@dataclass(frozen=True)
class Anchor:
    """How high a band is tied: for which exercises, the landmark in words, centimetres by body height."""

    exercises: str
    words: str
    heights: tuple[str, ...]


@dataclass(frozen=True)
class Anchors:
    """The heights of all bands of a phase, under one row of body heights."""

    statures: tuple[str, ...]
    anchors: tuple[Anchor, ...]


def life_items(job: BookletJob) -> tuple[LifeItem, ...]:
    """Return the daily life of the phase in the order of its list."""
    return tuple(_life(job, job.catalogue.daily_life[id_]) for id_ in job.stage.daily_life)


def _life(job: BookletJob, item: DailyLife) -> LifeItem:
    voice = job.voice
    near = {
        Helper.NONE: (),
        Helper.NEARBY: (voice.gettext("Have your helper near at first."),),
        Helper.NEEDED: (voice.gettext("Do it only with your helper."),),
    }[item.helper]
    return LifeItem(
        item=item,
        facts=(*need(job, item.equipment), *near),
        cautions=tuple(warned(voice, one) for one in item.cautions),
        pictures=series(job, item.id, item.purpose, item.finish),
    )


def helper_view(job: BookletJob, exercises: tuple[ExerciseSheet, ...]) -> HelperSheet | None:
    """Return the helper's sheet; None where nobody is needed and the clinic wrote no advice."""
    life = (job.catalogue.daily_life[id_] for id_ in job.stage.daily_life)
    listed = [(one.name, one.exercise.helper, one.helper) for one in exercises]
    listed += [(one.name, one.helper, one.helper_role) for one in life]
    sheet = HelperSheet(job.catalogue.safety.helper, _helped(job, listed))
    return sheet if sheet.advice or sheet.where.all else None


def _helped(job: BookletJob, listed: Iterable[tuple[Text, Helper, HelperRole | None]]) -> Halves[Helped]:
    found = [
        Helped(name, term(job.voice, near) if near is Helper.NEEDED else "", role)
        for name, near, role in listed
        if role is not None and near is not Helper.NONE
    ]
    return halves(found, lambda one: 1.5 + lines((one.name, one.role.does, one.role.must_not)))


def anchors_view(job: BookletJob, exercises: tuple[ExerciseSheet, ...]) -> Anchors | None:
    """Return how high the bands of the phase are tied; None where no band is tied to anything."""
    tied: dict[Landmark, list[str]] = {}
    for one in exercises:
        if one.exercise.anchor is not None:
            tied.setdefault(one.exercise.anchor, []).append(str(one.name))
    if not tied:
        return None
    voice = job.voice
    return Anchors(
        statures=tuple(number(voice, row.stature) for row in job.anchors),
        anchors=tuple(
            Anchor(
                exercises=list_of(voice, names),
                words=voice.opening(term(voice, landmark)),
                heights=tuple(number(voice, round(row.heights[landmark])) for row in job.anchors),
            )
            for landmark, names in tied.items()
        ),
    )

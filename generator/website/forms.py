"""Says what easier and harder forms change, in words or in points, and which places hang on one study."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.base import Text
from generator.catalogue.clinic import Study
from generator.catalogue.estimates import VariationEffect
from generator.catalogue.programme import Programme
from generator.website.estimates import EstimateView, estimate_view, form_name
from generator.website.values import SiteInput
from generator.wording.phrases import activity, number
from generator.wording.phrases import phase as phase_words

# Half of the widest level: smaller differences are within what the levels call "about as hard".
_NOTICEABLE = 5.0


@dataclass(frozen=True)
class EffectRow:
    """What a form does to one muscle. points: more or less than the exercise itself, or an empty text."""

    form: str
    muscle: Text
    estimate: EstimateView | None
    points: str
    studies: tuple[Study, ...]


@dataclass(frozen=True)
class HangingRow:
    """A place that hangs on one study, and what the estimate would be without it (empty: not measured)."""

    exercise: Text
    phase: str
    study: Study
    without: str
    above_by: str


def effect_rows(site: SiteInput, programme: Programme) -> Iterator[EffectRow]:
    """Yield what each form of a programme's exercises does to each of the programme's muscles."""
    used = dict.fromkeys(use.use for phase in programme.phases for use in phase.uses)
    for exercise in used:
        for effect in site.effects.get(exercise, ()):
            known = effect.points is not None or (effect.estimate is not None and effect.estimate.k > 0)
            if known and effect.muscle in programme.muscles:
                yield _effect_row(site, effect)


def _effect_row(site: SiteInput, effect: VariationEffect) -> EffectRow:
    return EffectRow(
        form=form_name(site, effect.variation),
        muscle=site.catalogue.muscles[effect.muscle].name,
        estimate=estimate_view(site, effect.estimate) if effect.estimate else None,
        points=_points(site, effect),
        studies=tuple(site.catalogue.studies[study] for study in effect.within),
    )


def _points(site: SiteInput, effect: VariationEffect) -> str:
    if effect.points is None:
        return ""
    voice, size = site.voice, number(site.voice, abs(effect.points), 1)
    if effect.points < 0:
        return voice.gettext("{points} points less").format(points=size)
    return voice.gettext("{points} points more").format(points=size)


def effect_words(site: SiteInput, variation: str, muscles: frozenset[str]) -> tuple[str, ...]:
    """Return in a patient's words what a form (``exercise/variation``) does to each of these muscles."""
    voice = site.voice
    found = []
    for effect in site.effects.get(variation.partition("/")[0], ()):
        if effect.variation != variation or effect.points is None or effect.muscle not in muscles:
            continue
        if effect.points >= _NOTICEABLE:
            words = voice.gettext("It works {muscle} more.")
        elif effect.points <= -_NOTICEABLE:
            words = voice.gettext("It works {muscle} less.")
        else:
            words = voice.gettext("It works {muscle} about as hard.")
        found.append(words.format(muscle=site.catalogue.muscles[effect.muscle].plain))
    return tuple(found)


def hanging_rows(site: SiteInput, programme: Programme) -> Iterator[HangingRow]:
    """Yield the places that would stand otherwise to their band without one study."""
    voice = site.voice
    for one in site.hanging.get(programme.id, ()):
        yield HangingRow(
            exercise=site.catalogue.exercises[one.exercise].name,
            phase=phase_words(voice, one.phase),
            study=site.catalogue.studies[one.study],
            without="" if one.mean is None else activity(voice, one.mean),
            above_by=number(voice, one.above_by, 1) if one.above_by else "",
        )

"""Words what gravity asks of a muscle as a model says, beside measured numbers and never before them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.catalogue.moments import MASS_KG, SOURCE, STATURE_M, Contradiction, Moment
from generator.catalogue.programme import Programme
from generator.website.estimates import form_name
from generator.website.values import SiteInput
from generator.wording.phrases import height, kilograms, newton_metres
from generator.wording.terms import clinical_term, term

_LEAST = 0.5  # newton metres: what rounds to none


@dataclass(frozen=True)
class GravityRow:
    """One form and its moment in words. modelled: whether there is a number."""

    form: str
    words: str
    modelled: bool


@dataclass(frozen=True)
class GravityView:
    """A programme's moments: against what, for whom, from which source, and in which form how much."""

    against: str
    person: str
    source: str
    rows: tuple[GravityRow, ...]


def gravity_view(site: SiteInput, programme: Programme) -> GravityView | None:
    """Return a programme's moments in words; None where no muscle of it states an action."""
    voice, moments = site.voice, site.moments.get(programme.id) or {}
    first = next(iter(moments.values()), None)
    if first is None:
        return None
    return GravityView(
        against=voice.gettext("{joint} {movement}").format(
            joint=clinical_term(voice, first.joint), movement=clinical_term(voice, first.movement)
        ),
        person=voice.gettext("a person of {height} and {mass}").format(
            height=height(voice, 100 * STATURE_M), mass=kilograms(voice, MASS_KG)
        ),
        source=SOURCE,
        rows=tuple(_row(site, one) for one in moments.values()),
    )


def _row(site: SiteInput, moment: Moment) -> GravityRow:
    voice, name = site.voice, form_name(site, moment.form)
    if moment.newton_metres is None:
        reason = term(voice, moment.without) if moment.without else ""
        return GravityRow(name, voice.gettext("no model: {reason}").format(reason=reason), False)
    if moment.newton_metres < _LEAST:
        return GravityRow(name, voice.gettext("gravity does not pull against it"), True)
    return GravityRow(name, newton_metres(voice, moment.newton_metres), True)


def gainsaid(site: SiteInput, programme: Programme, phase: int) -> Iterator[str]:
    """Yield a note for each pair of neighbours in a phase whose order the model gainsays."""
    voice = site.voice
    words = voice.gettext(
        "The model speaks against this order: gravity asks {more} in {easier}, which comes first, and {less} "
        "in {harder}. The order stays, for activity counts before a model."
    )
    for one in site.contradictions.get(programme.id, ()):
        if one.phase == phase:
            yield _gainsaid(site, words, one)


def _gainsaid(site: SiteInput, words: str, one: Contradiction) -> str:
    voice = site.voice
    return words.format(
        more=newton_metres(voice, one.easier_moment),
        easier=form_name(site, one.easier),
        less=newton_metres(voice, max(one.harder_moment, 0.0)),
        harder=form_name(site, one.harder),
    )

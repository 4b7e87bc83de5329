"""Says first, on a page reached by search, to which phases it belongs and what is restricted there."""

from __future__ import annotations

from dataclasses import dataclass

from generator.catalogue.programme import Phase, Programme
from generator.website.addresses import phase_page
from generator.website.shared import Forbidden, forbidden_in
from generator.website.values import SiteInput
from generator.wording.phrases import phase as phase_words
from generator.wording.weeks import both_tracks


@dataclass(frozen=True)
class Belongs:
    """A phase that speaks of a thing: number and name, page and programme, weeks, restrictions."""

    programme: Programme
    phase: Phase
    page: str
    where: str
    when: str
    forbidden: tuple[Forbidden, ...]

    @property
    def gated(self) -> bool:
        """Return whether the phase must be opened by the physiotherapist."""
        return self.phase.number > 1


def belongs_to(site: SiteInput, item: str) -> tuple[Belongs, ...]:
    """Return the phases that speak of a thing of daily life, in order."""
    return tuple(
        _belongs(site, programme, phase)
        for programme in site.catalogue.programmes.values()
        for phase in programme.phases
        if item in phase.daily_life
    )


def _belongs(site: SiteInput, programme: Programme, phase: Phase) -> Belongs:
    voice, windows = site.voice, site.orders[programme.id].windows
    words = voice.gettext("{phase}: {name}")
    return Belongs(
        programme=programme,
        phase=phase,
        page=phase_page(programme.id, phase.number),
        where=words.format(phase=phase_words(voice, phase.number), name=phase.name),
        when=voice.opening(both_tracks(voice, windows[phase.number - 1])),
        forbidden=forbidden_in(voice, programme, phase),
    )

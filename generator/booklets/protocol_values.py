"""Says what a clinicians' protocol is made from, and what one sheet of it must show."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from generator.catalogue.arranged import Order, RestrictionRow
from generator.catalogue.programme import Programme
from generator.catalogue.values import Catalogue
from generator.wording.voice import Voice

LEAST_POINTS = 8.0
"""The smallest type of a protocol, in points: it is a table for clinicians; the same stands on a page."""

MOST_SHEETS = 4
"""A protocol that takes more is no longer read at a glance."""


@dataclass(frozen=True, kw_only=True)
class ProtocolJob:
    """One protocol to make: a whole programme in one language, for clinicians.

    catalogue: already localised. programme: its id. order: with windows and estimates. table: what is allowed
    when, one row for each restriction. edition: the code printed on every sheet. output: where the PDF goes.
    assets: folder that holds ``tokens.css``. draft: the mark of a draft on each sheet.
    """

    catalogue: Catalogue
    voice: Voice
    programme: str
    order: Order
    table: tuple[RestrictionRow, ...]
    edition: str
    output: Path
    assets: Path
    draft: str = ""

    @property
    def stages(self) -> Programme:
        """Return the programme that the protocol belongs to."""
        return self.catalogue.programmes[self.programme]

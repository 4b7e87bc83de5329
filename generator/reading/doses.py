"""Reads the short notation for a dose step, such as ``3 x 10 with light band``."""

from __future__ import annotations

import re

from generator.catalogue.dose import DoseKind, DoseStep, Load
from generator.catalogue.terms import BandStrength

_LOAD = r"(?: with (?:(?P<band>light|medium|strong) band|(?P<kg>\d{1,2}(?:\.\d{1,2})?) kg))?"
_FORMS: tuple[tuple[DoseKind, str], ...] = (
    (DoseKind.REPETITIONS, r"(?P<sets>[1-9]\d?) [x×] (?P<count>[1-9]\d?)"),
    (
        DoseKind.HOLDS,
        r"(?:(?P<sets>[1-9]\d?) [x×] )?(?P<count>[1-9]\d?) holds? of (?P<hold>[1-9]\d{0,2}) s",
    ),
    (DoseKind.MINUTES, r"(?P<count>[1-9]\d?) min"),
    (DoseKind.HOURLY, r"(?P<count>[1-9]\d?) times an hour"),
    (DoseKind.STEPS, r"(?P<count>[1-9]\d{0,4}) steps"),
)
_PATTERNS = tuple((kind, re.compile(form + _LOAD, re.ASCII)) for kind, form in _FORMS)

WANTED = "a dose step, such as 3 x 10, 3 x 10 with light band, 5 holds of 10 s, 10 min, 200 steps"
SCHEMA = "|".join(re.sub(r"\?P<[a-z]+>", "?:", form + _LOAD) for _, form in _FORMS)


def parse_step(typed: str) -> DoseStep | None:
    """Return the dose step that `typed` denotes, or None where it has none of the known forms."""
    for kind, pattern in _PATTERNS:
        match = pattern.fullmatch(typed)
        if match:
            parts = match.groupdict()
            load = Load(
                band=BandStrength(parts["band"]) if parts["band"] else None,
                kilograms=float(parts["kg"]) if parts["kg"] else None,
            )
            hold = int(parts["hold"]) if parts.get("hold") else None
            return DoseStep(kind, int(parts.get("sets") or 1), int(parts["count"]), hold, load)
    return None

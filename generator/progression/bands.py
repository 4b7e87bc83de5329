"""Says where a number stands to a phase's activity band, and whether it may stand there."""

from __future__ import annotations

from enum import Enum

from generator.catalogue.arranged import BandPosition
from generator.catalogue.programme import Acceptance, Band


class Leave(Enum):
    """Whether a number may stand in a phase that protects the muscle."""

    WITHIN = "within the band, below it, or not known"
    LATE = "above by no more than the margin"
    ACCEPTED = "above by more, accepted by a clinician up to this number"
    REFUSED = "above by more"


def position(mean: float | None, band: Band) -> tuple[BandPosition, float]:
    """Return where `mean` stands to the band, and by how many points it is above (0 otherwise).

    A band is above its lower and up to and including its upper number, so that neighbours leave no gap.
    """
    if mean is None:
        return BandPosition.UNKNOWN, 0.0
    if mean > band.up_to:
        return BandPosition.ABOVE, mean - band.up_to
    return (BandPosition.INSIDE if mean > band.above else BandPosition.BELOW), 0.0


def leave(mean: float | None, band: Band, margin: float, accepted: Acceptance | None) -> Leave:
    """Return whether `mean` may stand in a phase; doubt never widens permission."""
    if mean is None or mean <= band.up_to:
        return Leave.WITHIN
    if mean - band.up_to <= margin:
        return Leave.LATE
    return Leave.ACCEPTED if accepted is not None and mean <= accepted.up_to else Leave.REFUSED

"""Says where a number stands to a phase's activity band."""

from __future__ import annotations

from generator.catalogue.arranged import BandPosition
from generator.catalogue.programme import Band


def position(mean: float | None, band: Band) -> tuple[BandPosition, float]:
    """Return where `mean` stands to the band, and by how many points it is above (0 otherwise).

    A band is above its lower and up to and including its upper number, so that neighbours leave no gap.
    """
    if mean is None:
        return BandPosition.UNKNOWN, 0.0
    if mean > band.up_to:
        return BandPosition.ABOVE, mean - band.up_to
    return (BandPosition.INSIDE if mean > band.above else BandPosition.BELOW), 0.0

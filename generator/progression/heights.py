"""Says how high a band is anchored on a person of some height: by body landmark, and in centimetres.

Heights as fractions of stature: Drillis & Contini 1966 as in Winter, Biomechanics and Motor Control of Human
Movement, 4th ed. 2009, figure 4.1. They are those of an average body; the landmark itself counts first.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from generator.body.segments import ANKLE_HEIGHT, HIP_HEIGHT, KNEE_HEIGHT, SHOULDER_HEIGHT
from generator.catalogue.arranged import AnchorHeights
from generator.catalogue.terms import Landmark

# The elbow's printed height, from memory; the lengths of the arm give 0.632 (the figure does not close).
ELBOW_HEIGHT = 0.630

FRACTIONS: Mapping[Landmark, float] = MappingProxyType(
    {
        Landmark.ANKLE: ANKLE_HEIGHT,
        Landmark.KNEE: KNEE_HEIGHT,
        Landmark.HIP: HIP_HEIGHT,
        Landmark.ELBOW: ELBOW_HEIGHT,
        Landmark.SHOULDER: SHOULDER_HEIGHT,
    }
)
STATURES = range(145, 201, 5)


def anchor_heights(stature: int) -> AnchorHeights:
    """Return the landmark heights in cm for a body height in cm; raises ValueError outside 50 to 250."""
    if not 50 <= stature <= 250:
        raise ValueError(f"{stature} cm is no body height")
    heights = {landmark: stature * fraction for landmark, fraction in FRACTIONS.items()}
    return AnchorHeights(stature, MappingProxyType(heights))


def anchor_table() -> tuple[AnchorHeights, ...]:
    """Return the heights for body heights from 145 to 200 cm, in steps of 5."""
    return tuple(anchor_heights(stature) for stature in STATURES)

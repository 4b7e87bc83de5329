"""Holds the published measures of a body: lengths, masses and centres of mass, as fractions.

Lengths: Drillis & Contini 1966 as in Winter, Biomechanics and Motor Control of Human Movement, 4th ed.
2009, figure 4.1. Masses and centres: Dempster as in Winter 2009, table 4.1.
"""

from __future__ import annotations

from dataclasses import dataclass

ANKLE_HEIGHT = 0.039
SHANK = 0.246
THIGH = 0.245
TRUNK = 0.288
NECK = 0.052
HEAD = 0.130
UPPER_ARM = 0.186
FOREARM = 0.146
HAND = 0.108
FOOT = 0.152
FOOT_BREADTH = 0.055
SHOULDER_WIDTH = 0.259
HIP_WIDTH = 0.191
CHEST_WIDTH = 0.174

KNEE_HEIGHT = ANKLE_HEIGHT + SHANK
HIP_HEIGHT = KNEE_HEIGHT + THIGH
SHOULDER_HEIGHT = HIP_HEIGHT + TRUNK
CHIN_HEIGHT = SHOULDER_HEIGHT + NECK

# The printed widths are those of the body's outline; the joints lie inside the skin.
SHOULDER_JOINT = 0.102
HIP_JOINT = 0.050


@dataclass(frozen=True)
class Mass:
    """A segment's share of body mass, and its centre as a fraction of its length from the proximal end."""

    share: float
    centre: float


HAND_MASS = Mass(0.006, 0.506)
FOREARM_MASS = Mass(0.016, 0.430)
UPPER_ARM_MASS = Mass(0.028, 0.436)
FOOT_MASS = Mass(0.0145, 0.500)
SHANK_MASS = Mass(0.0465, 0.433)
THIGH_MASS = Mass(0.100, 0.433)
WHOLE_LEG_MASS = Mass(0.161, 0.447)
HEAD_ARMS_TRUNK_MASS = Mass(0.678, 0.626)
TRUNK_HEAD_NECK_MASS = Mass(0.578, 0.660)

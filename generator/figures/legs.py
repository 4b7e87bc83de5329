"""Finds the places on the legs where things are worn, tied or laid."""

from __future__ import annotations

import numpy as np

from generator.body.pose import Side
from generator.body.skeleton import Array, Placed, limb
from generator.figures.props import Limit

# segment, distance below its upper end
AT = {
    Limit.THIGHS: ("thigh", 0.20),
    Limit.KNEES: ("thigh", 0.235),
    Limit.ANKLES: ("shank", 0.205),
    Limit.FEET: ("foot", 0.0),
}
# Half a leg's breadth there.
HALF = {Limit.THIGHS: 0.038, Limit.KNEES: 0.034, Limit.ANKLES: 0.021, Limit.FEET: 0.026}


def on_leg(placed: Placed, side: Side, at: Limit) -> tuple[Array, Array]:
    """Return a point on a leg's axis, and the leg's direction there."""
    name, along = AT[at]
    segment = limb(side, name)
    axes = placed.rotations[segment]
    if name == "foot":
        return placed.origins[segment] + axes @ np.array([0.05, -0.02, 0.0]), axes[:, 0]
    return placed.origins[segment] - along * axes[:, 1], -axes[:, 1]

"""Holds that a muscle's action is one that the joint can make: a model of gravity would be silent without."""

from __future__ import annotations

from collections.abc import Iterator

from generator.body.ranges import LARGEST, exists
from generator.catalogue.values import Catalogue
from generator.problems import Problem, Rule

RULE = Rule(
    "muscle-action-impossible",
    "A muscle is said to move a joint in a way that the joint cannot move.",
    "Joint or movement of the 'action' was mixed up.",
    "name a movement of that joint, such as {joint: hip, movement: abduction}",
)
RULES = (RULE,)


def check(catalogue: Catalogue) -> Iterator[Problem]:
    """Yield a finding for each muscle whose joint does not make the movement of its action."""
    for id_, muscle in catalogue.muscles.items():
        action = muscle.action
        if action is not None and not exists(action.joint, action.movement):
            ways = ", ".join(way.value for joint, way in LARGEST if joint is action.joint)
            message = (
                f"'{id_}': there is no {action.movement.value} of the {action.joint.value}, only: {ways}"
            )
            yield RULE.at(action.at("movement"), message)

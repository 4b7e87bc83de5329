"""Turns rings of skin into outlines on the picture: each limb's rings stretched to the next and joined."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from generator.body.pose import SIDES, Side
from generator.body.skeleton import Array
from generator.body.surface import RINGS, Chain, Skin, Wear
from generator.figures.camera import Camera
from generator.figures.shapes import soften

Index = NDArray[np.int64]
_POINTS = 16
_AROUND = np.linspace(0.0, 2 * np.pi, _POINTS, endpoint=False)
_CIRCLE = np.stack([np.cos(_AROUND), np.sin(_AROUND)])
# Rings that are joined to the next one: all but the last of each chain.
_JOINED = np.array([(one.chain, one.side) == (two.chain, two.side) for one, two in pairwise(RINGS)])
_FINEST = 0.06  # drawing units: what is smaller nobody sees, and every corner costs time later


def _chain(chain: Chain, side: Side, wear: Wear | None = None) -> Index:
    """Return a chain's rings, or those that wear something."""
    rows = [index for index, ring in enumerate(RINGS) if ring.chain is chain and ring.side is side]
    if wear is not None:
        rows = [index for index in rows if RINGS[index].wear is wear]
    return np.array(rows, dtype=np.int64)


def _chains(side: Side, *chains: Chain) -> list[Index]:
    return [_chain(chain, side) for chain in chains]


LEGS = {side: _chains(side, Chain.THIGH, Chain.SHANK, Chain.FOOT) for side in SIDES}
ARMS = {side: _chains(side, Chain.UPPER_ARM, Chain.FOREARM, Chain.HAND, Chain.THUMB) for side in SIDES}
LEG_SHORTS = {side: [_chain(Chain.THIGH, side, Wear.SHORTS)] for side in SIDES}
SLEEVES = {side: [_chain(Chain.UPPER_ARM, side, Wear.SHIRT)] for side in SIDES}
TRUNK = _chain(Chain.TRUNK, Side.MIDDLE)
# One ring more than wears shorts, so that they end where the shirt begins.
TRUNK_SHORTS = TRUNK[: len(_chain(Chain.TRUNK, Side.MIDDLE, Wear.SHORTS)) + 1]
NECK = _chain(Chain.NECK, Side.MIDDLE)
SKULL = _chain(Chain.HEAD, Side.MIDDLE)

_WHOLE = [*(chain for limbs in (LEGS, ARMS) for side in SIDES for chain in limbs[side]), TRUNK, NECK, SKULL]
_BEGINNINGS = [*(limbs[side][0] for limbs in (LEG_SHORTS, SLEEVES) for side in SIDES), TRUNK_SHORTS]
_Key = tuple[int, ...]


def _key(chains: Sequence[Index]) -> _Key:
    return tuple(int(chain[0]) * 1000 + len(chain) for chain in chains)


_STARTS = np.array([chain[0] for chain in _WHOLE])
_LENGTHS = np.array([len(chain) for chain in _WHOLE])
# After how many rings which chain is kept, and under which key.
_KEPT: dict[int, list[tuple[int, _Key]]] = {}
for _kept in (*_WHOLE, *_BEGINNINGS):
    _at = next(at for at, chain in enumerate(_WHOLE) if chain[0] == _kept[0])
    _KEPT.setdefault(len(_kept), []).append((_at, _key([_kept])))


class Ellipses:
    """Every ring of a body on the picture: points around each, in drawing units."""

    def __init__(self, skin: Skin, lens: Camera) -> None:
        """Project the rings of `skin` and join them to limbs."""
        centres, first, second = lens.flat(skin.centres), lens.vectors(skin.first), lens.vectors(skin.second)
        self.points: Array = (
            centres[:, None]
            + first[:, None] * _CIRCLE[0][None, :, None]
            + second[:, None] * _CIRCLE[1][None, :, None]
        )
        self.depths = lens.depth(skin.centres)
        self._hard = self._chains_joined()
        self._soft: dict[_Key, BaseGeometry] = {}
        self._join_limbs()

    def cross(self, chains: Sequence[Index]) -> Array:
        """Return points that the drawing of these chains follows: a cross on each ring."""
        return self.points[np.concatenate(chains)][:, :: _POINTS // 3].reshape(-1, 2)

    def outline(self, chains: Sequence[Index], soft: bool = True) -> BaseGeometry:
        """Return the outline of a chain, or of a whole limb; `soft` fills the creases where it bends."""
        key = _key(chains)
        if not soft:
            return self._hard[key]
        if key not in self._soft:
            self._soft[key] = soften(self._hard[key])
        return self._soft[key]

    def _chains_joined(self) -> dict[_Key, BaseGeometry]:
        """Return every chain's outline: all chains grow ring by ring, beside one another."""
        both = np.concatenate([self.points[:-1], self.points[1:]], axis=1)[_JOINED]
        # A line through the points has the same hull as the points, and all are made in one go.
        hulls = np.empty(len(RINGS), dtype=object)
        hulls[:-1][_JOINED] = shapely.convex_hull(shapely.linestrings(both))
        grown = hulls[_STARTS]
        kept: dict[_Key, BaseGeometry] = {}
        for rings in range(2, int(_LENGTHS.max()) + 1):
            if rings > 2:
                longer = np.flatnonzero(rings <= _LENGTHS)
                grown[longer] = shapely.union(grown[longer], hulls[_STARTS[longer] + rings - 2])
            kept |= {key: grown[at] for at, key in _KEPT.get(rings, ())}
        return dict(zip(kept, shapely.simplify(list(kept.values()), _FINEST).tolist(), strict=True))

    def _join_limbs(self) -> None:
        """Join hands, then what is below knee or elbow, then whole limbs; those are softened too."""
        for start, limbs in ((2, (ARMS,)), (1, (ARMS, LEGS)), (0, (ARMS, LEGS))):
            wanted = [each[side][start:] for each in limbs for side in SIDES]
            joined = shapely.union(
                [self._hard[_key(chains[:1])] for chains in wanted],
                [self._hard[_key(chains[1:])] for chains in wanted],
            )
            self._hard |= zip(map(_key, wanted), joined.tolist(), strict=True)
        soft = [*map(_key, wanted), _key([TRUNK]), _key([NECK])]
        self._soft |= zip(soft, soften(np.array([self._hard[key] for key in soft])).tolist(), strict=True)

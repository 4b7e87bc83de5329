"""Leads from paper to the check page with a telephone's camera, where patients can reach the site."""

from __future__ import annotations

import base64
from dataclasses import dataclass
from urllib.parse import quote

import segno

from generator.booklets.values import BookletJob
from generator.catalogue.terms import Reach

MODULE_MM = 0.6
"""Side of one module in millimetres: at 300 dots an inch seven dots; Denso Wave asks for at least four."""

QUIET_MODULES = 4
"""Width of the quiet zone in modules, ISO/IEC 18004."""


@dataclass(frozen=True)
class Code:
    """A QR code: where it leads, its drawing as an address inside the document, its side in millimetres."""

    address: str
    drawing: str
    side: float


def check_address(job: BookletJob) -> str:
    """Return the address that says whether the edition is valid; empty where patients cannot open it."""
    clinic = job.catalogue.clinic
    if clinic.reach is not Reach.PATIENTS or clinic.base_address is None:
        return ""
    return f"{clinic.base_address.rstrip('/')}/{job.voice.code}/check.html#{quote(job.edition)}"


def check_code(job: BookletJob) -> Code | None:
    """Return the QR code to the check page; None where it would lead nowhere."""
    address = check_address(job)
    if not address:
        return None
    made = segno.make(address, error="m", micro=False)
    side = len(made.matrix) + 2 * QUIET_MODULES
    rows = (
        f"M{column + QUIET_MODULES} {row + QUIET_MODULES}h1v1h-1z"
        for row, modules in enumerate(made.matrix)
        for column, dark in enumerate(modules)
        if dark
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" width="{side}" height="{side}">'
        f'<path fill="#fff" d="M0 0h{side}v{side}H0z"/><path fill="#000" d="{"".join(rows)}"/></svg>'
    )
    data = base64.b64encode(svg.encode("ascii")).decode("ascii")
    return Code(address, f"data:image/svg+xml;base64,{data}", round(side * MODULE_MM, 2))

"""Writes down under which licence each locked package stands, so that every machine shows the same table.

The licences come from the packages' own metadata (Core Metadata 2.4: License-Expression, before that
License or a classifier). Where other versions are installed than the locked ones, what was written stays.
"""

from __future__ import annotations

import importlib.metadata
import json
import re
from collections.abc import Mapping
from typing import Any

from generator.cli.shared import ROOT

LOCK = ROOT / ".locks" / "run.txt"
FILE = ROOT / "generator" / "website" / "licences.json"
_PIN = re.compile(r"(?m)^([a-z0-9][a-z0-9.-]*)==(\S+)( ;)?")
_NEED = re.compile(r"([A-Za-z0-9._-]+)\s*(?:\[([^\]]*)\])?")
_EXTRA = re.compile(r"extra\s*==\s*[\"']([^\"']+)")
# Some packages put their whole licence into the field for its name.
_LONGEST = 60

Metadata = Mapping[str, importlib.metadata.PackageMetadata]


def licences_text() -> str:
    """Return the table as JSON: name, version, licence and who needs it, for each package of the lock."""
    recorded = FILE.read_text(encoding="utf-8")
    pins = _PIN.findall(LOCK.read_text(encoding="utf-8"))
    found = {name: about for name, _, _ in pins if (about := _metadata(name)) is not None}
    # A package with a marker is only for some machines.
    if any(not marked if name not in found else _differs(found[name], v) for name, v, marked in pins):
        return recorded
    known = {one["name"]: one["licence"] for one in json.loads(recorded)["packages"]}
    users = _users(found)
    rows: list[dict[str, Any]] = [
        {
            "name": name,
            "version": version,
            "licence": _licence(found[name]) if name in found else known.get(name, ""),
            "needed_by": sorted(users.get(name, ())),
        }
        for name, version, _ in pins
    ]
    return json.dumps({"format": 1, "packages": rows}, indent=1, sort_keys=True) + "\n"


def _metadata(name: str) -> importlib.metadata.PackageMetadata | None:
    try:
        return importlib.metadata.metadata(name)
    except importlib.metadata.PackageNotFoundError:
        return None


def _differs(about: importlib.metadata.PackageMetadata, version: str) -> bool:
    """Return whether two versions differ; ``1.006`` is ``1.6`` (PEP 440)."""
    return [part.lstrip("0") for part in about["Version"].split(".")] != [
        part.lstrip("0") for part in version.split(".")
    ]


def _licence(about: importlib.metadata.PackageMetadata) -> str:
    """Return the licence in the words of the package's makers."""
    said: list[str] = [(about.get_all(key) or [""])[0].strip() for key in ("License-Expression", "License")]
    classified = [
        one.rpartition(" :: ")[2] for one in about.get_all("Classifier") or [] if one.startswith("License ::")
    ]
    good = [one for one in said if one not in ("", "UNKNOWN") and "\n" not in one and len(one) <= _LONGEST]
    return (good or [" / ".join(classified)])[0]


def _users(found: Metadata) -> dict[str, set[str]]:
    """Return for each package those that need it, be it for an extra that another one asks for."""
    needs: list[tuple[str, str, str]] = []
    extras: set[tuple[str, str]] = set()
    for user, about in found.items():
        for line in about.get_all("Requires-Dist") or []:
            name, asked = _NEED.match(line).groups()  # type: ignore[union-attr]  # each begins with a name
            extra = _EXTRA.search(line)
            name = re.sub(r"[-_.]+", "-", name).lower()
            needs.append((name, user, extra[1] if extra else ""))
            if not extra:
                extras |= {(name, one.strip()) for one in (asked or "").split(",")}
    users: dict[str, set[str]] = {}
    for name, user, for_extra in needs:
        if not for_extra or (user, for_extra) in extras:
            users.setdefault(name, set()).add(user)
    return users

"""Writes an order with all that speaks for it as JSON, CSV and CSL-JSON: one source for command and site.

Every function is pure and returns values or text; numbers are rounded to four decimals, so that machines that
differ in the last bit of a float write the same bytes.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from generator.catalogue.arranged import Estimate, Hanging, Order, Placed, Reason, SetAside
from generator.catalogue.clinic import Study
from generator.catalogue.moments import MASS_KG, SOURCE, STATURE_M, Contradiction, Moment
from generator.catalogue.programme import Programme, Use
from generator.catalogue.values import Catalogue
from generator.progression import arrange, hanging

_DECIMALS = 4
_COLUMNS = (
    "programme", "phase", "place", "exercise", "variation", "role", "level", "muscle", "mean", "se", "low",
    "high", "k", "n", "q", "i_squared", "tau_squared", "borrowed", "basis", "band_above", "band_up_to",
    "position", "above_by", "accepted", "studies", "set_aside",
)  # fmt: skip


def order_of(catalogue: Catalogue, programme: str, without: Iterable[str] = ()) -> Order:
    """Return a programme's order, worked out as if the studies `without` had never been published."""
    return arrange(catalogue, frozenset(without))[programme]


def hanging_of(catalogue: Catalogue, programme: str) -> tuple[Hanging, ...]:
    """Return the places of a programme that would stand otherwise to their band without one study."""
    return hanging(catalogue, catalogue.programmes[programme])


def order_json(
    catalogue: Catalogue,
    order: Order,
    phase: int | None = None,
    without: Sequence[str] = (),
    hangs: Sequence[Hanging] = (),
) -> dict[str, Any]:
    """Return the pinned JSON form of an order; `phase`: of one phase only."""
    programme = catalogue.programmes[order.programme]
    return {
        "format": 1,
        "programme": order.programme,
        "phase": phase,
        "without": sorted(without),
        "uses": [
            _use(catalogue, programme, placed) for placed in order.places if phase in (None, placed.phase)
        ],
        "hanging": [
            {
                "study": one.study,
                "exercise": one.exercise,
                "phase": one.phase,
                "mean": _round(one.mean),
                "above_by": _round(one.above_by),
            }
            for one in hangs
            if phase in (None, one.phase)
        ],
    }


def gravity_json(moments: Mapping[str, Moment], gainsaid: Sequence[Contradiction]) -> dict[str, Any]:
    """Return what gravity asks in each form, as a model says; it orders nothing.

    newton_metres: None where there is no model, and then `no_model` says why.
    """
    return {
        "basis": "modelled, gravity only; never counts before a measured value",
        "source": SOURCE,
        "mass_kg": MASS_KG,
        "stature_m": STATURE_M,
        "forms": [
            {
                "form": one.form,
                "joint": one.joint.value,
                "movement": one.movement.value,
                "newton_metres": _round(one.newton_metres),
                "no_model": one.without.value if one.without else None,
            }
            for one in moments.values()
        ],
        "against_the_order": [
            {
                "phase": one.phase,
                "easier": one.easier,
                "harder": one.harder,
                "easier_newton_metres": _round(one.easier_moment),
                "harder_newton_metres": _round(one.harder_moment),
            }
            for one in gainsaid
        ],
    }


def json_text(value: Any) -> str:
    """Return JSON as it is pinned: sorted keys, UTF-8, LF, a line end at the end."""
    return json.dumps(value, sort_keys=True, ensure_ascii=False, indent=2) + "\n"


def _use(catalogue: Catalogue, programme: Programme, placed: Placed) -> dict[str, Any]:
    use = use_of(programme, placed)
    band = programme.phase(placed.phase).band
    return {
        "exercise": placed.exercise,
        "variation": use.variation,
        "phase": placed.phase,
        "place": placed.place,
        "role": catalogue.exercises[placed.exercise].role.value,
        "level": placed.level,
        "estimate": _estimate(placed.estimate) if placed.estimate else None,
        "others": [_estimate(one) for one in placed.others],
        "not_measured": list(placed.not_measured),
        "studies": list(placed.estimate.studies) if placed.estimate else [],
        "set_aside": [_aside(one) for one in placed.set_aside],
        "band": {
            "above": band.above,
            "up_to": band.up_to,
            "position": placed.band_position.value,
            "above_by": _round(placed.above_by),
            "late": placed.late,
        },
        "accepted": _accepted(placed),
        "comparison": _comparison(placed),
        "reasons": [_reason(one) for one in placed.reasons],
    }


def _aside(one: SetAside) -> dict[str, Any]:
    reasons = [kind.value for kind in one.kinds]
    return {"study": one.study, "muscle": one.muscle, "value": _round(one.mean), "reasons": reasons}


def _reason(one: Reason) -> dict[str, Any]:
    number = _round(one.number)
    return {
        "kind": one.kind.value,
        "other": one.other,
        "number": number,
        "of": one.of,
        "muscle": one.muscle,
    }


def use_of(programme: Programme, placed: Placed) -> Use:
    """Return the use that stands in a place."""
    return next(use for use in programme.phase(placed.phase).uses if use.use == placed.exercise)


def basis_words(estimate: Estimate) -> str:
    """Return what an estimate rests on, such as ``judged between mini-squat and bridge-both-legs``."""
    others = estimate.judgement.others if estimate.judgement else ()
    return " ".join(part for part in (estimate.basis.value, " and ".join(others)) if part)


def _estimate(one: Estimate) -> dict[str, Any]:
    condition, judgement = one.condition, one.judgement
    return {
        "muscle": one.muscle,
        "mean": _round(one.mean),
        "se": _round(one.se),
        "low": _round(one.low),
        "high": _round(one.high),
        "prediction": [_round(end) for end in one.prediction] if one.prediction else None,
        "k": one.k,
        "n": one.n,
        "q": _round(one.q),
        "i_squared": _round(one.i_squared),
        "tau_squared": _round(one.tau_squared),
        "borrowed": _round(one.borrowed),
        "basis": basis_words(one),
        "condition": {
            "load": condition.load,
            "electrode": condition.electrode.value,
            "part": condition.part.value,
            "added_load": condition.added.value if condition.added else None,
        }
        if condition
        else None,
        "caveats": [{"caveat": caveat.kind.value, "study": caveat.study} for caveat in one.caveats],
        "judgement": {
            "as": judgement.kind.value,
            "others": list(judgement.others),
            "role": judgement.role,
            "reason": judgement.reason,
        }
        if judgement
        else None,
    }


def _accepted(placed: Placed) -> dict[str, Any] | None:
    leave = placed.accepted
    return {"up_to": leave.up_to, "role": leave.role, "reason": leave.reason} if leave else None


def _comparison(placed: Placed) -> dict[str, Any] | None:
    found = placed.comparison
    if found is None:
        return None
    return {
        "before": found.before,
        "muscle": found.muscle,
        "studies": list(found.studies),
        "harder": list(found.harder),
        "easier": list(found.easier),
        "chance": _round(found.chance),
        "people": found.people,
    }


def _round(number: float | None) -> float | None:
    return None if number is None else round(number, _DECIMALS)


def order_csv(catalogue: Catalogue, order: Order) -> str:
    """Return one row a use (RFC 4180 quoting, LF, a first row with the names of the columns)."""
    programme = catalogue.programmes[order.programme]
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(_COLUMNS)
    for placed in order.places:
        row = _row(order, _use(catalogue, programme, placed))
        writer.writerow([_cell(row.get(name)) for name in _COLUMNS])
    return buffer.getvalue()


def _row(order: Order, use: dict[str, Any]) -> dict[str, Any]:
    aside = (f"{one['study']} {one['value']:g} ({'; '.join(one['reasons'])})" for one in use["set_aside"])
    accepted = use["accepted"]
    return {
        **use,
        **(use["estimate"] or {"basis": "not measured"}),
        **use["band"],
        "band_above": use["band"]["above"],
        "band_up_to": use["band"]["up_to"],
        "programme": order.programme,
        "accepted": f"{accepted['role']}: {accepted['reason']}" if accepted else "",
        "studies": "; ".join(use["studies"]),
        "set_aside": "; ".join(aside),
    }


def _cell(value: Any) -> Any:
    """Return a cell; text that a table would take for a formula is set off by an apostrophe."""
    return f"'{value}" if isinstance(value, str) and value.startswith(("=", "+", "-", "@")) else value


def studies_csl(catalogue: Catalogue, order: Order) -> str:
    """Return the studies behind an order as CSL-JSON (Citation Style Language 1.0.2), by id.

    Studies that are only set aside are among them: a reader must be able to look them up as well.
    """
    ids = {study for placed in order.places for study in _cited(placed)} & set(catalogue.studies)
    return json_text([_csl(catalogue.studies[id_]) for id_ in sorted(ids)])


def _cited(placed: Placed) -> Iterable[str]:
    estimates = [one for one in (placed.estimate, *placed.others) if one]
    return (*(study for one in estimates for study in one.studies), *(one.study for one in placed.set_aside))


def _csl(study: Study) -> dict[str, Any]:
    """Return one entry; names stand as the content has them, since it lists no single authors."""
    entry: dict[str, Any] = {
        "id": study.id,
        "type": "article-journal",
        "title": study.title,
        "author": [{"literal": study.authors}],
        "container-title": study.journal,
        "issued": {"date-parts": [[study.year]]},
        "note": study.status.text,
    }
    volume = re.fullmatch(r"(\d+)(?:\((\w+)\))?", study.volume)
    if volume is None and study.volume:
        entry["note"] = f"{study.volume}. {study.status.text}"
    if volume is not None:
        entry["volume"] = volume[1]
        entry.update({"issue": volume[2]} if volume[2] else {})
    entry.update({"page": study.pages} if study.pages else {})
    entry.update({"DOI": study.doi} if study.doi else {})
    return entry

"""Small contents with invented measurements, typed as an editor would type them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from generator.catalogue.arranged import Estimate
from generator.progression.activity import Activity, activity_of
from tests.content import FILES, catalogue_of

RAISE = "exercises/heel-raise.yml"
REPAIR = "programmes/tendon-repair.yml"


@dataclass(frozen=True)
class Row:
    """One measurement of an invented study of its own: the study's entry is made from it as well."""

    study: str
    mean: float
    sd: float | None = 10
    n: int | None = 20
    muscle: str = "calf"
    load: str = "body weight"
    electrode: str = "surface"
    part: str = "mean"
    normalisation: str = "mvic"
    more: str = ""
    read: str = "mean, sd, n"

    def but(self, **changes: object) -> Row:
        """Return the row with some of it changed."""
        return replace(self, **changes)  # type: ignore[arg-type]

    def typed(self) -> str:
        """Return the row as an editor types it under ``activity``."""
        sd = f", sd: {self.sd:g}" if self.sd is not None else ""
        people = f", n: {self.n}" if self.n is not None else ""
        return (
            f"  - {{muscle: {self.muscle}, mean: {self.mean:g}{sd}{people}, study: {self.study},\n"
            f"     at-place: Table 1, load: {self.load}, electrode: {self.electrode}, part: {self.part},\n"
            f"     normalisation: {self.normalisation}{self.more}, read: [{self.read}]}}\n"
        )


def study(id_: str) -> str:
    """Return an invented study of that id, without a number of people."""
    return (
        f"{id_}:\n  authors: Nobody C\n  year: 2002\n  title: Invented {id_}\n  journal: Invented\n"
        "  people: invented\n  electrode: surface\n  normalisation: mvic\n  part: mean\n"
        "  status: {text: Invented for tests, status: invented}\n"
    )


def exercise(rows: Iterable[Row], seated: Iterable[Row], more: str = "") -> str:
    """Return the heel raise with these measurements of itself and of its variation; `more`: further keys."""
    before, _, after = FILES[RAISE].partition("activity:\n")
    typed = "".join(row.typed() for row in rows)
    inner = "".join(f"    {line}\n" for row in seated for line in row.typed().splitlines())
    return (
        before
        + (f"    activity:\n{inner}" if inner else "")
        + (f"activity:\n{typed}" if typed else "")
        + after[after.index("alternative:") :]
        + more
    )


def content(exercises: Mapping[str, Iterable[Row]], more: Mapping[str, str] | None = None) -> dict[str, str]:
    """Return the small content with these exercises, beside its own, in phase 2, and the studies they name.

    ``raise/seated`` gives the measurements of a variation. more: further keys of an exercise, by its id.
    """
    listed = {id_: list(rows) for id_, rows in exercises.items()}
    names = sorted({row.study for rows in listed.values() for row in rows})
    files = {path: text for path, text in FILES.items() if path != RAISE}
    files["studies.yml"] += "".join(study(name) for name in names)
    start = files[REPAIR].index("      - use: heel-raise\n")
    use = files[REPAIR][start:].replace(", 3 x 10 with light band", "")
    files[REPAIR] = files[REPAIR][:start]
    for id_, rows in listed.items():
        if "/" in id_:
            continue
        seated = listed.get(f"{id_}/seated", [])
        files[f"exercises/{id_}.yml"] = exercise(rows, seated, (more or {}).get(id_, ""))
        files[REPAIR] += use.replace("heel-raise", id_)
    return files


def activity(exercises: Mapping[str, Iterable[Row]], more: Mapping[str, str] | None = None) -> Activity:
    """Return what is known of every exercise of such a content."""
    return activity_of(catalogue_of(content(exercises, more)))


def estimate(*rows: Row, muscle: str = "calf") -> Estimate:
    """Return the estimate of one exercise with these measurements."""
    found = activity({"raise": rows}).of("raise", muscle)
    assert found is not None
    return found

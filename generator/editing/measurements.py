"""Brings published values from a table into the exercises that they belong to: all rows, or none.

Each row is read by the field table of a measurement, so that a value in a table is held to the same form as
one that was typed; a row that fits nowhere is a finding at its line.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from io import StringIO
from pathlib import Path
from types import MappingProxyType

from generator.catalogue.exercise import Exercise, Measurement, Variation
from generator.catalogue.values import Catalogue
from generator.editing.rules import BAD_ROW, BAD_TABLE
from generator.editing.splice import Edited, with_entry, with_item
from generator.editing.yaml_text import Value
from generator.problems import Place, Problem, did_you_mean
from generator.reading.fields_exercise import MEASUREMENT
from generator.reading.findings import BAD, Findings, shown
from generator.reading.nodes import Entries, Items, Node, Scalar
from generator.reading.table import Group

# A table's column and the key of a measurement that it fills.
COLUMNS: Mapping[str, str] = MappingProxyType(
    {
        "muscle": "muscle",
        "mean_pct_mvic": "mean",
        "sd": "sd",
        "n": "n",
        "study_key": "study",
        "place_in_source": "at-place",
        "load": "load",
        "remark": "remark",
        **{key: key for key in ("iqr", "statistic", "electrode", "normalisation", "part")},
    }
)
# Which numbers were read in the source; any other word would leave that open.
STATUSES: Mapping[str, str] = MappingProxyType({"mean_status": "mean", "sd_status": "sd", "n_status": "n"})
# No clinic has read more values than this; a table that has is a mistake or a bomb.
MOST_BYTES = 5_000_000
MOST_ROWS = 20_000
_NEEDED = ("exercise", "muscle", "mean_pct_mvic", "study_key", "place_in_source", *STATUSES)
_SAY_LOAD = "fill the column load, or say it once for all rows, such as: --load 'weight of the leg'"
_FIRST = MappingProxyType(
    {
        "muscle": "describe it in muscles.yml first, or take the row out",
        "study": "describe it in studies.yml first, or take the row out",
    }
)
_READ = MappingProxyType({"checked": True, "memory": False, "": False})


@dataclass(frozen=True)
class Row:
    """A row that fits: the exercise, or its variation, that the measurement belongs to."""

    exercise: Exercise
    variation: Variation | None
    measurement: Measurement
    typed: Mapping[str, Value]

    @property
    def holder(self) -> Exercise | Variation:
        """Return the record whose list the measurement goes into."""
        return self.variation or self.exercise


@dataclass
class _Table:
    """What is known while a table is read."""

    path: str
    catalogue: Catalogue
    load: str
    problems: list[Problem] = field(default_factory=list)


def rows_of(
    text: str, path: str, catalogue: Catalogue, load: str = ""
) -> tuple[list[Row], tuple[Problem, ...]]:
    """Return the rows of a table (CSV with a header line) and what is wrong with the others.

    load: the condition of load of rows whose table says none.
    """
    table = _Table(path, catalogue, load)
    reader = csv.DictReader(StringIO(text, newline=""), strict=True)
    rows: list[Row] = []
    try:
        header = reader.fieldnames or ()
        missing = [name for name in _NEEDED if name not in header]
        unknown = [name for name in header if name not in {*_NEEDED, *COLUMNS}]
        if missing or unknown or len(set(header)) < len(header):
            said = f"missing: {', '.join(missing) or 'none'}; not known: {', '.join(unknown) or 'none'}"
            return [], (BAD_TABLE.at(Place(path, 1, 1), f"the columns do not fit ({said})"),)
        line = reader.line_num + 1
        for cells in reader:
            if line > MOST_ROWS:
                problem = BAD_TABLE.at(Place(path, line, 1), f"the table has more than {MOST_ROWS:,} lines")
                return [], (problem,)
            row = _row(table, cells, Place(path, line, 1))
            rows += [row] if row else []
            line = reader.line_num + 1
    except csv.Error as error:
        problem = BAD_TABLE.at(Place(path, reader.line_num or 1, 1), f"this cannot be read as CSV ({error})")
        return [], (*table.problems, problem)
    return rows, tuple(table.problems)


def new_rows(rows: list[Row]) -> list[Row]:
    """Return the rows that say something new: neither in the catalogue nor in an earlier row."""
    known = {_key(row.exercise.id, row.variation, value) for row in rows for value in row.holder.activity}
    found: list[Row] = []
    for row in rows:
        key = _key(row.exercise.id, row.variation, row.measurement)
        found += [] if key in known else [row]
        known.add(key)
    return found


def edits_of(rows: list[Row]) -> dict[Path, Callable[[str], Edited]]:
    """Return, for each exercise's file, what brings its rows into its text."""
    found: dict[Path, list[Row]] = {}
    for row in rows:
        found.setdefault(Path(row.exercise.place.path), []).append(row)
    return {path: partial(_with_rows, rows=tuple(some)) for path, some in found.items()}


def _with_rows(text: str, rows: tuple[Row, ...]) -> Edited:
    edited: Edited = text
    for holder, values in _from_below(rows[0].exercise, rows):
        edited = _added(edited, holder, values) if isinstance(edited, str) else edited
    return edited


def _from_below(
    exercise: Exercise, rows: tuple[Row, ...]
) -> Iterator[tuple[Exercise | Variation, list[Mapping[str, Value]]]]:
    """Yield each holder with its new values, the last in the file first: no place moves before its turn."""
    by_holder: dict[int, tuple[Exercise | Variation, list[Mapping[str, Value]]]] = {}
    for row in rows:
        by_holder.setdefault(id(row.holder), (row.holder, []))[1].append(row.typed)

    def reach(holder: Exercise | Variation) -> tuple[bool, Place]:
        # A list of its own is begun at the very end of the exercise's file.
        return holder is exercise and "activity" not in holder.places, holder.at("activity")

    yield from sorted(by_holder.values(), key=lambda item: reach(item[0]), reverse=True)


def _added(text: str, holder: Exercise | Variation, values: list[Mapping[str, Value]]) -> Edited:
    if "activity" not in holder.places:
        return with_entry(text, holder.place, "activity", values)
    edited: Edited = text
    for value in values:
        edited = with_item(edited, holder.at("activity"), value) if isinstance(edited, str) else edited
    return edited


def _key(exercise: str, variation: Variation | None, value: Measurement) -> tuple[object, ...]:
    name = variation.id if variation else ""
    return (exercise, name, value.study, value.muscle, value.mean, value.sd, value.n, value.at_place)


def _row(table: _Table, cells: Mapping[str | None, str | None], place: Place) -> Row | None:
    """Return a row, or report every reason why it fits nowhere."""
    before = len(table.problems)
    if None in cells or None in cells.values():
        table.problems.append(BAD_ROW.at(place, "the row has more or fewer cells than the header"))
        return None
    told = {str(key): " ".join(str(value).split()) for key, value in cells.items()}
    target = _target(table, told["exercise"], place)
    typed = _typed(table, told, place)
    measurement = _measurement(table, typed, place)
    if target is None or measurement is None or len(table.problems) > before:
        return None
    return Row(*target, measurement, typed)


def _target(table: _Table, name: str, place: Place) -> tuple[Exercise, Variation | None] | None:
    """Return the exercise, or exercise and variation, that ``exercise`` or ``exercise/variation`` names."""
    id_, _, form = name.replace("_", "-").partition("/")
    exercise = table.catalogue.exercises.get(id_)
    if exercise is None:
        remedy = did_you_mean(id_, table.catalogue.exercises) or f"write it first, with: new exercise {id_}"
        table.problems.append(BAD_ROW.at(place, f"there is no exercise {shown(id_)}", remedy))
        return None
    if form and form not in exercise.variations:
        message = f"'{id_}' has no variation {shown(form)}"
        table.problems.append(BAD_ROW.at(place, message, did_you_mean(form, exercise.variations)))
        return None
    return exercise, exercise.variations.get(form)


def _typed(table: _Table, told: Mapping[str, str], place: Place) -> dict[str, Value]:
    """Return the row as an editor would have typed it."""
    typed: dict[str, Value] = {
        key: told[column] for column, key in COLUMNS.items() if told.get(column) and key != "load"
    }
    typed["load"] = told.get("load") or table.load
    if not typed["load"]:
        table.problems.append(BAD_ROW.at(place, "the row does not state 'load'", _SAY_LOAD))
        typed["load"] = "not stated"  # the row is refused; what else is wrong with it is said too
    typed["muscle"] = str(typed.get("muscle", "")).replace("_", "-")
    typed["study"] = _study(table.catalogue, str(typed.get("study", "")))
    for column in STATUSES:
        if told[column] not in _READ:
            message = f"{column} is {shown(told[column])}, wanted is checked or memory"
            table.problems.append(BAD_ROW.at(place, message))
    if "median" in " ".join(told.values()).lower() and "statistic" not in typed:
        message = "the row speaks of a median, but no column 'statistic' says whether the value is one"
        table.problems.append(BAD_ROW.at(place, message))
    typed["read"] = [key for column, key in STATUSES.items() if _READ.get(told[column]) and key in typed]
    return typed


def _study(catalogue: Catalogue, key: str) -> str:
    """Return the id of the study that a key means; hyphens are left out in some tables."""
    meant = [
        id_ for id_ in catalogue.studies if id_.replace("-", "") == key.replace("_", "").replace("-", "")
    ]
    return meant[0] if len(meant) == 1 else key


def _measurement(table: _Table, typed: Mapping[str, Value], place: Place) -> Measurement | None:
    """Return the measurement as the reader would read it, or report what the reader says."""
    entries: list[tuple[Scalar, Node]] = []
    for key, value in typed.items():
        node: Node = Scalar(place, str(value), False)
        if key == "read" and not isinstance(value, str | Mapping):
            node = Items(place, tuple(Scalar(place, str(item), False) for item in value))
        entries.append((Scalar(place, key, False), node))
    findings = Findings()
    read = Group(MEASUREMENT).read(Entries(place, tuple(entries)), findings)
    known = {"muscle": table.catalogue.muscles, "study": table.catalogue.studies}
    for reference in findings.references:
        if reference.id not in known[reference.target]:
            message = f"there is no {reference.target} {shown(reference.id)}"
            remedy = did_you_mean(reference.id, known[reference.target]) or _FIRST[reference.target]
            findings.bad(BAD_ROW, place, message, remedy)
    table.problems.extend(findings.problems)
    return None if read is BAD or findings.problems else read

"""``order`` says why this exercise before that one, with every number's doubt, as text and as data."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from generator.catalogue.moments import Contradiction, Moment, NoModel
from generator.catalogue.terms import Joint, Movement
from generator.cli.order import order
from generator.cli.shared import DONE, NOT_STARTED, PROBLEMS
from generator.steps.ordered import gravity_json, json_text, order_csv, order_json, order_of, studies_csl
from tests.content import FILES, catalogue_of, with_change, write_content
from tests.progression.measured import REPAIR, Row, content

MEASURED = {
    "easy": [Row("study-a", 24, sd=12, n=30), Row("study-b", 20, sd=9, part="peak")],
    "hard": [Row("study-a", 36, sd=12, n=30), Row("study-c", 48, sd=15, read="n")],
    "told": [],
}
JUDGED = "judged:\n  - {as: like, others: [easy], muscles: [calf], role: surgeon, reason: Looks alike.}\n"
SMALL = content(MEASURED, {"told": JUDGED})
# The keys of the pinned form; what a clinician needs besides may stand beside them.
USE = {"exercise", "place", "role", "estimate", "studies", "set_aside", "reasons"}
ESTIMATE = {"mean", "se", "low", "high", "k", "n", "q", "i_squared", "tau_squared", "basis"}


def run(folder: Path, *options: str, programme: str = "tendon-repair") -> Result:
    """Return what the command prints and its exit code."""
    arguments = [programme, "--content", str(folder), *options]
    return CliRunner().invoke(order, arguments, catch_exceptions=False, standalone_mode=False)


def test_each_place_has_number_doubt_basis_and_reasons(tmp_path: Path) -> None:
    """What is set aside, and what the numbers cannot say, stands with them."""
    result = run(write_content(tmp_path, SMALL), "--phase", "2")
    assert result.return_value == DONE
    said = " ".join(result.output.split())
    assert "low activity is not permission" in said
    assert "Phase 2: Load; band above 20, up to and including 50 %MVIC" in said
    assert "Phase 1" not in said
    assert "1 easy (strength, level 1) calf: 24.0, 95 % interval" in said
    assert "1 study, 30 people; measured inside the band - by activity: 24.0 in calf" in said
    assert (
        "set aside: study-b 20 in calf: another part of the repetition than the values in the estimate"
        in said
    )
    assert "calf: judged like easy (24.0, 95 % interval" in said
    assert "by: surgeon, because: Looks alike." in said
    assert "2 studies, 50 people; measured, partly recalled" in said


def test_people_who_did_both_are_named(tmp_path: Path) -> None:
    """In words that say what they outrank."""
    files = content({key: rows for key, rows in MEASURED.items() if rows})
    said = run(write_content(tmp_path, files)).output
    assert "1 of 1 study of both in the same people found it harder than easy, which outranks" in said


def test_a_study_can_be_left_out(tmp_path: Path) -> None:
    """The command says so, and the study is set aside for that reason."""
    said = run(write_content(tmp_path, SMALL), "--without", "study-c").output
    assert "As if these studies did not exist: study-c" in said
    assert "set aside: study-c 48 in calf: left out on purpose" in said
    assert "hang on one study" not in said


def test_places_that_hang_on_one_study_are_listed(tmp_path: Path) -> None:
    """With what would be left."""
    said = run(write_content(tmp_path, SMALL)).output
    assert "These places hang on one study:" in said
    assert "easy (phase 2): without study-a it would have 20.0" in said


def test_json_has_the_pinned_keys(tmp_path: Path) -> None:
    """A numbered format; an exercise that activity does not order has no estimate, never 0."""
    found = json.loads(run(write_content(tmp_path, SMALL), "--format", "json").output)
    assert (found["format"], found["programme"], found["phase"]) == (1, "tendon-repair", None)
    uses = {use["exercise"]: use for use in found["uses"]}
    assert all(use.keys() >= USE for use in uses.values())
    assert uses["ankle-pump"]["estimate"] is None
    assert uses["ankle-pump"]["not_measured"] == ["calf"]
    assert uses["hard"]["estimate"].keys() >= ESTIMATE
    assert (uses["hard"]["estimate"]["k"], uses["hard"]["estimate"]["n"]) == (2, 50)
    assert (uses["told"]["estimate"]["basis"], uses["told"]["estimate"]["se"]) == ("judged like easy", None)
    assert uses["told"]["estimate"]["judgement"]["reason"] == "Looks alike."
    only = json.loads(run(tmp_path, "--format", "json", "--phase", "1").output)
    assert (only["phase"], [use["phase"] for use in only["uses"]]) == (1, [1])


@pytest.mark.parametrize(
    ("arguments", "programme", "says"),
    [
        ((), "tendon-repare", "There is no programme 'tendon-repare'; did you mean 'tendon-repair'?"),
        (("--without", "study-z"), "tendon-repair", "There is no study 'study-z'; did you mean 'study-"),
        (("--phase", "3"), "tendon-repair", "'tendon-repair' has phases 1 to 2"),
    ],
)
def test_what_is_not_there_is_named(
    tmp_path: Path, arguments: tuple[str, ...], programme: str, says: str
) -> None:
    """Nothing is printed but what is wrong, and what was meant."""
    result = run(write_content(tmp_path, SMALL), *arguments, programme=programme)
    assert result.return_value == NOT_STARTED
    assert result.output.startswith(says)


def test_a_catalogue_with_errors_has_no_order(tmp_path: Path) -> None:
    """The errors are printed instead: nobody shall defend a placement with them."""
    files = with_change(FILES, REPAIR, "{above: 20, up-to: 50}", "{above: 50, up-to: 20}")
    result = run(write_content(tmp_path, files))
    assert result.return_value == PROBLEMS
    assert "band-upside-down" in result.output


def test_the_same_values_come_as_a_table() -> None:
    """One row a use, the same numbers as the JSON; text that begins like a formula is set off."""
    files = with_change(SMALL, "exercises/told.yml", "Looks alike.", "=1+1 is alike")
    catalogue = catalogue_of(files)
    found = order_of(catalogue, "tendon-repair")
    rows = list(csv.DictReader(io.StringIO(order_csv(catalogue, found))))
    uses = order_json(catalogue, found)["uses"]
    assert [row["exercise"] for row in rows] == [use["exercise"] for use in uses]
    for row, use in zip(rows, uses, strict=True):
        if use["estimate"]:
            assert float(row["mean"]) == use["estimate"]["mean"]
            assert float(row["high"]) == use["estimate"]["high"]
        else:
            assert (row["mean"], row["basis"]) == ("", "not measured")
    assert not [cell for row in rows for cell in row.values() if cell.startswith("=")]
    assert "\r" not in order_csv(catalogue, found)


def test_studies_come_as_csl_json() -> None:
    """Citation Style Language 1.0.2: type, title, container-title, issued, volume apart from issue, DOI."""
    files = with_change(
        SMALL, "studies.yml", "title: Invented study-a\n", "title: A\n  volume: 39(7)\n  doi: 10.1000/a\n"
    )
    catalogue = catalogue_of(files)
    entries = json.loads(studies_csl(catalogue, order_of(catalogue, "tendon-repair")))
    assert [entry["id"] for entry in entries] == ["study-a", "study-b", "study-c"]
    first = entries[0]
    assert (first["type"], first["volume"], first["issue"], first["DOI"]) == (
        "article-journal", "39", "7", "10.1000/a",
    )  # fmt: skip
    assert first["issued"] == {"date-parts": [[2002]]}
    assert first["author"] == [{"literal": "Nobody C"}]
    assert json_text(entries) == studies_csl(catalogue, order_of(catalogue, "tendon-repair"))


def test_the_download_says_what_gravity_asks_and_that_it_orders_nothing() -> None:
    """Each form with its newton metres or the reason why there are none; basis and source beside them."""
    both = (Joint.HIP, Movement.ABDUCTION)
    moments = {"one": Moment("one", *both, 41.2), "two": Moment("two", *both, None, NoModel.LOADED)}
    told = gravity_json(moments, (Contradiction(2, "one", "two", 41.2, 15.0),))
    assert told["basis"].startswith("modelled, gravity only")
    assert (told["mass_kg"], told["stature_m"]) == (70.0, 1.7)
    assert [(one["newton_metres"], one["no_model"]) for one in told["forms"]] == [
        (41.2, None),
        (None, NoModel.LOADED.value),
    ]
    assert [(one["phase"], one["easier"], one["harder"]) for one in told["against_the_order"]] == [
        (2, "one", "two")
    ]

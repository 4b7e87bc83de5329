"""Builds once in a process of its own and tells what it took, for measurements that compare builds."""

from __future__ import annotations

import json
import resource
import sys
from dataclasses import dataclass
from pathlib import Path

from generator.pipeline import Request, build_site
from generator.problems import as_text
from generator.steps.kinds import Kinds
from generator.steps.measure import Cost, run_command, timed

_TOLD = "built.json"


@dataclass(frozen=True)
class Built:
    """A build with its cost. made: what was made and not taken from earlier.

    peak, worker: the most MB that the main process, and the largest of its workers, had at a time.
    """

    cost: Cost
    pages: int
    booklets: int
    made: int
    peak: float
    worker: float


def build_once(content: Path, folder: Path, root: Path) -> Built:
    """Build a content into ``site`` below `folder`, with ``work`` beside it, where earlier builds are kept.

    Raises RuntimeError where nothing is published: there is nothing to compare then.
    """
    command = [sys.executable, "-m", "generator.steps.one_build", str(content), str(folder)]
    cost = timed(lambda: run_command(command, root))
    return Built(cost, **json.loads((folder / _TOLD).read_text("utf-8")))


def _build(content: Path, folder: Path) -> None:
    request = Request(content, folder / "site", Path.cwd(), folder / "work", 2, Kinds.STANDARD)
    outcome = build_site(request, lambda _: None)
    if not outcome.published:
        raise SystemExit("\n".join(as_text(problem) for problem in outcome.problems))
    found: dict[str, float] = {
        "pages": outcome.page_count,
        "booklets": outcome.booklet_count,
        "made": len(outcome.anew),
    }
    # Linux counts it in KB, macOS in bytes.
    unit = 1_000_000 if sys.platform == "darwin" else 1_000
    found["peak"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / unit
    found["worker"] = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / unit
    (folder / _TOLD).write_text(json.dumps(found), "utf-8")


if __name__ == "__main__":
    _build(Path(sys.argv[1]), Path(sys.argv[2]))

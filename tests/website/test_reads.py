"""The site builder opens what was written for it, the theme and the program, and asks nobody for anything."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.content import FILES, with_change
from tests.website.small_site import PROJECT, prepare, site_inputs

# Every file that Python opens, and every connection, raises an audit event (PEP 578).
SCRIPT = """
import json, os, sys
from pathlib import Path
from generator.website import engine
told = []
def note(event, values):
    if event == "open" and isinstance(values[0], (str, bytes)):
        told.append(["open", os.path.abspath(os.fsdecode(values[0]))])
    elif event.startswith("socket.") and event not in ("socket.__new__", "socket.gethostname"):
        told.append([event, str(values[1:])])
sys.addaudithook(note)
language, direction, pages, output, config = sys.argv[1:6]
found = engine._build(engine.SiteJob(language, direction, Path(pages), Path(output), Path(config)))
Path(sys.argv[6]).write_text(json.dumps([told, [problem.message for problem in found]]))
"""
# Of the system: time zones and kinds of files, which the standard library looks up.
TABLES = tuple(map(Path, ("/dev/null", "/usr/share/zoneinfo", "/etc/localtime", "/etc/mime.types")))
WAYS = "![x](file:///etc/passwd) [x](/etc/passwd) !include /etc/passwd http://localhost/x"


@pytest.mark.slow
def test_only_written_pages_theme_and_program_are_opened(tmp_path: Path, fonts: Path) -> None:
    """Texts that name a system file and the machine itself in the ways of Markdown lead to nothing."""
    files = with_change(FILES, "exercises/heel-raise.yml", "feel: Work in both calves.", f'feel: "{WAYS}"')
    (job,) = prepare(tmp_path / "small", fonts, site_inputs(files, ("en",))).jobs
    answer = tmp_path / "answer.json"
    words = (job.language, job.direction, job.pages, job.output, job.config, answer)
    command = [sys.executable, "-c", SCRIPT, *map(str, words)]
    subprocess.run(command, cwd=PROJECT, check=True, env={**os.environ, "PYTHONPATH": str(PROJECT)})
    told, found = json.loads(answer.read_text(encoding="utf-8"))
    assert found == []
    ours = (tmp_path / "small", PROJECT, Path(sys.prefix), Path(sys.base_prefix), *TABLES)
    strange = [(event, what) for event, what in told if event != "open" or not _within(what, ours)]
    assert strange == []
    assert sum(what.startswith(str(job.pages)) for _, what in told) > 10


def _within(path: str, folders: tuple[Path, ...]) -> bool:
    return any(Path(path).resolve().is_relative_to(folder.resolve()) for folder in folders)

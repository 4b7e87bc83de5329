"""A small project to start for real: the starting room, a stand-in for the program, locks of tiny wheels."""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import signal
import subprocess
import sys
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]

PROGRAM = """
import sys
import tiny_run
print("program", *sys.argv[1:])
sys.exit(7)
"""


def _heed_ctrl_c() -> None:
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def python_with_pip() -> Path:
    """Return a Python with pip: the one the tests run on, or the one that its environment was made with."""
    if importlib.util.find_spec("pip"):
        return Path(sys.executable)
    return Path(sys.base_prefix) / "bin" / f"python{sys.version_info.major}.{sys.version_info.minor}"


def write_wheel(folder: Path, name: str, version: str) -> str:
    """Write a wheel with one module named like it, and return its line for a lock file."""
    path = folder / f"{name}-{version}-py3-none-any.whl"
    info = f"{name}-{version}.dist-info"
    files = {
        f"{name}.py": f"VERSION = '{version}'\n",
        f"{info}/METADATA": f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n",
        f"{info}/WHEEL": "Wheel-Version: 1.0\nGenerator: tests\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    record = "".join(f"{file},,\n" for file in [*files, f"{info}/RECORD"])
    with zipfile.ZipFile(path, "w") as wheel:
        for file, text in {**files, f"{info}/RECORD": record}.items():
            wheel.writestr(file, text)
    return f"{name}=={version} --hash=sha256:{hashlib.sha256(path.read_bytes()).hexdigest()}\n"


@dataclass(frozen=True)
class Project:
    """A project folder and a folder of wheels beside it."""

    root: Path
    wheels: Path

    @property
    def venv(self) -> Path:
        """The environment that a start makes."""
        return self.root / ".venv"

    @property
    def stamp(self) -> Path:
        """The stamp that a start leaves."""
        return self.venv / "phasebook-stamp.json"

    def lock(self, kind: str, *lines: str) -> None:
        """Write a lock file."""
        path = self.root / ".locks" / f"{kind}.txt"
        path.parent.mkdir(exist_ok=True)
        path.write_text("".join(lines), encoding="utf-8")

    def begin(
        self, *arguments: str, python: Path | None = None, env: Mapping[str, str] | None = None
    ) -> subprocess.Popen[str]:
        """Start `python -m generator` in the project, as a user would, in a process group of its own."""
        inherited = {name: value for name, value in os.environ.items() if name != "CI"}
        return subprocess.Popen(
            [python or python_with_pip(), "-m", "generator", *arguments],
            cwd=self.root,
            env={**inherited, **(env or {})},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            start_new_session=True,
            # A shell that starts the tests in the background lets them ignore Ctrl-C, and so all they start.
            preexec_fn=_heed_ctrl_c,
        )

    def start(self, *arguments: str, python: Path | None = None) -> subprocess.CompletedProcess[str]:
        """Start and wait."""
        process = self.begin(*arguments, python=python)
        out, err = process.communicate(timeout=120)
        return subprocess.CompletedProcess(process.args, process.returncode, out, err)

    def build(self, *, python: Path | None = None) -> subprocess.CompletedProcess[str]:
        """Start the stand-in with the wheels at hand; no index is asked."""
        return self.start("build", "--wheels", str(self.wheels), python=python)


def make_project(folder: Path) -> Project:
    """Make a project whose run lock has one tiny package and whose test lock has one more."""
    project = Project(folder / "project", folder / "wheels")
    project.wheels.mkdir()
    program = project.root / "generator" / "cli"
    program.mkdir(parents=True)
    (program / "__init__.py").touch()
    (program / "__main__.py").write_text(PROGRAM, encoding="utf-8")
    for name in ("__init__.py", "__main__.py"):
        shutil.copy(ROOT / "generator" / name, project.root / "generator" / name)
    shutil.copytree(
        ROOT / "generator" / "start",
        project.root / "generator" / "start",
        ignore=shutil.ignore_patterns("__pycache__"),
    )
    run_line = write_wheel(project.wheels, "tiny_run", "1.0")
    project.lock("run", run_line)
    project.lock("test", run_line, write_wheel(project.wheels, "tiny_test", "1.0"))
    return project

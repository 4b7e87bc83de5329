"""The locks name every package once, exactly, and for everybody; what is packed matches what is there."""

import ast
import fnmatch
import importlib.metadata
import json
import re
import sys
import tomllib
from typing import Any

import pytest

from tests.start.project import ROOT

PIN = re.compile(r"(?m)^([a-z0-9][a-z0-9.-]*)==(\S+)")


def lock(kind: str) -> str:
    """Return the text of a lock."""
    return (ROOT / ".locks" / f"{kind}.txt").read_text(encoding="utf-8")


def entries(kind: str) -> set[str]:
    """Return the entries of a lock, each with its marker and hashes."""
    return set(re.split(r"(?m)^(?=[a-z0-9])", lock(kind))[1:])


def plain_name(pin: str) -> str:
    """Return the name of a pinned distribution in the form that package indexes compare (PEP 503)."""
    return re.sub(r"[-_.]+", "-", pin.split("==")[0]).lower()


def imports(node: ast.AST) -> list[str]:
    """Return the modules that a statement imports."""
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    return [node.module] if isinstance(node, ast.ImportFrom) and node.module else []


@pytest.fixture(scope="module")
def project_table() -> dict[str, Any]:
    """Read pyproject.toml."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("kind", ["run", "test"])
def test_every_entry_is_exact_and_has_a_hash(kind: str) -> None:
    """Each entry is one version with at least one SHA-256 (pip's hash-checking mode needs both)."""
    for entry in entries(kind):
        assert PIN.match(entry), entry
        assert re.search(r"--hash=sha256:[0-9a-f]{64}", entry), entry


@pytest.mark.parametrize("kind", ["run", "test"])
def test_lock_names_no_host_and_says_how_it_is_made(kind: str) -> None:
    """A clinic with an index of its own can use the lock; its head leads to the way of making it."""
    assert "://" not in lock(kind)
    assert "index-url" not in lock(kind)
    assert "'Locks' in DEVELOPERS.md" in lock(kind).split("==")[0]


def test_lock_for_tests_holds_the_one_for_running() -> None:
    """What is tested is what runs: every entry for running is in the lock for tests, unchanged."""
    assert entries("run") < entries("test")


def test_every_machine_gets_the_same_versions() -> None:
    """No package has two versions for two Pythons, or a booklet could differ between two machines."""
    names = [name for name, _ in PIN.findall(lock("test"))]
    assert sorted(set(names)) == names


def test_declared_dependencies_are_the_locked_ones(project_table: dict[str, Any]) -> None:
    """pyproject.toml pins exactly what the locks install, so that both ways of installing agree."""
    declared = project_table["project"]
    for kind, wanted in (
        ("run", declared["dependencies"]),
        ("test", declared["optional-dependencies"]["test"]),
    ):
        locked = {f"{name}=={version}" for name, version in PIN.findall(lock(kind))}
        assert {plain_name(pin) + "==" + pin.split("==")[1] for pin in wanted} <= locked
    assert all("==" in pin for pin in project_table["build-system"]["requires"])


def test_what_the_program_imports_is_declared(project_table: dict[str, Any]) -> None:
    """Every third-party import is a dependency of its own, not one that another happens to bring."""
    providers = importlib.metadata.packages_distributions()
    imported = {
        name.split(".")[0]
        for path in (ROOT / "generator").rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        for name in imports(node)
    } - {"generator", "pytest", *sys.stdlib_module_names}
    declared = {plain_name(pin) for pin in project_table["project"]["dependencies"]}
    assert len(imported) > 3
    assert [
        name
        for name in sorted(imported)
        if not declared & {plain_name(one) for one in providers.get(name, ())}
    ] == []


def test_html_checker_is_pinned_with_a_hash_and_without_a_host() -> None:
    """The lock of npm names a checksum for the HTML checker and no registry."""
    text = (ROOT / ".locks" / "npm" / "package-lock.json").read_text(encoding="utf-8")
    checker = json.loads(text)["packages"]["node_modules/vnu-jar"]
    assert checker["integrity"].startswith("sha512-")
    assert "://" not in text


def test_every_data_file_is_packed(project_table: dict[str, Any]) -> None:
    """A template, style or catalogue of messages beside the code is also in the built package."""
    patterns = project_table["tool"]["setuptools"]["package-data"]["*"]
    data = [
        path
        for path in (ROOT / "generator").rglob("*")
        if path.is_file() and path.suffix not in {".py", ".pyc"}
    ]
    left_out = [path for path in data if not any(fnmatch.fnmatch(f"/{path.name}", p[2:]) for p in patterns)]
    assert left_out == []

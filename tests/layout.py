"""Reads the generator's source as text and says where it breaks the rules of the house.

Rooms, who may import whom, which library lives where, budgets: the rules behind the map in DEVELOPERS.md.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

MOST_LINES = 300
MOST_FUNCTION_LINES = 40
ALL = "every room"

# What a room may import of the others, besides its own modules.
_BELOW = frozenset({"problems", "catalogue"})
ROOMS: Mapping[str, frozenset[str]] = {
    "problems": frozenset(),
    "catalogue": frozenset({"problems"}),
    "shelf": frozenset(),
    "pool": frozenset(),
    "reading": _BELOW,
    "body": _BELOW,
    "wording": _BELOW,
    "publish": _BELOW | {"shelf", "pool"},
    "progression": _BELOW | {"body"},
    "figures": frozenset({"problems", "body"}),
    "review": _BELOW | {"wording"},
    "editing": _BELOW | {"reading"},
    "checks": _BELOW | {"progression", "body", "wording", "review"},
    "website": _BELOW | {"figures", "wording", "shelf", "pool"},
    "booklets": _BELOW | {"figures", "wording", "shelf", "pool"},
    "pipeline": frozenset({ALL}),
    # The steps are the pipeline's own sentences, one level down.
    "steps": frozenset({ALL}),
    "cli": _BELOW | {"pipeline", "steps", "editing"},
    "start": frozenset(),
    "__main__": frozenset({"start"}),
    "__init__": frozenset(),
}
# In which rooms a library may be imported; beside these only the standard library.
LIBRARIES: Mapping[str, frozenset[str]] = {
    "yaml": frozenset({"reading"}),
    "babel": frozenset({"wording"}),
    "mkdocs": frozenset({"website"}),
    "weasyprint": frozenset({"booklets"}),
    "segno": frozenset({"booklets"}),
    "pypdf": frozenset({"booklets"}),
    "pypdfium2": frozenset({"booklets", "publish"}),
    "pikepdf": frozenset({"booklets", "publish"}),
    "bs4": frozenset({"publish"}),
    "jinja2": frozenset({"website", "booklets"}),
    # Text that is safe to set into HTML is made by wording, and set by the two that write HTML.
    "markupsafe": frozenset({"wording", "website", "booklets"}),
    # Reads the fonts' own tables, to cut them down and to know their glyphs.
    "fontTools": frozenset({"website", "booklets"}),
    "click": frozenset({"cli"}),
    "scipy": frozenset({"progression", "body"}),
    "numpy": frozenset({"progression", "body", "figures"}),
    # The start's summary is told to pytest as a plugin.
    "pytest": frozenset({"start"}),
    # Joins and offsets outlines of limbs.
    "shapely": frozenset({"figures"}),
}
# Where something may be printed; the start speaks before any other room can be imported.
_WRITERS = tuple(
    f"sys.{stream}.{call}"
    for stream in ("stdout", "stderr")
    for call in ("write", "writelines", "buffer.write")
)
PRINTERS = ("generator/cli/", "generator/__main__.py", "generator/start/command.py")


def room_of(path: str) -> str:
    """Return the room of a module, such as ``reading`` for ``generator/reading/nodes.py``."""
    return path.removeprefix("generator/").split("/")[0].removesuffix(".py")


def broken_rules(path: str, source: str) -> list[str]:
    """Return each broken rule as ``path:line: what is wrong``; `path` is seen from the project."""
    tree = ast.parse(source)
    found = [
        *_imports(path, tree),
        *_budgets(source, tree),
        *_first_words(tree),
        *(() if path.startswith(PRINTERS) else _prints(tree)),
    ]
    return [f"{path}:{line}: {message}" for line, message in sorted(found)]


def broken_rules_of(folder: Path) -> list[str]:
    """Return the broken rules of every module below ``generator/`` of the project's folder."""
    found: list[str] = []
    for path in sorted(folder.glob("generator/**/*.py")):
        found += broken_rules(path.relative_to(folder).as_posix(), path.read_text(encoding="utf-8"))
    return found


def _imports(path: str, tree: ast.Module) -> Iterator[tuple[int, str]]:
    room = room_of(path)
    for line, name in _imported(tree):
        top, _, rest = name.partition(".")
        if top == "generator":
            other = rest.split(".")[0]
            allowed = ROOMS.get(room, frozenset())
            if other != room and other not in allowed and ALL not in allowed:
                yield line, f"{room} may not import {other or 'the package itself'}"
        elif top in sys.stdlib_module_names:
            continue
        elif room not in LIBRARIES.get(top, frozenset()):
            yield line, f"the library {top} does not live in {room}"


def _imported(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Yield each imported module with its line, imports inside functions and under conditions included."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level:
            yield node.lineno, "generator"
        elif isinstance(node, ast.ImportFrom) and node.module == "generator":
            yield from ((node.lineno, f"generator.{alias.name}") for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.lineno, node.module or ""
        elif isinstance(node, ast.Call) and _name_of(node) in ("import_module", "__import__"):
            # A name that is worked out at run time counts as the package itself, which no room may import.
            first = node.args[0] if node.args else None
            yield node.lineno, str(first.value) if isinstance(first, ast.Constant) else "generator"


def _budgets(source: str, tree: ast.Module) -> Iterator[tuple[int, str]]:
    lines = len(source.splitlines())
    if lines > MOST_LINES:
        yield 1, f"the module has {lines} lines, the budget is {MOST_LINES}"
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            length = (node.end_lineno or node.lineno) - node.lineno + 1
            if length > MOST_FUNCTION_LINES:
                yield node.lineno, f"{node.name} has {length} lines, the budget is {MOST_FUNCTION_LINES}"


def _first_words(tree: ast.Module) -> Iterator[tuple[int, str]]:
    words = ast.get_docstring(tree) or ""
    first = words.split("\n\n")[0].strip()
    if not first.endswith((".", ":")) and ". " not in first:
        yield 1, "the module does not begin with a sentence that says why it exists"


def _prints(tree: ast.Module) -> Iterator[tuple[int, str]]:
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        written = isinstance(node.func, ast.Attribute) and ast.unparse(node.func) in _WRITERS
        if written or _name_of(node) in ("print", "echo", "secho"):
            yield node.lineno, "only the command line prints"


def _name_of(call: ast.Call) -> str:
    """Return the last name of what is called, such as ``echo`` for ``click.echo()``."""
    return ast.unparse(call.func).rpartition(".")[2]

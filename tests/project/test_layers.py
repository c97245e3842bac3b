"""The rooms of the house: nothing imports upwards, late imports and type-only ones included."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "estimator"
# Lowest first; the order is the plan of the house. `catalog` may use the ground alone.
ROOMS = (
    "ground", "tables", "survey", "route", "takeoff", "rules", "drawing", "catalog", "pricing",
    "ledger", "outputs", "cli",
)  # fmt: skip
PURE = ("route", "takeoff", "rules", "drawing")
PURE_FILES = (
    "ledger/compare.py",
    "ledger/entries.py",
    "ledger/events.py",
    "ledger/roll_up.py",
    "pricing/engine.py",
)
WORLD = {"os", "sys", "pathlib", "time", "random", "socket", "subprocess", "tempfile", "shutil"}
HEAVY = {"pandas", "numpy", "openpyxl", "babel", "highspy"}
LATE = {
    "estimator.catalog.large",
    "estimator.catalog.large_columns",
    "estimator.outputs.book",
    "estimator.outputs.book_chart",
    "estimator.outputs.book_lines",
    "estimator.outputs.book_parts",
    "estimator.outputs.book_styles",
    "estimator.pricing.risk_draws",
    "estimator.pricing.risk_price",
    "estimator.pricing.risk_sim",
}
MODULES = sorted(PACKAGE.rglob("*.py"))


def imported(path: Path) -> Iterator[tuple[str, bool]]:
    """Every module that a file imports, and whether the import runs when the file is loaded."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    late = {id(inner) for node in ast.walk(tree) if _is_late(node) for inner in ast.walk(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((alias.name, id(node) not in late) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written in full"
            yield node.module or "", id(node) not in late
            yield from ((f"{node.module}.{name.name}", id(node) not in late) for name in node.names)


def _is_late(node: ast.AST) -> bool:
    if isinstance(node, ast.If):
        return ast.unparse(node.test) == "TYPE_CHECKING"
    return isinstance(node, ast.FunctionDef)


def room_of(module: str) -> str | None:
    """The room of one of our modules; None for other packages and for `estimator` itself."""
    parts = module.split(".")
    if parts[0] != "estimator" or len(parts) == 1:
        return None
    if (PACKAGE / f"{parts[1]}.py").exists():
        return "ground"
    return parts[1] if (PACKAGE / parts[1]).is_dir() else None


def room_of_file(path: Path) -> str | None:
    parts = path.relative_to(PACKAGE).parts
    if len(parts) > 1:
        return parts[0]
    return None if parts[0] in ("__init__.py", "__main__.py") else "ground"


def may_import(room: str, other: str) -> bool:
    if room == "catalog":
        return other in ("ground", "catalog")
    return ROOMS.index(other) <= ROOMS.index(room)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_nothing_imports_upwards(path: Path) -> None:
    room = room_of_file(path)
    if room is None:
        return
    rooms = {(module, room_of(module)) for module, _ in imported(path)}
    upward = [module for module, other in rooms if other and not may_import(room, other)]
    assert not upward


def test_an_upward_import_would_be_seen() -> None:
    assert not may_import("survey", "takeoff")
    assert not may_import("catalog", "rules")
    assert not may_import("ground", "tables")
    assert may_import("pricing", "catalog")


def test_late_and_type_only_imports_are_looked_at(tmp_path: Path) -> None:
    path = tmp_path / "late.py"
    path.write_text(
        "def f():\n    import estimator.cli\nif TYPE_CHECKING:\n    import estimator.a\n"
    )
    assert list(imported(path)) == [("estimator.cli", False), ("estimator.a", False)]


def test_every_folder_is_a_room() -> None:
    folders = {path.name for path in PACKAGE.iterdir() if any(path.glob("*.py"))}
    assert folders == set(ROOMS) - {"ground"}


@pytest.mark.parametrize(
    "path",
    [path for path in MODULES if room_of_file(path) in PURE]
    + [PACKAGE / name for name in PURE_FILES],
    ids=lambda path: str(path.relative_to(PACKAGE)),
)
def test_a_stage_sees_records_only(path: Path) -> None:
    """No file, clock or environment inside a stage: same records in, same records out."""
    packages = {module.split(".")[0] for module, _ in imported(path)}
    assert not packages & WORLD


def at_load(path: Path) -> set[str]:
    """The modules that are loaded with a module."""
    return {module for module, now in imported(path) if now}


def test_heavy_packages_load_late() -> None:
    """What costs start-up time is imported where it is used, or in a module that loads late."""
    for path in MODULES:
        loaded = at_load(path)
        heavy = {module.split(".")[0] for module in loaded} & HEAVY
        late_ones = loaded & LATE
        assert name_of(path) in LATE or not (heavy or late_ones), path


def test_the_list_of_late_modules_has_no_stale_name() -> None:
    assert {name_of(path) for path in MODULES} >= LATE


def name_of(path: Path) -> str:
    return ".".join(("estimator", *path.relative_to(PACKAGE).with_suffix("").parts))

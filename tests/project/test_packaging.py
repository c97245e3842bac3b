"""What the package declares is what it uses."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
EXTRAS = PROJECT["project"]["optional-dependencies"]
IMPORTED_AS = {"pyicu": "icu"}
OWN = {"estimator", "tests"}
BROUGHT_ALONG = {"pydantic_core"}  # by pydantic, in step with it
OF_THE_OFFICE = {"uno", "com"}  # LibreOffice's own Python (python3-uno), for its scripting


def declared(lines: list[str]) -> set[str]:
    """Names to import for requirement lines such as "tree-sitter>=0.22"."""
    names = [re.split(r"[<>=!~\[; ]", line, maxsplit=1)[0].lower() for line in lines]
    return {IMPORTED_AS.get(name, name.replace("-", "_")) for name in names}


def third_party(folder: str) -> Iterator[str]:
    """Packages that the files under a folder import from outside."""
    for path in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            yield from (name.split(".")[0] for name in names)


def outside(folder: str) -> set[str]:
    local = {path.stem for path in (ROOT / folder).rglob("*.py")} if folder == "tests" else set()
    return set(third_party(folder)) - set(sys.stdlib_module_names) - OWN - local


def test_every_dependency_is_used_and_every_use_declared() -> None:
    used = outside("estimator") - BROUGHT_ALONG
    assert used == declared(PROJECT["project"]["dependencies"])


def test_tests_use_only_what_dev_and_icu_install() -> None:
    known = declared([*PROJECT["project"]["dependencies"], *EXTRAS["dev"], *EXTRAS["icu"]])
    assert outside("tests") - BROUGHT_ALONG - OF_THE_OFFICE <= known


def test_the_readme_command_does_not_compile_anything() -> None:
    assert "icu" not in declared(EXTRAS["dev"])


@pytest.mark.parametrize("folder", ["catalogs", "samples"])
def test_the_wheel_carries_the_shipped_folders(folder: str) -> None:
    included = PROJECT["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    assert included[folder] == f"estimator/shipped/{folder}"
    assert any((ROOT / folder).iterdir())


def test_the_command_is_the_entry_point() -> None:
    assert PROJECT["project"]["scripts"] == {"estimator": "estimator.cli:main"}


@pytest.mark.parametrize("name", sorted(declared(PROJECT["project"]["dependencies"])))
def test_each_dependency_has_its_reason_in_the_developers_page(name: str) -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    reasons = page[page.index("## Dependencies and why") : page.index("## Measured")]
    assert name.replace("_", "-") in reasons

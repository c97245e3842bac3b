"""Names of settings with points between their parts, as the sheet of settings has them."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

from estimator.toml_writing import toml_key


def setting_path(name: str) -> tuple[str, ...] | None:
    """Split a name such as price.labor_rate_per_hour; None where it is no name.

    >>> setting_path("price.minimum_charge")
    ('price', 'minimum_charge')
    """
    try:
        inside: Any = tomllib.loads(f"{name} = 0")
    except (ValueError, RecursionError):
        return None
    path: list[str] = []
    while isinstance(inside, dict):
        if len(inside) != 1:
            return None
        ((key, inside),) = inside.items()
        path.append(key)
    return tuple(path)


def named_settings(values: Mapping[str, Any], above: str = "") -> Iterator[tuple[str, object]]:
    """Every single setting with its dotted name; an empty section is named too."""
    for key, value in values.items():
        name = above + toml_key(key)
        if isinstance(value, Mapping) and value:
            yield from named_settings(value, f"{name}.")
        else:
            yield name, value

"""The notice of cancellation: the user's own text, read from the file that a setting names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from estimator.problems import InputError, Problem
from estimator.settings import Shop
from estimator.text_files import read_text

SETTING = "terms.cancellation_file"
MOST_CHARACTERS = 30_000
"""More does not fit one cell of a worksheet (32,767)."""


def with_cancellation(shop: Shop, folders: Mapping[str, Path]) -> Shop:
    """The shop with the text of its notice; line ends are made plain, outer blanks dropped.

    Args:
        shop: names the file, or none.
        folders: where a name is looked up, by the layer of settings that gave it.

    Raises:
        InputError: no such file, not text, empty, or too long for a bid.
    """
    name = shop.terms.cancellation_file
    if name is None:
        return shop
    layer = shop.origin[SETTING]
    where = f"{layer}: {SETTING} ({name})"
    text = read_text(folders.get(layer, Path(layer).parent) / name, where)
    text = "\n".join(text.splitlines()).strip()
    if not text:
        write = 'Put the text of the notice into it, or write "none".'
        raise InputError([Problem(where, "the file holds no text.", write)])
    if len(text) > MOST_CHARACTERS:
        read = f"the text has {len(text)} characters and does not fit on a bid."
        write = f"Shorten it to {MOST_CHARACTERS} characters."
        raise InputError([Problem(where, read, write)])
    return replace(shop, terms=replace(shop.terms, cancellation_text=text))

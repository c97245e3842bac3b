"""What a check across the job file finds, and the words for a name that is not on file."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

from estimator.toml_lines import TomlPath

Found = tuple[TomlPath, str, str]
"""Place, what was read, what to write instead."""


def no_such(place: TomlPath, what: str, name: str, known: Iterable[str]) -> Found:
    """A name that nothing answers to, with the nearest that something does."""
    listed = sorted(known)
    near = difflib.get_close_matches(name, listed, n=1)
    guess = f'Did you mean "{near[0]}"? ' if near else ""
    return place, f'there is no {what} "{name}"', f"{guess}On file: {', '.join(listed) or 'none'}."

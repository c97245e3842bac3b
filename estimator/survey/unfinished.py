"""A job file whose questions are not all answered yet: one problem, with the command to go on."""

from __future__ import annotations

import re
import shlex
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from estimator.survey.names import Found

_LAST = "more"
"""The question that ends the first part; once it is answered, nothing is missing for a bid."""
_LACKS = re.compile("is missing| has no | needs the |typed legs$")


def go_on(raw: Mapping[str, Any], found: Sequence[Found], path: Path) -> list[Found]:
    """Put one problem, with the command to type, in the place of all that was not asked yet.

    Files that were not begun with `estimator survey`, or whose first part is answered, keep theirs.
    """
    guide = raw.get("guide")
    answered = guide.get("answered") if isinstance(guide, Mapping) else None
    if not isinstance(answered, list) or not answered or _LAST in answered:
        return list(found)
    others = [each for each in found if _LACKS.search(each[1]) is None]
    if len(others) == len(found):
        return others
    read = f"the questions are not all answered yet ({len(answered)} answered so far)"
    place = ("guide", "answered")
    return [(place, read, f"Go on with: estimator survey {shlex.quote(str(path))}"), *others]

"""The table of rules in the README, made from the rules on file.

`python -m tests.project.readme_rules` writes it anew; a test holds that it is current.
"""

from __future__ import annotations

from estimator.rules.facts import rule_rows
from tests.project.readme_fields import README, between

BEGIN, END = "<!-- rules -->", "<!-- end of rules -->"
HEADER = ("| rule | checks | where | a fail |", "|---|---|---|---|")
PLACES = {"US": "US", "CA": "Canada", "any": "everywhere"}
LEVELS = {
    "block": "stops the bid",
    "fix": "is put right in the bid, or stops it",
    "note": "is told",
}


def table() -> str:
    """One line a rule, group by group."""
    rows = sorted(rule_rows().values(), key=lambda row: (row["group"], row["rule"]))
    lines = (
        f"| `{row['rule']}` | {row['title']} | {PLACES[row['country']]} | {LEVELS[row['level']]} |"
        for row in rows
    )
    return "\n".join([BEGIN, "", *HEADER, *lines, "", END])


def current(text: str) -> str:
    """The part of a README between the marks."""
    return between(text, BEGIN, END)


if __name__ == "__main__":
    before = README.read_text(encoding="utf-8")
    README.write_text(before.replace(current(before), table()), encoding="utf-8")

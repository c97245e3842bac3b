"""A closed job for the terminal: estimate against actual, margin, deposit, the labor book."""

from __future__ import annotations

from decimal import Decimal

from estimator.ledger.comparison import CompareLine, Comparison, Margin
from estimator.ledger.labor_update import LaborChange, LaborUpdate
from estimator.money import show_money
from estimator.outputs.text_layout import counted, heading, number, wrapped
from estimator.outputs.text_table import table

_HEADS = ("", "Estimated", "Actual", "Difference", "")
_NONE = "-"
_HOW = (
    "n jobs weigh n / (n + credibility_jobs) against the labor book, as in insurance "
    "mathematics; for labor hours that is common practice."
)


def close_out_text(job: Comparison) -> list[str]:
    """Say where the job came out, line by line."""
    estimate = job.estimate
    title = f": {estimate.title}" if estimate.title else ""
    customer = f" ({estimate.customer})" if estimate.customer else ""
    head = f"Close-out of job {estimate.job}{title}{customer}"
    rows = [_line(job, line) for line in (*job.costs, job.total, job.price)]
    rows += [_margin(job)]
    lines = [*wrapped(head), "", *table(_HEADS, rows)]
    if len(job.phases) > 1:
        phases = [_phase(line.phase, line.hours) for line in job.phases]
        lines += [*heading("Hours by phase"), *table(_HEADS, phases)]
    return [*lines, *_elsewhere(job), *_deposit(job), *_notes(job)]


def money(job: Comparison, amount: Decimal) -> str:
    """Show money in the job's currency and locale."""
    return show_money(amount, job.estimate.currency, job.estimate.locale)


def _line(job: Comparison, line: CompareLine) -> tuple[str, ...]:
    amounts = (line.estimated, line.actual, line.difference)
    return (line.name, *(money(job, each) for each in amounts), percent(line.difference_pct))


def percent(pct: Decimal | None) -> str:
    """Show a percentage with its sign; a dash where there is none.

    >>> percent(Decimal("31.8")), percent(None)
    ('+31.8 %', '-')
    """
    return _NONE if pct is None else f"{pct:+f} %"


def _margin(job: Comparison) -> tuple[str, ...]:
    before, after = job.estimated_margin, job.actual_margin
    change = money(job, after.amount - before.amount)
    return (
        "margin",
        money(job, before.amount),
        money(job, after.amount),
        change,
        _shares(before, after),
    )


def _shares(before: Margin, after: Margin) -> str:
    """The margins as shares of their prices."""
    shown = [_NONE if each.pct is None else f"{each.pct} %" for each in (before, after)]
    return " to ".join(shown)


def _phase(name: str, hours: CompareLine) -> tuple[str, ...]:
    amounts = (hours.estimated, hours.actual, hours.difference)
    return (name, *(f"{number(each)} h" for each in amounts), percent(hours.difference_pct))


def _elsewhere(job: Comparison) -> list[str]:
    """What stands on the same papers for others."""
    if not job.elsewhere:
        return []
    rows = [
        (f"job {line.job}" if line.job else line.purpose, line.description,
         money(job, -line.gross if line.paper == "returns" else line.gross))
        for line in job.elsewhere
    ]  # fmt: skip
    return [*heading("On the same papers, not for this job"), *table(("For", "What", ""), rows, 2)]


def _deposit(job: Comparison) -> list[str]:
    """The deposit against the cap; nothing is changed."""
    check = job.deposit
    if check.cap is None:
        return []
    asked = f"Deposit asked {money(job, check.asked)}, received {money(job, check.received)}; "
    cap = f"the cap you set is {money(job, check.cap)}."
    flag = " FLAG: the deposit is over the cap." if check.over else ""
    return ["", *wrapped(f"{asked}{cap}{flag}")]


def _notes(job: Comparison) -> list[str]:
    owed = "" if job.balance_due is None else f"Still owed: {money(job, job.balance_due)}."
    said = [note for note in (*job.notes, owed) if note]
    return ["", *(line for note in said for line in wrapped(note))] if said else []


def labor_text(update: LaborUpdate, *, written: bool) -> list[str]:
    """Say what the labor book holds before and after, and whether it was written."""
    rows = [_change(change) for change in update.changes]
    heads = ("Task", "This job", "Weight", "Before", "After", "Jobs")
    lines = heading(f"Likely hours in {update.path.name}")
    lines += table(heads, rows) if rows else ["No row changes."]
    for task, why in update.left:
        lines += wrapped(f"{task}: left as it is; {why}.")
    if not rows:
        return lines
    count = counted(len(rows), "row")
    done = f"{count} written." if written else f"Nothing was written. To write {count}, add --yes."
    return [*lines, *wrapped(f"{done} {_HOW}")]


def _change(change: LaborChange) -> tuple[str, ...]:
    figures = (change.likely, change.new_likely)
    before, after = (number(each, 4) for each in figures)
    observed = number(change.observed, 4)
    return (change.task, observed, f"{change.weight_pct} %", before, after, str(change.jobs))

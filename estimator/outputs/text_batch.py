"""What a batch came to, and its progress, for the terminal."""

from __future__ import annotations

from estimator.money import show_money
from estimator.outputs.batch import FAILED, NO_JOB, PRICED, STOPPED
from estimator.outputs.batch_totals import BatchTotals
from estimator.outputs.text_layout import counted, number, printable, wrapped

LOCALE = "en_US"
MOST_SHOWN = 20
BAR_WIDTH = 40


def batch_text(totals: BatchTotals, workbook: str) -> list[str]:
    """Say how many jobs were priced and what they add up to."""
    counts = totals.counts
    said = f"{counted(totals.jobs, 'job')}: {counts[PRICED]:,} priced, "
    said += f"{counts[STOPPED]:,} stopped by a finding, {counts[FAILED]:,} not priced."
    lines = wrapped(said)
    for each in totals.by_currency.values():
        total, second = (show_money(amount, each.currency, LOCALE)
                         for amount in (each.total, each.second_total))  # fmt: skip
        sums = f"Priced, {each.currency}: {total} in {counted(each.jobs, 'job')}"
        if each.second_total != each.total:
            sums += f" ({second} if every unknown turns out badly)"
        lines += wrapped(f"{sums}; {number(each.hours)} hours, {each.visits:,} visits.")
    return [*lines, "", f"Summary: {workbook}"]


def failures_text(totals: BatchTotals) -> list[str]:
    """List what was not priced or is stopped, the first of it where there is very much."""
    lines = [
        line
        for each in totals.failures[:MOST_SHOWN]
        for line in wrapped(_failure(each.file, each.status, each.problem, each.problems))
    ]
    more = totals.counts[FAILED] + totals.counts[STOPPED] - MOST_SHOWN
    if more > 0:
        lines.append(f"... and {counted(more, 'more job')}; the summary lists them all.")
    return [*lines, *_passed_over(totals)]


def _passed_over(totals: BatchTotals) -> list[str]:
    """Name the files that are no job, the first of them where there are very many."""
    count, named = totals.counts[NO_JOB], totals.passed_over[:MOST_SHOWN]
    if not count:
        return []
    more = f" and {count - len(named):,} more" if count > len(named) else ""
    names = ", ".join(map(printable, named))
    files = counted(count, "file")
    return wrapped(f"Passed over, neither a job file nor a survey form: {files}: {names}{more}.")


def _failure(file: str, status: str, problem: str, problems: int) -> str:
    more = f" ({counted(problems - 1, 'more problem')})" if problems > 1 else ""
    return f"{printable(file)}, {status}: {printable(problem)}{more}"


def bar(done: int, of: int) -> str:
    """Draw how far a batch is, in plain signs."""
    full = BAR_WIDTH * done // of
    return f"[{'#' * full}{'.' * (BAR_WIDTH - full)}] {done:,} of {of:,}"

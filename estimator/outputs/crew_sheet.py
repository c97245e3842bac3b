"""The crew sheet: what the people who do the work need in their hand, and no price."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.guide.title_words import title_of
from estimator.language import Language
from estimator.money import show_date
from estimator.outputs.bid_words import scope_lines
from estimator.outputs.crew_boxes import boxes
from estimator.outputs.crew_cautions import cautions, tests
from estimator.outputs.crew_notes import look_first, notes, put_right
from estimator.outputs.crew_openings import openings
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart, CrewSheet, told_part
from estimator.outputs.crew_runs import runs
from estimator.outputs.crew_visits import visits
from estimator.pricing.local_bid import words_of
from estimator.pricing.records import Bid
from estimator.saying import Saying, said


def crew_sheets(bid: Bid, languages: Sequence[Language]) -> tuple[CrewSheet, ...]:
    """The same sheet in each language, line by line alike; no money stands in it."""
    parts = _parts(bid)
    return tuple(_sheet(bid, parts, language) for language in languages)


def _sheet(bid: Bid, parts: tuple[CrewPart, ...], language: Language) -> CrewSheet:
    """The sheet told in one language, its date written as that language does."""
    there = words_of(bid.survey)

    def tell(text: str) -> str:
        return language.say(there(text) if isinstance(text, Saying) else text)

    title = said("Crew sheet: {title}", title=title_of(bid.survey))
    return CrewSheet(
        language.code,
        language.say(title),
        tuple(map(language.say, _head(bid, language))),
        tuple(told_part(part, tell) for part in parts),
    )


def _head(bid: Bid, language: Language) -> Iterator[str]:
    job = bid.survey.job
    yield said("Job {job}, {customer}", job=job.id, customer=job.customer)
    if job.address:
        yield said("Address: {address}", address=job.address)
    place = language.dates(job.locale)
    if job.start_date is not None:
        yield said("Work begins: {date}", date=show_date(job.start_date, place))
    elif job.bid_date is not None:
        yield said("Date of the bid: {date}", date=show_date(job.bid_date, place))


def _parts(bid: Bid) -> tuple[CrewPart, ...]:
    work = tuple(CrewLine(text) for text in scope_lines(bid))
    return (
        cautions(bid),
        look_first(bid),
        CrewPart("work", said("The job in short"), (CrewGroup("", work),)),
        visits(bid),
        boxes(bid),
        runs(bid),
        openings(bid),
        *put_right(bid),
        tests(bid),
        notes(bid),
    )

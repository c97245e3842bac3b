"""What a clear bid states: each field of the list on file, with what this bid says of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from estimator.outputs.tax_words import TAX_MODES
from estimator.pricing.records import Bid
from estimator.settings import Terms
from estimator.tables.bid_fields import bid_fields
from estimator.tables.local_words import local_words

ON_THE_BID = "on the Bid, with its amount"
NOTHING_ASKED = "none is asked"
_TO_FILL_IN = ("fill in", "to be agreed")


@dataclass(frozen=True, slots=True)
class StatedField:
    """One field that a clear bid carries.

    Attributes:
        said: what this bid says; empty where it says nothing.
        source: key of the source that asks for it. confidence: how well the source was read.
    """

    field: str
    title: str
    said: str
    source: str
    where: str
    confidence: str


def clear_bid(bid: Bid) -> tuple[StatedField, ...]:
    """Every field of the list, in its order."""
    terms = bid.books.shop.terms
    said = {**_of_the_job(bid), **_of_the_price(bid), **_of_the_terms(terms)}
    say = local_words(bid.survey.job.country, bid.survey.job.locale)
    return tuple(
        StatedField(
            row.field,
            say(row.title),
            _filled(said[row.field]),
            row.source,
            row.where,
            row.confidence,
        )
        for row in bid_fields()
    )


def not_stated(bid: Bid) -> tuple[str, ...]:
    """Titles of the fields that the bid leaves open."""
    return tuple(each.title for each in clear_bid(bid) if not each.said)


def _filled(text: str) -> str:
    """What is said; a text that only asks to be filled in or agreed says nothing."""
    said = " ".join(text.split())
    return "" if any(word in said.lower() for word in _TO_FILL_IN) else said


def _of_the_job(bid: Bid) -> Mapping[str, str]:
    job, taken = bid.survey.job, bid.takeoff
    dated = "" if job.bid_date is None else job.bid_date.isoformat()
    days = bid.books.shop.terms.validity_days
    return {
        "number": job.id,
        "date": dated,
        "valid-until": f"{days} days from its date" if dated else "",
        "customer": job.customer,
        "address": job.address,
        "scope": f"{job.scope} (with counts)".strip(),
        "sketch": "",
        "visits": f"{len(taken.visits)}, each with the wait after it",
        "signatures": "lines for both to sign and date",
    }


def _of_the_price(bid: Bid) -> Mapping[str, str]:
    """What the price says; amounts stand on the Bid and follow the build-up there."""
    price = bid.price
    named = "; ".join(each.name for each in price.allowances)
    permit = ON_THE_BID if price.permit_cost or price.permit_handling else "none in this price"
    return {
        "status": price.form.sentence,
        "allowances": named or "none",
        "price-form": price.form.kind,
        "total": ON_THE_BID,
        "tax": TAX_MODES[price.tax_mode],
        "deposit": ON_THE_BID if price.deposit else NOTHING_ASKED,
        "payments": "; ".join(step.when for step in price.payment.steps),
        "permit-filer": price.permit_filed_by,
        "permit-fee": permit,
    }


def _of_the_terms(terms: Terms) -> Mapping[str, str]:
    return {
        "firm": f"{terms.firm_name}, {terms.firm_contact}".strip(", "),
        "license": terms.firm_license,
        "insurance": terms.insurance_line,
        "included": "; ".join(terms.included),
        "excluded": "; ".join(terms.excluded),
        "start": terms.start_line,
        "finish": terms.finish_line,
        "cleanup": terms.cleanup_line,
        "workmanship": terms.workmanship_line,
        "changes": terms.change_line,
        "lien": terms.lien_line,
        "cancellation": terms.cancellation_text,
    }

"""The fields that a clear bid states, as money facts Q5 to Q12 list them (seen there)."""

from __future__ import annotations

from estimator.tables.bid_fields import bid_fields


def test_what_a_clear_bid_states() -> None:
    """License, insurance, cancellation and liens are asked for; every row says where it is from."""
    titles = " ".join(each.title.lower() for each in bid_fields())
    assert all(word in titles for word in ("license", "insurance", "cancellation", "lien"))
    assert all(each.source and each.confidence for each in bid_fields())

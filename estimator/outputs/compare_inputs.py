"""What the Compare sheet is reckoned from: figures of the owner's, each of which may be typed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, blank, formula, line_number, number, words
from estimator.outputs.draft import UNKNOWN, Draft
from estimator.pricing.compare_parts import PATCH_AND_PAINT, PHASES, consumable_items, items_of
from estimator.pricing.compare_records import Comparison, OwnWork, Taken

HEADERS = ("Line", "What you may change", "Your figure", "Taken", "Where the figure taken is from")
NOTE = "Type your own figure; leave it empty and the figure taken is worked out again."
NOT_BOUGHT = "nothing: you do it"
_SIX = 6
_HOURS = looks.HOURS


@dataclass(frozen=True, slots=True)
class Asked:
    """One figure that may be typed.

    Attributes:
        name: defined name of the cell that holds what is taken; what is typed has the same
            with "_typed".
        typed: what the job or the shop gives; None: left empty.
        otherwise: formula for an empty cell; empty: then it is unknown. value: what is taken.
    """

    name: str
    label: str
    typed: Decimal | None
    otherwise: str
    value: Decimal | str
    form: str
    why: str


def write_inputs(draft: Draft, sheet: Sheet, made: Comparison) -> None:
    """Write the table, and name the cells."""
    asked = [*_worth(made)]
    if made.own is not None:
        asked += _own(draft, made.own)
    asked += _hires(made)
    sheet.table("Compare_figures", HEADERS, _rows(draft, sheet, asked))
    sheet.note(NOTE)


def _rows(draft: Draft, sheet: Sheet, asked: Iterable[Asked]) -> Iterator[Row]:
    for at, each in enumerate(asked, start=1):
        row = sheet.next_row
        draft.names[f"{each.name}_typed"] = sheet.ref("C", row)
        draft.names[each.name] = sheet.ref("D", row)
        entry = looks.entry(each.form)
        empty = each.otherwise or f'"{UNKNOWN}"'
        taken = formula(f'IF(C{row}="",{empty},C{row})', each.value, looks.figure(each.form))
        typed = blank(entry) if each.typed is None else number(_shown(each), entry)
        yield [line_number(at), words(each.label), typed, taken, words(each.why)]


def _shown(each: Asked) -> Decimal:
    return each.typed if each.typed is not None else Decimal(0)


def _given(name: str, label: str, taken: Taken, form: str) -> Asked:
    """A figure that the job or the shop gives, or that nobody knows."""
    value = UNKNOWN if taken.value is None else taken.value
    return Asked(name, label, taken.value, "", value, form, taken.why)


def _percent(name: str, label: str, taken: Taken) -> Asked:
    share = None if taken.value is None else taken.value.scaleb(-2)
    return _given(name, label, Taken(share, taken.stated, taken.why), looks.PERCENT)


def _worth(made: Comparison) -> Iterator[Asked]:
    yield _given("worth_of_hour", "Worth of an hour of yours", made.own_hour, looks.MONEY)


def _own(draft: Draft, own: OwnWork) -> Iterator[Asked]:
    bid = draft.bid
    yield _given("own_pace", "Pace: your hours for one likely hour", own.pace, looks.GENERAL)
    for name, label, taken, end in (
        ("own_hours", "Your hours", own.hours, "likely"),
        ("own_hours_low", "Your hours, if all goes well", own.hours_low, "low"),
        ("own_hours_high", "Your hours, if it does not", own.hours_high, "high"),
    ):
        yield _hours(draft, (name, label), taken, end)
    yield _percent("counter_tax", "Tax at the counter", own.tax_pct)
    paid = Taken(own.patch_paint, own.patch_paint is not None, NOT_BOUGHT)
    yield Asked(
        "patch_paint", "Somebody paid to patch and paint", paid.value, "0",
        Decimal(0) if paid.value is None else paid.value, looks.MONEY, NOT_BOUGHT,
    )  # fmt: skip
    yield _listed("own_parts", "Parts", own.parts, _parts_formula(draft))
    yield _listed("own_consumables", "Consumables", own.consumables, _used_formula(draft))
    permit = _given("own_permit", "Permit", own.permit, looks.MONEY)
    shops = bid.price.permit_cost and not own.permit.stated
    if shops:
        permit = Asked(permit.name, permit.label, None, "permit_cost", permit.value, permit.form,
                       permit.why)  # fmt: skip
    yield permit
    yield _percent("rework_chance", "Chance of a mistake", own.rework_chance_pct)
    yield _given("rework_cost", "What it costs to put right", own.rework_cost, looks.MONEY)


def _hires(made: Comparison) -> Iterator[Asked]:
    for at, hire in enumerate(made.hires, start=1):
        label = f"Your hours, hiring: {hire.name}"
        yield _given(f"hire_hours_{at}", label, hire.hours_taken, _HOURS)


def _hours(draft: Draft, named: tuple[str, str], taken: Taken, end: str) -> Asked:
    """Hours: typed, else those in between, else the takeoff's at the pace."""
    stated = getattr(draft.bid.survey.compare, named[0])
    book = f'IF(hours_basis="override",hours_charged,hours_{end}-{_bought_hours(draft, end)})'
    paced = f"ROUND({book}*own_pace,{_SIX})"
    if named[0] != "own_hours":
        paced = f'IF(own_hours_typed="",{paced},own_hours_typed)'
    value = taken.value if taken.value is not None else Decimal(0)
    return Asked(named[0], named[1], stated, paced, value, _HOURS, taken.why)


def _bought_hours(draft: Draft, end: str) -> str:
    """Hours of the phases that leave with somebody paid to patch and paint."""
    cells = phase_cells(draft, PHASES[PATCH_AND_PAINT], end)
    return f'IF(patch_paint_typed="",0,{added(cells)})'


def phase_cells(draft: Draft, phases: Sequence[str], end: str) -> list[str]:
    """The cells of the Labor sheet that hold the hours of some phases."""
    places = (draft.places.get((f"{end} hours", phase)) for phase in phases)
    return [place for place in places if place is not None]


def cost_cells(draft: Draft, items: Iterable[str]) -> list[str]:
    """The cells of the Shopping list that hold what some items cost."""
    places = (draft.places.get(("cost", item)) for item in items)
    return list(dict.fromkeys(place for place in places if place is not None))


def added(cells: Sequence[str]) -> str:
    """Add cells up; words among them, such as unknown, count for nothing."""
    return f"SUM({','.join(cells)})" if cells else "0"


def _listed(name: str, label: str, taken: Taken, otherwise: str) -> Asked:
    typed = taken.value if taken.stated else None
    value = taken.value if taken.value is not None else Decimal(0)
    return Asked(name, label, typed, otherwise, value, looks.MONEY, taken.why)


def _kept(draft: Draft, *, used_up: bool) -> str:
    """What the items of the owner's list cost: all, less those of somebody paid to patch."""
    bid = draft.bid
    used = consumable_items(bid)
    items = [line.item for line in bid.shopping if (line.item in used) == used_up]
    theirs = set(items_of(bid, PATCH_AND_PAINT))
    gone = cost_cells(draft, [item for item in items if item in theirs])
    whole = added(cost_cells(draft, items))
    return f'({whole}-IF(patch_paint_typed="",0,{added(gone)}))' if gone else whole


def _parts_formula(draft: Draft) -> str:
    listed = f'IF(materials_basis="override",materials_listed,{_kept(draft, used_up=False)})'
    return draft.round_to(f"{listed}*(1+counter_tax)")


def _used_formula(draft: Draft) -> str:
    used, parts = _kept(draft, used_up=True), _kept(draft, used_up=False)
    small = draft.round_to(f"({used}+{parts})*small_items_rate")
    taxed = draft.round_to(f"({used}+{small})*(1+counter_tax)")
    return f'IF(materials_basis="override",0,{taxed})'

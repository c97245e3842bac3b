"""The list of assumptions of a bid: one numbered line for each fact that nobody looked at."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from estimator.drawing.kind_words import room_called
from estimator.pricing.worst import DEAR_FACTS
from estimator.rules.records import Finding
from estimator.rules.remedies import is_taken
from estimator.saying import listed, said, several, word
from estimator.survey.records import Survey
from estimator.tables.assumed import Words, assumed_words
from estimator.takeoff.records import Assumption, Takeoff

_WHOLE_JOB = ("job", "circuit")
_KINDS = ("run", "wall", "room")
SUBJECTS = (*_WHOLE_JOB, "inspection", "survey")
"""Subjects of findings that are neither part of the job nor named by it."""
_RETURN_AIR = " return air"


def with_assumptions(
    survey: Survey, takeoff: Takeoff, findings: Sequence[Finding], *, two_totals: bool
) -> Takeoff:
    """The takeoff with the assumptions of the whole bid in place of its own.

    Each finding that is not known is named in one line: in the takeoff's line about the same
    fact where there is one, else with the others of its rule. Lines that the second total has
    come first, then others that move the price, and last what was found and the job decided to
    leave; otherwise the order is kept.

    Args:
        survey: of the way that the bid is for.
        takeoff: with its own assumptions, as `take_off` made it.
        findings: of the same way, decided.
        two_totals: the bid has a second total, with the remedies of what is not known.
    """
    unknown = [each for each in findings if each.verdict == "unknown"]
    own = {each.finding_id: _own_line(survey, takeoff, each) for each in unknown}
    lines = [
        _naming(line, [each for each in unknown if own[each.finding_id] is line], two_totals)
        for line in takeoff.assumptions
    ]
    rest = [each for each in unknown if own[each.finding_id] is None]
    lines += _by_rule(survey, [each for each in rest if not _decision(each)], two_totals)
    lines += _decided([each for each in findings if each in rest or each.verdict != "unknown"])
    lines.sort(key=lambda each: (each.decided, not each.in_second_total, not each.moves_price))
    numbered = (replace(each, number=number) for number, each in enumerate(lines, start=1))
    return replace(takeoff, assumptions=tuple(numbered))


def _own_line(survey: Survey, takeoff: Takeoff, finding: Finding) -> Assumption | None:
    """The takeoff's line about the fact that a finding hangs on."""
    for fact in _words(finding).facts:
        for line in takeoff.assumptions:
            if line.fact == fact and _concerns(survey, line.subject, finding.subject):
                return line
    return None


def _concerns(survey: Survey, of: str, subject: str) -> bool:
    """Whether a fact of one subject is a fact of the other: a wall's of the boxes and runs in it.

    A fact of the job or of the circuit is one of all.
    """
    if of in (*_WHOLE_JOB, subject):
        return True
    ends = {box.id: f"wall {box.wall}" for box in survey.boxes if box.wall is not None}
    if subject in ends:
        return ends[subject] == of
    for run in survey.runs:
        if subject == f"run {run.id}":
            named = [f"wall {wall}" for wall in run.walls]
            return of in (ends.get(run.from_box), ends.get(run.to_box), *named)
    return False


def _naming(line: Assumption, findings: list[Finding], two_totals: bool) -> Assumption:
    """The takeoff's line with the findings that hang on it, and what was decided of them."""
    decided = (words for each in findings for words in _decision(each))
    # Studs of typed legs are of no wall that the second total could make slim.
    is_set = line.fact in DEAR_FACTS and (line.fact, line.subject) != ("stud depth", "job")
    moves = _moves(findings, two_totals)
    return replace(
        line,
        taken=listed((line.taken, *decided), "; "),
        moves_price=line.moves_price or moves,
        findings=_ids(findings),
        in_second_total=moves or (is_set and two_totals),
    )


def _by_rule(survey: Survey, findings: list[Finding], two_totals: bool) -> Iterator[Assumption]:
    """One line for the findings of a rule, with the boxes, runs or walls that they are about."""
    alike: dict[str, list[Finding]] = {}
    for each in findings:
        alike.setdefault(_words(each).finding, []).append(each)
    for found in alike.values():
        words = _words(found[0])
        subjects = tuple(dict.fromkeys(each.subject for each in found))
        where = "" if words.finding == found[0].finding_id else subject_words(survey, subjects)
        about = words.about
        if where:
            about = said("{subject}: {about}", subject=where, about=words.about)
        moves = _moves(found, two_totals)
        line = Assumption(0, about, words.taken, moves, subjects[0], findings=_ids(found))
        yield replace(line, in_second_total=moves)


def _words(finding: Finding) -> Words:
    return assumed_words(finding.rule, finding.subject, finding.title)


def subject_words(survey: Survey, subjects: Sequence[str]) -> str:
    """Subjects in words, of a kind together: "boxes A, B", "run 1"; nothing for the whole job."""
    boxes = {box.id for box in survey.boxes}
    kinds: dict[str, list[str]] = {}
    for subject in subjects:
        kind, _, name = subject.partition(" ")
        if subject in boxes:
            kinds.setdefault("box", []).append(subject)
        elif kind in _KINDS and name:
            kinds.setdefault(kind, []).append(name)
        elif subject not in _WHOLE_JOB:
            kinds.setdefault("", []).append(subject)
    return listed(_named(kind, names) for kind, names in kinds.items())


def _named(kind: str, names: list[str]) -> str:
    count = len(names)
    together = listed(room_called(name) for name in names) if kind == "room" else listed(names)
    match kind:
        case "box":
            return several(count, "box {names}", "boxes {names}", names=together)
        case "run":
            return several(count, "run {names}", "runs {names}", names=together)
        case "wall":
            return several(count, "wall {names}", "walls {names}", names=together)
        case "room":
            return several(count, "room {names}", "rooms {names}", names=together)
        case _:
            return listed(subject_said(name) for name in names)


def subject_said(subject: str) -> str:
    """What one finding is about, as its id has it: "run 1", "job"; a box is called by its name."""
    kind, _, name = subject.partition(" ")
    if kind == "run" and name.endswith(_RETURN_AIR):
        return said("run {run} return air", run=name.removesuffix(_RETURN_AIR))
    if kind in _KINDS and name:
        return _named(kind, [name])
    return word(subject) if subject in SUBJECTS else subject


def _decided(findings: list[Finding]) -> Iterator[Assumption]:
    """What was found or not known, and is accepted or goes without its remedy, with the reason."""
    for each in findings:
        if each.verdict != "pass" and (reasons := _decision(each)):
            where = subject_said(each.subject)
            about = said("{title}, {subject}", title=each.title, subject=where)
            yield Assumption(
                0,
                about,
                listed(reasons, "; "),
                False,
                each.subject,
                findings=_ids([each]),
                decided=True,
            )


def _decision(finding: Finding) -> tuple[str, ...]:
    """What the job decided about a finding, with its reasons."""
    given = (
        (finding.accepted, said("accepted: {reason}", reason=finding.accepted)),
        (finding.declined, said("its remedy is declined: {reason}", reason=finding.declined)),
    )
    return tuple(words for reason, words in given if reason)


def _moves(findings: list[Finding], two_totals: bool) -> bool:
    """True where the second total has the remedy of one of them."""
    return two_totals and any(is_taken(each, bad_case=True) for each in findings)


def _ids(findings: list[Finding]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(each.finding_id for each in findings))

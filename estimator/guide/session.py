"""The survey as a dialogue, without a terminal: a state and a line in, a state and lines out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from textwrap import wrap

from estimator.guide.checked import problem_of
from estimator.guide.defaults import choices_of, default_of, is_asked, say_here
from estimator.guide.facts import pruned
from estimator.guide.questions import NO_NAME, UNKNOWN, Answers, Question, by_key, questions
from estimator.guide.typed import AnswerRefused, how_to_write, read_answer, said

WIDTH = 78
INDENT = "  "
COMMANDS = ("Enter takes what stands in [brackets]. ? explains, back asks again, undo takes",
            "the last answer away, stop ends; every answer is saved.")  # fmt: skip


@dataclass(frozen=True, slots=True)
class State:
    """Where a dialogue stands.

    Attributes:
        answers: what was answered, by key. key: the question that is asked; None at the end.
        past: the answers and the key before each answer of this sitting.
        stopped: the person asked to stop. job: the job number that Enter takes.
    """

    answers: Answers
    key: str | None
    past: tuple[tuple[Answers, str | None], ...] = field(default=())
    stopped: bool = False
    job: str = NO_NAME


def begin(answers: Answers, job: str = NO_NAME) -> State:
    """A dialogue that goes on at the first question without an answer."""
    kept = pruned(answers)
    return State(kept, next_key(kept), job=job)


def next_key(answers: Answers) -> str | None:
    """The first question to ask that has no answer; None where all of them have one."""
    return next((each.key for each in to_ask(answers) if each.key not in answers), None)


def to_ask(answers: Answers) -> Iterator[Question]:
    """The questions of this job: the first ones, and the rest where they are wanted."""
    rest = answers.get("more") == "yes"
    first = [each for each in questions() if each.first]
    others = [each for each in questions() if not each.first and rest]
    return (each for each in (*first, *others) if is_asked(each, answers))


def first_are_done(answers: Answers) -> bool:
    """True where every first question has its answer, so that a bid can be made."""
    return all(each.key in answers for each in to_ask(answers) if each.first)


def asking(state: State) -> list[str]:
    """The question as it is shown, without the prompt."""
    if state.key is None:
        return []
    question, keys = by_key()[state.key], [each.key for each in to_ask(state.answers)]
    head = f"{keys.index(state.key) + 1} of {len(keys)}: {question.section}"
    lines = ["", head, *wrap(say_here(state.answers)(question.ask), WIDTH)]
    if question.kind == "choice":
        lines += _choice_lines(question, state.answers)
    return lines


def _choice_lines(question: Question, answers: Answers) -> list[str]:
    """Each choice with its number; many short ones side by side."""
    words = list(choices_of(question, answers).values())
    numbered = [f"{number} {word}" for number, word in enumerate(words, start=1)]
    if len(numbered) <= LINES:
        return [line for each in numbered for line in _indented(each)]
    return _indented(", ".join(numbered))


LINES = 8


def _indented(text: str) -> list[str]:
    return wrap(text, WIDTH, initial_indent=INDENT, subsequent_indent=INDENT * 2)


def prompt(state: State) -> str:
    """What stands before the place to type: what Enter takes, in brackets."""
    if state.key is None:
        return "> "
    usual = offered(state)
    shown = said(by_key()[state.key], usual, state.answers) if usual else ""
    return f"[{shown}] > " if shown else "> "


def offered(state: State) -> str:
    """What Enter takes: the answer that is there, or the usual one; "" for none."""
    question = by_key()[state.key or ""]
    there = state.answers.get(question.key)
    if there is not None:
        return there
    return state.job if question.key == "job_number" else default_of(question, state.answers)


def reply(state: State, line: str) -> tuple[State, list[str]]:
    """Take one line that was typed.

    Returns:
        the next state, and the lines to show before the next question.
    """
    word = line.strip().lower()
    if state.key is None or word in ("stop", "quit"):
        return replace(state, stopped=True), []
    if word in ("?", "help"):
        return state, explained(state)
    if word == "back":
        return _back(state)
    if word == "undo":
        return _undo(state)
    return _answered(state, line)


def explained(state: State) -> list[str]:
    """What is meant, where to measure, and how to write it."""
    question = by_key()[state.key or ""]
    texts = (say_here(state.answers)(question.help), how_to_write(question, state.answers))
    return [line for text in texts for line in _indented(text)] + [
        f"{INDENT}{line}" for line in COMMANDS
    ]


def _answered(state: State, line: str) -> tuple[State, list[str]]:
    question = by_key()[state.key or ""]
    typed = line.strip() or offered(state)
    try:
        answer = read_answer(question, typed, state.answers)
        answers = pruned({**state.answers, question.key: answer.value})
        problem = problem_of(answers, question.key)
        if problem is not None:
            raise problem
    except AnswerRefused as refused:
        return state, _indented(refused.read) + _indented(refused.write)
    kept = (*state.past, (state.answers, state.key))
    notes = [line for note in answer.notes for line in _indented(f"Look again: {note}")]
    after = replace(state, answers=answers, key=next_key(answers), past=kept)
    return after, [*_indented(answer.echo), *notes]


def _back(state: State) -> tuple[State, list[str]]:
    """To the question before this one, with its answer in brackets."""
    keys = [each.key for each in to_ask(state.answers)]
    place = keys.index(state.key or "")
    if place == 0:
        return state, [f"{INDENT}This is the first question."]
    return replace(state, key=keys[place - 1]), []


def _undo(state: State) -> tuple[State, list[str]]:
    """Take the last answer away; in a new sitting, the last of the list."""
    if state.past:
        answers, key = state.past[-1]
        taken = replace(state, answers=answers, key=key, past=state.past[:-1])
        return taken, [f"{INDENT}The last answer is taken away."]
    done = [each.key for each in to_ask(state.answers) if each.key in state.answers]
    if not done:
        return state, [f"{INDENT}There is no answer to take away."]
    answers = {key: value for key, value in state.answers.items() if key != done[-1]}
    before = replace(state, answers=answers, key=done[-1])
    return before, [f"{INDENT}The last answer is taken away."]


def unknown_count(answers: Answers) -> int:
    """How many questions were answered with unknown."""
    return sum(value == UNKNOWN for value in answers.values())

"""The verbs as a teacher uses them: files, lines, exit codes."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from typeset.command import DONE, WRONG, main

VERBS = ("make", "check", "solve", "diagnose", "proof", "answers", "new")


@pytest.fixture(scope="module")
def started(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A week just begun by `typeset new`."""
    folder = tmp_path_factory.mktemp("content") / "spring-tides"
    assert main(["new", str(folder)]) == DONE
    return folder


@pytest.fixture(scope="module")
def printed(started: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """That week made."""
    to = tmp_path_factory.mktemp("printed")
    assert main(["make", str(started), "--to", str(to)]) == DONE
    return to


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_helps_with_an_example(verb: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main([verb, "--help"])
    assert ended.value.code == DONE
    assert f"example: typeset {verb} " in capsys.readouterr().out


@pytest.mark.parametrize("arguments", [[], ["print"], ["make"], ["make", "x", "--only", "poster"]])
def test_misuse_ends_with_two(arguments: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 2


def test_a_new_week_makes_at_once(
    started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["make", str(started), "--to", str(tmp_path)]) == DONE
    lines = capsys.readouterr().out.splitlines()
    assert next(line for line in lines if ".pdf" in line).split("  ")[1] == "4 sides"
    assert all(" pt  " in line and line.endswith(" s") for line in lines if ".pdf" in line)
    assert main(["proof", str(tmp_path)]) == DONE


def test_new_never_writes_over_a_week(started: Path) -> None:
    before = (started / "week.yaml").read_bytes()
    assert main(["new", str(started)]) == WRONG
    assert (started / "week.yaml").read_bytes() == before


def test_check_says_that_all_is_well(started: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(started)]) == DONE
    assert "nothing to complain about" in capsys.readouterr().out


def test_check_names_file_line_and_remedy(
    started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    week = shutil.copytree(started, tmp_path / "week")
    lesson = next(file for file in week.glob("*.yaml") if file.name != "week.yaml")
    lesson.write_text(lesson.read_text(encoding="utf-8").replace("find: gulls", "find: guls"))
    assert main(["check", str(week)]) == WRONG
    told = capsys.readouterr().err
    assert f"{lesson}:" in told and "did you mean 'gulls'?" in told
    assert told.strip().endswith("1 complaint")


def test_a_missing_week_is_a_message_not_a_traceback(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["make", str(tmp_path / "nowhere")]) == WRONG
    assert "nowhere" in capsys.readouterr().err


def test_solve_as_json_is_exact(started: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lesson = next(file for file in started.glob("*.yaml") if file.name != "week.yaml")
    assert main(["solve", str(lesson), "--json"]) == DONE
    data = json.loads(capsys.readouterr().out)
    problems = data["lessons"][0]["problems"]
    assert problems
    for problem in problems:
        assert {"id", "answer", "kind", "reason", "demand", "workings", "mistakes"} <= set(problem)
        answers = problem["answer"] if isinstance(problem["answer"], list) else [problem["answer"]]
        assert all(isinstance(answer["value"], str) for answer in answers)
        assert len(problem["workings"]) >= 1


def test_solve_in_the_terminal(started: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", str(started)]) == DONE
    told = capsys.readouterr().out
    assert "answer: 60 gulls" in told and "5 × 12 = 60" in told


def test_diagnose_names_the_mistake_and_what_to_ask(
    started: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["diagnose", str(started), "monday", "3", "180", "gulls"]) == DONE
    told = capsys.readouterr().out
    assert "written: 180 gulls" in told and "answer: 60 gulls" in told
    assert "mistake, difference taken as one part: this pupil " in told and "ask: " in told
    assert main(["diagnose", str(started), "monday", "3", "60"]) == DONE
    assert capsys.readouterr().out.splitlines()[-1].strip() == "right"


@pytest.mark.parametrize(
    ("lesson", "question", "told"),
    [
        ("munday", "1", "did you mean 'monday'?"),
        ("monday", "99", "has no question 99 with an answer; it has 1, "),
        ("monday", "monday-99", "'monday' has no question 'monday-99'; did you mean 'monday-"),
    ],
)
def test_diagnose_complains_of_what_is_not_there(
    started: Path, lesson: str, question: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["diagnose", str(started), lesson, question, "1"]) == WRONG
    assert told in capsys.readouterr().err


def test_solve_ranks_the_problems_by_difficulty(
    started: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["solve", str(started)]) == DONE
    ranking = capsys.readouterr().out.split("By difficulty, easiest first:\n")[1].splitlines()
    places = [line.split()[0] for line in ranking if "question" in line]
    assert places[0] == "1." and len(places) > 3
    assert all(": " in line for line in ranking[1 : len(places)])


def test_remarks_are_shown_and_never_stop(
    started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    week = shutil.copytree(started, tmp_path / "week")
    file = week / "week.yaml"
    file.write_text(file.read_text(encoding="utf-8") + "year: 3\n", encoding="utf-8")
    for arguments in (["check", str(week)], ["make", str(week), "--to", str(tmp_path / "to")]):
        assert main(arguments) == DONE
        told = capsys.readouterr().err
        assert "monday.yaml:" in told and "ratio and the notation a:b are Year 6" in told
    assert list((tmp_path / "to").glob("*.pdf"))


def test_one_lesson_or_one_kind(started: Path, tmp_path: Path) -> None:
    lesson = next(file.stem for file in started.glob("*.yaml") if file.name != "week.yaml")
    assert main(["make", str(started), "--to", str(tmp_path), "--lesson", lesson]) == DONE
    made = {file.name for file in tmp_path.glob("*.pdf")}
    booklet = f"{lesson}-answer-booklet.pdf"
    assert made == {f"{lesson}-task-sheet.pdf", booklet, "how-to-print.pdf"}
    assert main(["make", str(started), "--to", str(tmp_path), "--only", "answer-booklet"]) == DONE
    assert len(list(tmp_path.glob("*.pdf"))) == 4
    assert main(["proof", str(tmp_path)]) == DONE


def test_an_unknown_lesson_gets_the_nearest(
    started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["make", str(started), "--to", str(tmp_path), "--lesson", "munday"]) == WRONG
    assert "did you mean 'monday'?" in capsys.readouterr().err


def test_proof_finds_a_missing_and_a_foreign_file(
    printed: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = shutil.copytree(printed, tmp_path / "printed")
    record = folder / "made.json"
    content = json.loads(record.read_text(encoding="utf-8"))
    content["week"] = str((printed / content["week"]).resolve())
    record.write_text(json.dumps(content), encoding="utf-8")
    booklet = folder / "answer-booklet.pdf"
    booklet.rename(folder / "other.pdf")
    assert main(["proof", str(folder)]) == WRONG
    told = capsys.readouterr().err
    assert "answer-booklet.pdf: is missing" in told
    assert "other.pdf: does not belong to this week" in told


def test_proof_of_a_damaged_file_is_a_finding(
    printed: Path, started: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = next(printed.glob("*-task-sheet.pdf"))
    damaged = tmp_path / sheet.name
    damaged.write_bytes(sheet.read_bytes()[:2000])
    assert main(["proof", str(damaged), "--week", str(started)]) == WRONG
    assert sheet.name in capsys.readouterr().err

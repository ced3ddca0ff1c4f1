"""The command as a person and a pipe meet it. Photos are drawn here and read by the real engine."""

from __future__ import annotations

import json
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image, ImageDraw, ImageFont
from typer.testing import CliRunner, Result

from ocr_tags.cli import app
from ocr_tags.errors import ExitCode

COMMAND = [sys.executable, "-m", "ocr_tags"]
BACK = [
    "Purple Coneflower",
    "Echinacea purpurea",
    "Height: 24-36 in",
    "Spread: 18 in",
    "Full Sun",
    "USDA Zones 3-8",
]


def draw(path: Path, lines: list[str], size: int = 40) -> Path:
    image = Image.new("RGB", (760, 90 * len(lines) + 100), "white")
    pen = ImageDraw.Draw(image)
    for number, line in enumerate(lines):
        font = ImageFont.load_default(size if number else 2 * size if len(lines) == 1 else 56)
        pen.text((50, 60 + 90 * number), line, fill="black", font=font)
    image.save(path)
    return path


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with one tag in photos/, added to the catalogue cat/."""
    home = tmp_path_factory.mktemp("kept")
    (home / "photos").mkdir()
    draw(home / "photos" / "cone_front.png", ["Coneflower"])
    draw(home / "photos" / "cone_back.png", BACK)
    result = run("-c", str(home / "cat"), "add", str(home / "photos"))
    assert result.exit_code == 0, result.stderr
    return home


def run(*arguments: str) -> Result:
    return CliRunner().invoke(app, list(arguments))


def ask(kept: Path, *arguments: str) -> Result:
    return run("-c", str(kept / "cat"), *arguments)


def records(result: Result) -> list[dict]:  # type: ignore[type-arg]
    assert result.exit_code == 0, result.stderr
    return [json.loads(line) for line in result.stdout.splitlines()]


# ---------------------------------------------------------------- in and out


def test_what_was_added_is_found_shown_and_exported(kept: Path) -> None:
    (found,) = records(ask(kept, "find", "conefloer", "--json"))
    assert [photo["file"] for photo in found["photos"]] == ["cone_front.png", "cone_back.png"]
    assert found["fields"]["height"]["value"] == {
        "min_cm": 60.96,
        "max_cm": 91.44,
    }  # 24 in and 36 in of 2.54 cm
    assert found["fields"]["hardiness"]["value"] == {"min_zone": "3", "max_zone": "8"}
    assert found["found"]["why"]
    shown = ask(kept, "show", found["tag_id"][:6]).stdout
    assert "Echinacea purpurea" in shown and "24-36 in" in shown and "cone_back.png" in shown
    assert records(ask(kept, "export")) == records(ask(kept, "list", "--json"))
    assert "Echinacea purpurea" in ask(kept, "list").stdout


def test_filters(kept: Path) -> None:
    assert len(records(ask(kept, "find", "--zone", "5", "--light", "full_sun", "--json"))) == 1
    nothing = ask(kept, "find", "--zone", "11", "--json")
    assert nothing.exit_code == 0 and nothing.stdout == ""
    wrong = ask(kept, "find", "--zone", "warm")
    assert wrong.exit_code == ExitCode.WRONG_USE and "warm" in wrong.stderr


def test_adding_twice_changes_nothing(kept: Path) -> None:
    before = ask(kept, "export").stdout
    again = ask(kept, "add", str(kept / "photos"))
    assert again.exit_code == 0 and again.stdout == ""
    assert "cone_back.png passed over: already in tag" in again.stderr
    assert ask(kept, "export").stdout == before


def test_read_keeps_nothing_and_agrees_with_add(kept: Path, tmp_path: Path) -> None:
    (seen,) = records(run("-c", str(tmp_path / "none"), "read", "--json", str(kept / "photos")))
    (there,) = records(ask(kept, "list", "--json"))
    assert seen["fields"] == there["fields"] and not (tmp_path / "none").exists()


def test_corrections_stand_until_withdrawn(kept: Path) -> None:
    tag = records(ask(kept, "list", "--json"))[0]["tag_id"]
    (fixed,) = records(ask(kept, "correct", tag, "height", "12-18 in", "--json"))
    assert fixed["fields"]["height"]["value"] == {"min_cm": 30.48, "max_cm": 45.72}
    assert fixed["fields"]["height"]["status"] == "corrected"
    assert ask(kept, "withdraw", tag, "height").exit_code == 0
    assert records(ask(kept, "list", "--json"))[0]["fields"]["height"]["value"]["max_cm"] == 91.44
    for arguments in (["height", "wombat"], ["height"], ["heigth", "3 in"], ["height", "3 in", "--absent"]):
        result = ask(kept, "correct", tag, *arguments)
        assert result.exit_code == ExitCode.WRONG_USE and result.stderr.startswith("ocr-tags: "), arguments


def test_removing_needs_a_yes(kept: Path, tmp_path: Path) -> None:
    cat = str(tmp_path / "cat")
    draw(tmp_path / "x_back.png", BACK)
    (added,) = records(run("-c", cat, "add", str(tmp_path / "x_back.png"), "--json"))
    assert added["added"] == {"new": True, "changed": True}
    assert run("-c", cat, "remove", added["tag_id"]).exit_code == ExitCode.WRONG_USE
    assert run("-c", cat, "remove", added["tag_id"], "--yes").exit_code == 0
    assert records(run("-c", cat, "list", "--json")) == []


def test_reindex_and_check(kept: Path) -> None:
    assert ask(kept, "reindex").exit_code == 0
    (state,) = records(ask(kept, "check", "--json"))
    assert state["catalogue"]["tags"] == 1 and state["problems"] == []
    assert "Tesseract" in state["reader"] and state["settings"]["catalogue"]["from"] == "command line"


def test_fields_are_those_of_the_record() -> None:
    names = {field["name"] for field in records(run("fields", "--json"))}
    assert {"common_names", "height", "hardiness", "plant_passport"} <= names


# ---------------------------------------------------------------- what goes wrong


def test_bad_photos_are_named_and_the_rest_is_kept(tmp_path: Path) -> None:
    draw(tmp_path / "x_back.png", BACK)
    (tmp_path / "y.jpg").write_bytes(b"")
    result = run("-c", str(tmp_path / "cat"), "add", str(tmp_path))
    assert result.exit_code == ExitCode.SOME_PHOTOS_FAILED
    assert "Echinacea" in result.stdout and "ocr-tags: y.jpg is empty." in result.stderr


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (["find", "rose"], ExitCode.WRONG_USE, "There is no catalogue in"),
        (["--reader", "abacus", "read", "x.jpg"], ExitCode.WRONG_USE, "abacus"),
        (["--reader", "both", "--languages", "tlh", "read", "x.jpg"], ExitCode.NO_READER, "ocr-tags: "),
        (["--config", "none.toml", "list"], ExitCode.WRONG_USE, "none.toml does not exist"),
        (["read", "none.jpg"], ExitCode.SOME_PHOTOS_FAILED, "none.jpg does not exist"),
        (["read", "--pairs", "none.csv", "none.jpg"], ExitCode.WRONG_USE, "none.csv cannot be read"),
        (["read"], ExitCode.WRONG_USE, "PATHS"),
        (["sing"], ExitCode.WRONG_USE, "sing"),
    ],
)
def test_errors_are_one_sentence(tmp_path: Path, arguments: list[str], code: int, words: str) -> None:
    result = run("-c", str(tmp_path / "none"), *arguments)
    assert result.exit_code == code and words in result.stderr and "Traceback" not in result.stderr
    assert result.stdout == ""


def test_a_damaged_catalogue(tmp_path: Path) -> None:
    cat = tmp_path / "cat"
    cat.mkdir()
    assert run("-c", str(cat), "list").exit_code == 0
    (database,) = [path for path in cat.iterdir() if path.suffix in {".db", ".sqlite", ".sqlite3"}]
    for path in cat.glob(database.name + "*"):
        path.write_bytes(b"no database " * 500)
    result = run("-c", str(cat), "list")
    assert result.exit_code == ExitCode.CATALOGUE and result.stderr.startswith("ocr-tags: ")


def test_a_fault_of_ours_is_owned_and_traced(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    def stumble(*_: object) -> None:
        raise ZeroDivisionError("oops")

    monkeypatch.setattr("ocr_tags.commands.upkeep._reader", stumble)
    plain, traced = run("check"), run("--debug", "check")
    assert plain.exit_code == traced.exit_code == ExitCode.OUR_FAULT
    assert "ZeroDivisionError" in plain.stderr and "Traceback" not in plain.stderr
    assert "Traceback" in traced.stderr


def test_a_reader_that_stops_listening(kept: Path) -> None:
    writing = subprocess.Popen(
        [*COMMAND, "-c", str(kept / "cat"), "fields"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    assert writing.stdout and writing.stderr
    writing.stdout.close()
    assert writing.stderr.read() == b"" and writing.wait(60) == 0


def test_ctrl_c_keeps_what_was_recorded(tmp_path: Path) -> None:
    for number in range(12):
        draw(tmp_path / f"t{number:02}_back.png", [*BACK, f"Item {number}"])
    cat = str(tmp_path / "cat")
    adding = subprocess.Popen(
        [*COMMAND, "-c", cat, "add", "--json", "--workers", "1", str(tmp_path)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        bufsize=0,
        pipesize=4096,
        # Where the tests run in the background, the shell has it ignored.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    )
    assert adding.stdout
    # Two records do not fit into the pipe: unread, the command cannot get to its end before the signal.
    first = adding.stdout.read(1)
    adding.send_signal(signal.SIGINT)
    rest, errors = adding.communicate(timeout=600)
    assert adding.returncode == ExitCode.STOPPED and b"stopped" in errors and b"Traceback" not in errors
    assert 1 <= len(records(run("-c", cat, "list", "--json"))) < 12 and first == b"{"
    assert len(rest.splitlines()) < 12


# ---------------------------------------------------------------- starting


def test_help_loads_nothing_heavy() -> None:
    code = "import sys; from ocr_tags.cli import app; print(*sys.modules)"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert not {"cv2", "numpy", "whoosh", "rapidfuzz", "PIL", "pytesseract", "rich.table"} & set(
        loaded.stdout.split()
    )
    result = run("--help")
    assert result.exit_code == 0 and "find" in result.stdout


def test_finding_loads_no_reader_of_tags(kept: Path) -> None:
    """In a process of its own, with tags found and shown, as a table, as JSON and held against a zone."""
    code = "import sys, atexit; atexit.register(lambda: print(*sys.modules, file=sys.stderr))\n"
    code += "from ocr_tags.cli import main; main()"
    for more in ([], ["--explain"], ["--json"], ["--here", "zone=5b"]):
        asked = ["-c", str(kept / "cat"), "find", "purple coneflower", *more]
        command = [sys.executable, "-c", code, *asked]
        found = subprocess.run(command, capture_output=True, text=True, check=True)
        assert "Echinacea purpurea" in found.stdout
        loaded = set(found.stderr.split())
        assert "whoosh" in loaded and "ocr_tags.record_json" in loaded
        assert not {name for name in loaded if name.startswith("ocr_tags.fields")}, more
        assert (
            not {"cv2", "numpy", "PIL", "pytesseract", "rapidocr", "onnxruntime", "onnx", "shapely"} & loaded
        ), more


def test_every_command_explains_itself() -> None:
    for command in ("read", "add", "find", "list", "show", "correct", "remove", "reindex", "export", "check"):
        assert run(command, "--help").exit_code == 0


def test_version() -> None:
    assert run("--version").stdout.startswith("ocr-tags ")

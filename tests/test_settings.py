from __future__ import annotations

from dataclasses import fields
from pathlib import Path

import pytest

from ocr_tags.settings import SettingError, Settings, load_settings


def test_later_sources_win_and_say_so(tmp_path: Path) -> None:
    config = tmp_path / "config.toml"
    config.write_text('workers = 3\nlanguages = "eng+fra"\ndoubtful_below = 0.7\n', "utf-8")
    environ = {"OCR_TAGS_WORKERS": "2", "OCR_TAGS_CATALOGUE": "~/tags"}
    loaded = load_settings({"languages": "deu", "reader": None}, environ, config)
    assert loaded.settings.workers == 2 and loaded.settings.languages == "deu"
    assert loaded.settings.doubtful_below == 0.7
    assert loaded.settings.catalogue == Path.home() / "tags"
    assert loaded.origins["languages"] == "command line"
    assert loaded.origins["workers"] == "environment variable OCR_TAGS_WORKERS"
    assert loaded.origins["doubtful_below"] == f"config file {config}"
    assert loaded.origins["reader"] == "default"


def test_no_config_file_is_no_fault(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    assert load_settings({}, {}).settings == Settings()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("colour = 1", "no setting called 'colour'"),
        ('workers = "many"', "workers must be a whole number, not 'many'"),
        ("workers = true", "workers must be a whole number"),
        ("workers = 1.5", "workers must be a whole number"),
        ("workers = -1", "workers: -1 must not be negative"),
        ("doubtful_below = 80", "between 0 and 1"),
        ("languages = 3", "languages must be text"),
        ("workers =", "cannot be read"),
    ],
)
def test_bad_config_names_file_and_key(tmp_path: Path, content: str, words: str) -> None:
    config = tmp_path / "config.toml"
    config.write_text(content, "utf-8")
    with pytest.raises(SettingError) as caught:
        load_settings({}, {}, config)
    assert words in caught.value.message


def test_a_named_config_file_must_exist(tmp_path: Path) -> None:
    for config, environ in (
        (tmp_path / "no.toml", {}),
        (None, {"OCR_TAGS_CONFIG": str(tmp_path / "no.toml")}),
    ):
        with pytest.raises(SettingError, match=r"no\.toml does not exist"):
            load_settings({}, environ, config)


def test_every_setting_has_help() -> None:
    assert all(each.metadata.get("help", "").endswith(".") for each in fields(Settings))

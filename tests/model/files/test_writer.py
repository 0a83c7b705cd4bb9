"""Saving never destroys the last good file: full disks, failing calls, kill -9."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from model.files import writer
from model.files.writer import WriteError, check_writable, write_bytes, write_together
from tests.harness.calls import FailingSystem, every_call_fails_once
from tests.harness.disk import notices_loss, room_for
from tests.harness.killing import GOOD_WRITER, IN_PLACE, spoilt_by_killing

OLD = b"old" * 1_000
NEW = b"new" * 20_000


@pytest.fixture
def target(tmp_path) -> Path:
    path: Path = tmp_path / "fen.plan.json"
    path.write_bytes(OLD)
    return path


def test_a_look_ahead_writes_nothing_and_refuses_what_a_write_would(target: Path) -> None:
    check_writable(target)
    check_writable(target.with_name("new.plan.json"))
    assert [path.name for path in target.parent.iterdir()] == [target.name]
    assert target.read_bytes() == OLD
    for impossible in (target.parent, target / "below.plan.json", target.with_name("none") / "a.plan.json"):
        with pytest.raises(WriteError):
            check_writable(impossible)
        with pytest.raises(WriteError):
            write_bytes(impossible, NEW)


def test_writes_a_new_file_and_replaces_an_old_one(target: Path) -> None:
    write_bytes(target, NEW)
    write_bytes(str(target.with_name("new.plan.json")), b"")
    assert target.read_bytes() == NEW
    assert sorted(path.name for path in target.parent.iterdir()) == ["fen.plan.json", "new.plan.json"]


def test_keeps_the_mode_of_the_file_and_follows_the_umask_for_a_new_one(target: Path) -> None:
    target.chmod(0o640)
    write_bytes(target, NEW)
    assert stat.S_IMODE(target.stat().st_mode) == 0o640
    old_umask = os.umask(0o027)
    try:
        write_bytes(target.with_name("new"), NEW)
    finally:
        os.umask(old_umask)
    assert stat.S_IMODE(target.with_name("new").stat().st_mode) == 0o640


def test_writes_through_a_link(target: Path) -> None:
    link = target.with_name("link")
    link.symlink_to(target)
    write_bytes(link, NEW)
    assert link.is_symlink()
    assert target.read_bytes() == NEW


@pytest.mark.parametrize("links", [True, False], ids=["links", "one name a file"])
def test_where_one_of_several_cannot_take_its_place_the_others_are_put_back(
    target: Path, monkeypatch: pytest.MonkeyPatch, links: bool
) -> None:
    new, last = target.with_name("new"), target.with_name("last")
    replace = os.replace

    def refuse(old: str, path: str) -> None:
        if path == str(last):
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        replace(old, path)

    monkeypatch.setattr(os, "replace", refuse)
    if not links:
        monkeypatch.setattr(os, "link", no_links)
    with pytest.raises(WriteError, match="last: could not be written: Input/output error"):
        write_together({target: NEW, new: NEW, last: NEW})
    assert target.read_bytes() == OLD
    assert list(target.parent.iterdir()) == [target]


def no_links(*_: object) -> None:
    """A file system that knows one name a file."""
    raise OSError(errno.EPERM, os.strerror(errno.EPERM))


def test_long_names_leave_room_for_the_temporary_one(target: Path) -> None:
    path = target.with_name("é" * 127)
    write_bytes(path, NEW)
    assert path.read_bytes() == NEW


@pytest.mark.parametrize(
    ("name", "reason"),
    [
        ("none/fen.plan.json", "No such file or directory"),
        ("fen.plan.json/a", "Not a directory"),
        ("folder", "there is a folder of that name"),
        ("pipe", "it is no ordinary file"),
        ("x" * 300, "File name too long"),
        ("a\0b", "null"),
    ],
)
def test_says_which_file_and_why(target: Path, name: str, reason: str) -> None:
    target.with_name("folder").mkdir()
    os.mkfifo(target.with_name("pipe"))
    path = f"{target.parent}/{name}"
    with pytest.raises(WriteError) as error:
        write_bytes(path, NEW)
    assert error.value.file == path
    assert reason in error.value.reason
    assert str(error.value) == f"{path}: could not be written: {error.value.reason}"
    assert _left_over(target) == []


def test_a_device_is_not_replaced_by_a_file() -> None:
    with pytest.raises(WriteError, match="it is no ordinary file"):
        write_bytes("/dev/null", NEW)
    assert stat.S_ISCHR(os.stat("/dev/null").st_mode)


def test_a_protected_file_is_left_alone(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Asked of the system by a stand-in, since root may write everything."""
    monkeypatch.setattr(writer.os, "access", lambda *_: False)
    with pytest.raises(WriteError, match="the file is write-protected"):
        write_bytes(target, NEW)
    assert target.read_bytes() == OLD


@pytest.mark.parametrize("size", range(0, len(NEW), len(NEW) // 64))
def test_room_for_only_so_many_bytes(target: Path, size: int) -> None:
    """The kernel refuses what goes beyond ``size``, as a full disk does."""
    with room_for(size), pytest.raises(WriteError, match="File too large"):
        write_bytes(target, NEW)
    assert target.read_bytes() == OLD
    assert _left_over(target) == []


def test_a_file_that_comes_out_too_short_is_noticed(tmp_path: Path) -> None:
    notices_loss(write_bytes, tmp_path)


def test_a_writer_that_does_not_look_at_the_length_is_seen(tmp_path: Path) -> None:
    """The control that must fail: a temporary file and a rename, but no look at what came out."""

    def trusting(path: Path, data: bytes) -> None:
        temporary = path.with_suffix(".tmp")
        with open(temporary, "wb") as stream:
            stream.write(data)
        os.replace(temporary, path)

    with pytest.raises(pytest.fail.Exception, match="DID NOT RAISE"):
        notices_loss(trusting, tmp_path)


def is_old_or_new_whatever_fails(write: Callable[[Path, bytes], object], target: Path) -> int:
    """Fails where the file is neither whole; gives how many calls there were to fail."""
    done: list[bool] = []

    def work() -> None:
        try:
            write(target, NEW)
        except (WriteError, OSError):
            done.append(False)
        else:
            done.append(True)

    def then(_: FailingSystem) -> None:
        assert target.read_bytes() == (NEW if done[-1] else OLD)
        target.write_bytes(OLD)

    return every_call_fails_once(work, then)


def test_the_file_is_old_or_new_whatever_call_fails(target: Path) -> None:
    assert is_old_or_new_whatever_fails(write_bytes, target) > 6


def test_a_writer_in_place_is_seen_when_a_call_fails(target: Path) -> None:
    """The control that must fail."""
    with pytest.raises(AssertionError):
        is_old_or_new_whatever_fails(Path.write_bytes, target)


CALLS = ["open", "os.stat", "os.fstat", "os.chmod", "os.fsync", "os.replace"]


@pytest.mark.parametrize("call", CALLS)
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EIO, errno.EACCES, errno.EROFS])
def test_every_call_may_fail(target: Path, call: str, number: int, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*args: object, **named: object) -> None:
        raise OSError(number, os.strerror(number))

    if call == "open":
        monkeypatch.setattr(writer, "open", fail, raising=False)
    else:
        monkeypatch.setattr(writer.os, call.removeprefix("os."), fail)
    with pytest.raises(WriteError) as error:
        write_bytes(target, NEW)
    monkeypatch.undo()
    assert error.value.reason == os.strerror(number)
    assert target.read_bytes() == OLD
    assert _left_over(target) == []


def test_an_interrupt_leaves_nothing_behind(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupt(*args: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(writer.os, "fsync", interrupt)
    with pytest.raises(KeyboardInterrupt):
        write_bytes(target, NEW)
    assert _left_over(target) == []
    assert target.read_bytes() == OLD


def test_killed_while_saving(tmp_path) -> None:
    assert spoilt_by_killing(tmp_path, GOOD_WRITER, 100) == 0


@pytest.mark.slow
@pytest.mark.timeout(1_800)
def test_killed_while_saving_very_often(tmp_path) -> None:
    assert spoilt_by_killing(tmp_path, GOOD_WRITER, 2_000) == 0


def test_killed_while_saving_in_place_is_seen(tmp_path) -> None:
    assert spoilt_by_killing(tmp_path, IN_PLACE, 25) > 0


def _left_over(target: Path) -> list[Path]:
    return list(target.parent.glob(".*"))

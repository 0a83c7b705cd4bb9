"""What no source file does: write past the one writer, reach a network, run what it reads."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.app.cli.running import ROOT

WRITER = ROOT / "model" / "files" / "writer.py"
SOURCES = sorted(path for folder in ("model", "app") for path in (ROOT / folder).rglob("*.py"))

FORBIDDEN_MODULES = {
    "socket", "ssl", "http", "urllib", "urllib3", "requests", "ftplib", "smtplib", "asyncio", "subprocess",
    "multiprocessing", "pickle", "cPickle", "marshal", "shelve", "dill", "ctypes", "webbrowser", "xmlrpc",
}  # fmt: skip
FORBIDDEN_QT = {"QtNetwork", "QtWebEngineCore", "QProcess", "QTcpSocket", "QNetworkAccessManager"}
FORBIDDEN_CALLS = {
    "eval",
    "exec",
    "compile",
    "__import__",
    "system",
    "popen",
    "fork",
    "execv",
    "spawnv",
    "startfile",
}
WRITING_CALLS = {
    "write_text", "write_bytes", "touch", "mkstemp", "mkdtemp", "NamedTemporaryFile", "TemporaryFile",
    "savez", "tofile", "copyfile", "copy2", "QSaveFile", "QTemporaryFile", "QFile",
}  # fmt: skip
QT_METHODS = {"exec"}
"""Qt's dialogs and the application run by a method of this name."""


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_network_no_other_program_nothing_run_that_was_read(path: Path) -> None:
    tree = ast.parse(path.read_text())
    assert not _imported(tree) & (FORBIDDEN_MODULES | FORBIDDEN_QT)
    assert not set(_forbidden_calls(tree))


@pytest.mark.parametrize("path", [path for path in SOURCES if path != WRITER], ids=lambda path: path.name)
def test_every_write_goes_through_the_one_writer(path: Path) -> None:
    assert not list(_writing_calls(ast.parse(path.read_text())))


@pytest.mark.parametrize(
    "source",
    [
        "open('a', 'w')",
        "open('a', mode='ab')",
        "open('a', some_mode)",
        "path.open('w')",
        "Path('a').write_text('')",
        "path.write_bytes(b'')",
        "QSaveFile('a')",
        "os.open('a', os.O_WRONLY | os.O_CREAT)",
    ],
)
def test_a_write_would_be_seen(source: str) -> None:
    assert list(_writing_calls(ast.parse(source)))


@pytest.mark.parametrize(
    "source", ["import socket", "from urllib.request import urlopen", "from PySide6 import QtNetwork"]
)
def test_a_forbidden_import_would_be_seen(source: str) -> None:
    assert _imported(ast.parse(source)) & (FORBIDDEN_MODULES | FORBIDDEN_QT)


@pytest.mark.parametrize("source", ["eval('1')", "exec('1')", "os.system('ls')"])
def test_a_forbidden_call_would_be_seen(source: str) -> None:
    assert list(_forbidden_calls(ast.parse(source)))


def _imported(tree: ast.AST) -> set[str]:
    """The parts of the names of all modules, and what is taken from them."""
    names: list[str] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            names += [node.module or "", *(alias.name for alias in node.names)]
    return {part for name in names for part in name.split(".")[:2]}


def _forbidden_calls(tree: ast.AST) -> Iterator[str]:
    for call, name, is_method in _calls(tree):
        is_re = isinstance(call.func, ast.Attribute) and ast.unparse(call.func.value) == "re"
        if name in FORBIDDEN_CALLS and not (is_method and (name in QT_METHODS or is_re)):
            yield ast.unparse(call)


def _writing_calls(tree: ast.AST) -> Iterator[str]:
    taken_from_writer = {
        alias.name
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.module == "model.files.writer"
        for alias in node.names
    }
    for call, name, is_method in _calls(tree):
        through_writer = name in taken_from_writer and not is_method
        if (name in WRITING_CALLS and not through_writer) or (name == "open" and _opens_for_writing(call)):
            yield ast.unparse(call)


def _opens_for_writing(call: ast.Call) -> bool:
    """A built-in ``open`` unless its mode plainly only reads; a method of that name with a writing mode."""
    text = ast.unparse(call)
    if text.startswith("os.open("):
        return "O_CREAT" in text or ("O_WRONLY" in text and "os.devnull" not in text)
    is_method = isinstance(call.func, ast.Attribute)
    modes = [*call.args[0 if is_method else 1 :][:1], *(k.value for k in call.keywords if k.arg == "mode")]
    words = [mode.value for mode in modes if isinstance(mode, ast.Constant) and isinstance(mode.value, str)]
    unclear = not is_method and len(words) < len(modes)
    return unclear or any(set(word) <= set("rwaxbt+") and set(word) & set("wax+") for word in words)


def _calls(tree: ast.AST) -> Iterator[tuple[ast.Call, str, bool]]:
    """Every call with the last part of its name, and whether it is a method's."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            if isinstance(node.func, ast.Attribute):
                yield node, node.func.attr, True
            elif isinstance(node.func, ast.Name):
                yield node, node.func.id, False

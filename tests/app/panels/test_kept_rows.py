"""A view is told of the first rows of many, and of more as it asks; what it knows is never out of step."""

from __future__ import annotations

import random

import pytest
from PySide6.QtCore import QModelIndex
from PySide6.QtTest import QAbstractItemModelTester
from PySide6.QtWidgets import QApplication

from app.panels import kept_rows
from app.panels.findings_model import FindingsModel
from model.grid import Cell
from model.rules import Finding, Severity

FEW = 5


def found(x: int) -> Finding:
    return Finding("unsupported", Severity.ERROR, (Cell(x, 64, 0),), (), "in the air")


def told(model: FindingsModel) -> list[Finding]:
    return [model.finding(row) for row in range(model.rowCount())]


class Mirror:
    """Keeps a list by nothing but what the model signals, as a view does."""

    def __init__(self, model: FindingsModel) -> None:
        self.rows: list[Finding] = []
        self._model = model
        model.rowsInserted.connect(self._insert)
        model.rowsRemoved.connect(self._remove)
        model.modelReset.connect(self._reset)
        model.dataChanged.connect(self._change)

    def _insert(self, _parent: QModelIndex, first: int, last: int) -> None:
        self.rows[first:first] = [self._model.finding(row) for row in range(first, last + 1)]

    def _remove(self, _parent: QModelIndex, first: int, last: int) -> None:
        del self.rows[first : last + 1]

    def _reset(self) -> None:
        self.rows = told(self._model)

    def _change(self, first: QModelIndex, last: QModelIndex, _roles: object) -> None:
        for row in range(first.row(), last.row() + 1):
            self.rows[row] = self._model.finding(row)


@pytest.mark.parametrize("seed", range(5))
def test_what_a_view_knows_is_a_beginning_of_all_rows(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    monkeypatch.setattr(kept_rows, "AT_ONCE", FEW)
    chance, model = random.Random(seed), FindingsModel()
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal, model)
    tester.setUseFetchMore(False)
    mirror, rows = Mirror(model), list[Finding]()
    most = 0
    for _ in range(150):
        deed = chance.choice(("show", "insert", "insert", "remove", "fetch"))
        if deed == "show":
            rows = [found(x) for x in chance.sample(range(60), chance.randrange(25))]
            model.show(rows, {}, are_old=False)
            rows = list(rows)
        elif deed == "insert":
            row, new = chance.randint(0, len(rows)), found(chance.randrange(100, 10**9))
            rows.insert(row, new)
            model.insert_row(row, new)
        elif deed == "remove" and rows:
            row = chance.randrange(len(rows))
            del rows[row]
            model.remove_row(row)
        elif deed == "fetch" and model.canFetchMore():
            model.fetchMore()
        assert mirror.rows == told(model) == rows[: model.rowCount()]
        assert model.total == len(rows)
        assert model.canFetchMore() == (model.rowCount() < len(rows))
        most = max(most, len(rows) - model.rowCount())
    assert most > FEW  # control: there were rows that the view knew not of


def test_a_row_beyond_those_is_reached(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kept_rows, "AT_ONCE", FEW)
    model = FindingsModel()
    model.show([found(x) for x in range(40)], {}, are_old=False)
    assert model.rowCount() == FEW
    assert model.reach(17).row() == 17
    assert model.rowCount() == 20
    model.show([found(x) for x in range(1, 40)], {}, are_old=False)
    assert model.rowCount() == 20, "what was told once is not forgotten"

"""The plan of a network that is being worked out, for those who cannot go on without it."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from app.background import CancelledError
from app.network.document import NetworkDocument
from model.network.result import NetworkPlan


class AwaitedPlan(QObject):
    """Until the document has the plan of the network as it is now; it goes on also where nobody waits."""

    told = Signal(object)
    ended = Signal()

    def __init__(self, document: NetworkDocument, parent: QObject) -> None:
        super().__init__(parent)
        self._document = document
        document.progressed.connect(self.told)
        document.plan_updated.connect(self._look)

    @property
    def is_over(self) -> bool:
        """Whether the plan is there."""
        return self._document.plan is not None and not self._document.plan_is_old

    @property
    def result(self) -> NetworkPlan:
        """The plan. Raises CancelledError where it is not there."""
        plan = self._document.plan
        if plan is None or self._document.plan_is_old:
            raise CancelledError
        return plan

    def drop(self) -> None:
        """The window wants the plan all the same."""

    def _look(self) -> None:
        if self.is_over:
            self.ended.emit()

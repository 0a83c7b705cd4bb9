"""Commissioning: the runs that test a finished junction, and what is wrong where a cart goes astray."""

from model.commissioning.commissioning import Commissioning
from model.commissioning.diagnosis import Diagnosis, diagnose
from model.commissioning.faults import Fault, Kind
from model.commissioning.runs import STAYS, Observed, Run

__all__ = ["STAYS", "Commissioning", "Diagnosis", "Fault", "Kind", "Observed", "Run", "diagnose"]

"""A limit on a sum of weights, as sentences for a SAT solver: the sum is worked out in binary."""

from __future__ import annotations

from collections.abc import Sequence

from model.clauses import Clauses, Statement


def limit_weight(clauses: Clauses, weights: Sequence[tuple[Statement, int]], limit: int) -> None:
    """Says that those of the statements which hold weigh no more than a limit together.

    Adders in a tree, after Eén & Sörensson 2006, cited from memory.
    """
    if sum(weight for _, weight in weights) <= limit:
        return
    columns: dict[int, list[Statement]] = {}
    for statement, weight in weights:
        for bit in range(weight.bit_length()):
            if weight >> bit & 1:
                columns.setdefault(bit, []).append(statement)
    total: list[Statement] = []
    while len(total) <= max(columns):
        column = columns.get(len(total), [])
        carried = columns.setdefault(len(total) + 1, []) if len(column) > 1 else []
        while len(column) > 1:
            low, high = _added(clauses, column[:3])
            column = [*column[3:], low]
            carried.append(high)
        total.append(column[0] if column else clauses.false)
    _no_more_than(clauses, total, limit)


def _added(clauses: Clauses, bits: Sequence[Statement]) -> tuple[Statement, Statement]:
    """Two or three bits as a sum of two bits, the low one first."""
    low, high = clauses.new(), clauses.new()
    for values, given in clauses.rows(bits):
        number = sum(values)
        clauses.say_if(given, low if number & 1 else -low)
        clauses.say_if(given, high if number & 2 else -high)
    return low, high


def _no_more_than(clauses: Clauses, total: Sequence[Statement], limit: int) -> None:
    """Says that a number, its lowest bit first, is at most a limit."""
    for bit, statement in enumerate(total):
        if not limit >> bit & 1:
            # With this bit it were more, unless it has less in a higher one.
            higher = [total[each] for each in range(bit + 1, len(total)) if limit >> each & 1]
            clauses.say_if([statement, *higher])

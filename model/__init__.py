"""Everything that can be computed without a screen: plans, track, routes, findings, sheets, files.

Imports no Qt and nothing of ``app``. The layers, each importing only those to its right:
``rules``, ``sheet``, ``files`` → ``routing`` → ``track`` → ``edits`` → ``plan`` → ``parts`` → ``grid``.
"""

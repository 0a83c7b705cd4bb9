"""Readers under atheris, a fuzzer that watches which lines an input reaches (PyPI: atheris, on libFuzzer).

``python -m tests.fuzzing plan --seconds 300`` runs one target; what it finds comes to lie in
``tests/data/found/plan/``, where the normal tests read it for ever after.
"""

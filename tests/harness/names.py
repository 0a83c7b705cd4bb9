"""Names that a hostile or careless person might give to things."""

from __future__ import annotations

from random import Random
from typing import Final

HOSTILE: Final = (
    "</text><script>x</script>", "<b>&amp;\"'", "]]><!--", "&#0; &x;", 'stroke-dasharray="1,2"',
    "<image href='file:///etc/passwd'>", '<img src="http://example.invalid/x.png">', "日本 \u202eabc",
    "\U0001f683 e\u0301", "=1+1", "+1", "-1", "@SUM(A1)", "..", ".", "../../etc/passwd", "C:\\con", "con",
    "NUL", "com1", "lpt¹", "aux.plan.json", "a:b", "a|b", "a?b*", "~", "$HOME", "%TEMP%", " ", "trailing. ",
    "\u00a0", "a\u2028b", "\ufeff", "\ufffe", "ﷺ" * 26, "Å" * 80, "A\u030a" * 40, "\u200b", "<", "&", '"',
    "'", "`id`",
)  # fmt: skip
LETTERS: Final = "aZ9 <>&\"'=+-@.:;|?*\\~$%#`{}[]()\u00e9\u0301\u202e\u200b\u2028\ufffe日\U0001f683"


def hostile_names(count: int, seed: int, *, as_arms: bool = False) -> list[str]:
    """So many different names, the worst ones first; ``as_arms``: such as files may give to arms."""
    random, names = Random(seed), dict.fromkeys(HOSTILE)
    while len(names) < count + len(HOSTILE):
        names["".join(random.choices(LETTERS, k=random.randint(1, 80)))] = None
    kept = (name.replace(",", "").replace("/", "") for name in names) if as_arms else names
    return list(dict.fromkeys(name for name in kept if name))[:count]

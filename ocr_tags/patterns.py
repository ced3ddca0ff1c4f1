"""Patterns compiled when first used: a command that reads no tag pays for none of them."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, cast

_METHODS = ("search", "match", "fullmatch", "finditer", "findall", "split", "sub", "pattern")


def later(source: str | Callable[[], str], flags: int = 0) -> re.Pattern[str]:
    """`re.compile(source, flags)`, put off until it is first searched for; `source` may be worked out then.

    >>> later("sun", re.I).search("Full Sun")
    <re.Match object; span=(5, 8), match='Sun'>
    """
    return cast("re.Pattern[str]", _Later(source, flags))


class _Later:
    """Stands for a pattern; from the first use on, its methods are those of the compiled one."""

    def __init__(self, source: str | Callable[[], str], flags: int) -> None:
        self._source, self._flags = source, flags
        if isinstance(source, str):
            self.pattern = source

    def __getattr__(self, name: str) -> Any:
        if name not in _METHODS:
            raise AttributeError(name)
        source = self._source if isinstance(self._source, str) else self._source()
        compiled = re.compile(source, self._flags)
        self.__dict__.update((method, getattr(compiled, method)) for method in _METHODS)
        return self.__dict__[name]

"""Where a studio's site is published: the address of its folder, plain enough for a code on a label."""

from __future__ import annotations

import re

from sheetgen.base.trouble import CannotBe

LONGEST = 200  # letters: a code of more has squares too small for a label
EXAMPLE = "https://quillmarsh.example/sheets/"
_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):(?!\d)(//)?(.*)", re.IGNORECASE)
# A name by RFC 1123, 2.1: letters, digits and hyphens between points, no hyphen at an end.
_NAME = "[a-z0-9](?:[a-z0-9-]*[a-z0-9])?"
_HOST = re.compile(rf"{_NAME}(?:\.{_NAME})*", re.IGNORECASE)
_PATH = re.compile(r"(?:[A-Za-z0-9._~!$&'()*+,;=:@/-]|%[0-9A-Fa-f]{2})*")  # RFC 3986, 3.3
_PAGE = re.compile(r"[^/]+\.(?:html?|php|pdf)", re.IGNORECASE)
_HIGHEST = 65535  # of ports


def folder_address(written: str) -> str:
    """The address of a folder, with a slash at its end. CannotBe for what leads to no page that others reach."""
    written = written.strip()
    found = _SCHEME.fullmatch(written)
    if len(written) > LONGEST:
        raise _amiss(f"the address has {len(written)} letters", f"at most {LONGEST}")
    if not found:
        host = written.strip("/").split("/")[0]
        plain = f"https://{written.strip('/')}/" if _HOST.fullmatch(host) and "." in host else EXAMPLE
        raise _amiss(f"'{written}' does not say how it is reached", plain)
    scheme, slashes, rest = found[1].lower(), found[2], found[3]
    if scheme not in {"http", "https"}:
        plain = f"https://{rest.rstrip('/')}/" if slashes and _HOST.match(rest) and "@" not in rest else EXAMPLE
        raise _amiss(f"no reader of codes opens a page by '{scheme}:'", plain)
    place, asked, _ = rest.partition("#")[0].partition("?")
    host, _, path = place.partition("/")
    user, named, host = host.rpartition("@")
    if not slashes or not host:
        raise _amiss("the address has no host", EXAMPLE)
    whole = f"{scheme}://{host.lower()}/{path}".rstrip("/") + "/"
    if user or named:
        raise _amiss("the address holds a user name, and it would be printed", whole)
    if asked:
        raise _amiss("the address holds a query, and pages lie in a folder", whole)
    if "#" in rest:
        raise _amiss("the address holds a #, and pages lie in a folder", whole)
    _look_at_host(host)
    _look_at_path(path, f"{scheme}://{host.lower()}/")
    return whole


def _look_at_host(host: str) -> None:
    name, colon, port = host.partition(":")
    if not _HOST.fullmatch(name):
        helped = "a name such as quillmarsh.example; letters of other alphabets are written as xn--…"
        raise _amiss(f"'{name}' is not a host", helped)
    if colon and not (port.isascii() and port.isdigit() and 0 < int(port) <= _HIGHEST):
        raise _amiss(f"'{port}' is not a port", f"a number up to {_HIGHEST}, or leave it out")


def _look_at_path(path: str, before: str) -> None:
    *folders, last = path.rstrip("/").split("/")
    if not _PATH.fullmatch(path):
        signs = (c if _PATH.fullmatch(c) or c == "%" else "".join(f"%{n:02X}" for n in c.encode()) for c in path)
        raise _amiss("a sign in it cannot stand in an address", f"{before}{''.join(signs).rstrip('/')}/")
    if {".", ".."} & {*folders, last}:
        raise _amiss("the address goes by way of . or ..", f"the folder itself, such as {EXAMPLE}")
    if _PAGE.fullmatch(last):
        raise _amiss(
            f"'{last}' is a page, and the address is of a folder", before + "".join(f"{one}/" for one in folders)
        )


def _amiss(message: str, helped: str) -> CannotBe:
    return CannotBe(message, help=helped, field="address")

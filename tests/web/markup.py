"""What tests read from a page: its forms, links and whatever the policy would refuse."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

_EMPTY = frozenset({"br", "col", "hr", "img", "input", "link", "meta", "wbr"})


@dataclass
class FoundForm:
    """A form as a browser would send it.

    Attributes:
        action: its address.
        method: get or post.
        fields: name -> value it has now.
        open_fields: names of the fields that take any text.
    """

    action: str
    method: str
    fields: dict[str, str] = field(default_factory=dict)
    open_fields: list[str] = field(default_factory=list)


class Markup(HTMLParser):
    """Reads a page.

    Attributes:
        forms: in their order.
        links: every address named by ``href``, ``src`` or ``action``.
        inline: scripts, styles and handlers that stand in the page itself.
        unclosed: elements left open or closed in the wrong order.
        headings: levels, in order.
    """

    def __init__(self, text: str) -> None:
        super().__init__()
        self.forms: list[FoundForm] = []
        self.links: list[str] = []
        self.inline: list[str] = []
        self.unclosed: list[str] = []
        self.headings: list[int] = []
        self._open: list[str] = []
        self._form: FoundForm | None = None
        self._choice = ""
        self._text = ""
        self.feed(text)
        self.close()
        self.unclosed += self._open

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attributes}
        if tag not in _EMPTY:
            self._open.append(tag)
        if len(tag) == 2 and tag[0] == "h" and tag[1].isdigit():
            self.headings.append(int(tag[1]))
        self.links += [given[name] for name in ("href", "src", "action") if name in given]
        if tag == "style" or (tag == "script" and "src" not in given):
            self.inline.append(tag)
        self.inline += [name for name in given if name == "style" or name.startswith("on")]
        if tag == "form":
            self._form = FoundForm(given.get("action", ""), given.get("method", "get").lower())
            self.forms.append(self._form)
        elif self._form:
            self._read_control(self._form, tag, given)

    def handle_endtag(self, tag: str) -> None:
        if self._open and self._open[-1] == tag:
            self._open.pop()
        else:
            self.unclosed.append(f"/{tag}")
        if tag == "form":
            self._form = None
        elif tag == "textarea" and self._form and self._text:
            self._form.fields[self._text] = self._form.fields[self._text].removeprefix("\n")
            self._text = ""

    def handle_data(self, data: str) -> None:
        if self._text and self._form:
            self._form.fields[self._text] += data

    def _read_control(self, form: FoundForm, tag: str, given: dict[str, str]) -> None:
        name = given.get("name", "")
        kind = given.get("type", "text")
        if tag == "textarea":
            self._text = name
            form.fields[name] = ""
            form.open_fields.append(name)
        elif tag == "select":
            self._choice = name
        elif tag == "option":
            if "selected" in given or self._choice not in form.fields:
                form.fields[self._choice] = given.get("value", "")
        elif tag == "input" and name:
            if kind in {"checkbox", "radio"} and "checked" not in given:
                return
            form.fields[name] = given.get("value", "")
            if kind in {"text", "search"}:
                form.open_fields.append(name)

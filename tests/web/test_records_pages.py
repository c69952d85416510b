from __future__ import annotations

import csv
import io
import logging
import re
from collections.abc import Iterator
from pathlib import Path

import pdfplumber
import pytest
from fastapi import FastAPI
from fastapi.routing import APIRoute
from fastapi.testclient import TestClient

from phonodrill.records.backup import back_up
from phonodrill.records.kept import Result
from phonodrill.records.store import Store
from phonodrill.web.app import make_app
from phonodrill.web.csrf import COOKIE, FIELD
from phonodrill.web.records import sign_in
from phonodrill.web.records.join import MENU, MODULES
from tests.web.kept import CODES, GROUP, SAID, entry_of, fill, opened, send, token_of
from tests.web.markup import Markup
from tests.web.test_pages import NASTY, check_page

RECORDS = ("/groups", "/check", "/progress", "/next")


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path


@pytest.fixture
def client(home: Path) -> Iterator[TestClient]:
    with opened(home) as client:
        yield client


@pytest.fixture
def check(store: Store) -> str:
    """The digits of a check for the group; nothing is entered."""
    return fill(store)


@pytest.fixture
def store(client: TestClient) -> Iterator[Store]:
    """The same records, opened beside the page."""
    assert client.get("/groups").status_code == 200
    with Store() as opened_store:
        yield opened_store


def application_of(client: TestClient) -> FastAPI:
    assert isinstance(client.app, FastAPI)
    return client.app


def link_to(client: TestClient, path: str, pattern: str) -> str:
    found = re.search(pattern, client.get(path).text)
    assert found, pattern
    return found[0]


def key_of_group(client: TestClient) -> str:
    return link_to(client, "/groups", r"/groups/\d{12}").rpartition("/")[2]


def seat_of(client: TestClient, check: str, place: int = 0) -> str:
    """Return the address for entering the results of a student."""
    text = client.get(f"/check/{check}/enter").text
    found: list[str] = re.findall(
        rf'<li><a class="button second" href="(/check/{check}/enter/\d+)"', text
    )
    return found[place]


def test_without_records_there_are_no_pages() -> None:
    with TestClient(make_app(), base_url="http://127.0.0.1") as plain:
        assert [plain.get(path).status_code for path in RECORDS] == [404] * 4
        assert "/groups" not in plain.get("/about").text
        assert plain.get("/api/records/groups").status_code == 404


def test_a_group_from_first_to_last(client: TestClient, store: Store) -> None:
    assert "None yet" in client.get("/groups").text
    status, where = send(client, "/groups", name=GROUP, students="Q7, X4")
    assert (status, where.partition("?")[0]) == (303, f"/groups/{key_of_group(client)}")
    group = where.partition("?")[0]
    assert send(client, group, students="Z9")[0] == 303
    assert store.list_students(GROUP) == CODES
    page = client.get(group).text
    assert all(code in page for code in CODES)
    for path, fields in (
        ("/groups", {"name": GROUP, "students": ""}),
        ("/groups", {"name": " ", "students": ""}),
        ("/groups", {"name": "harbor-3", "students": "Anna Maria"}),
        (group, {"students": "Z9"}),
        (group, {"students": " "}),
    ):
        status, text = send(client, path, **fields)
        assert (status, "Not possible" in text) == (400, True), fields
    assert [one.name for one in store.list_groups()] == [GROUP]
    asked = client.get(f"{group}/remove").text
    assert "cannot be brought back" in asked
    assert store.list_groups()
    assert send(client, f"{group}/remove") == (303, "/groups?done=removed")
    assert store.list_groups() == ()
    assert client.get(group).status_code == 400


def test_a_check_is_made_shown_printed_and_removed(client: TestClient, store: Store) -> None:
    store.add_group(GROUP, CODES)
    key = key_of_group(client)
    status, where = send(client, "/check", group=key, focus="es,ies", count="4", band="2")
    assert status == 303
    (made,) = store.list_checks(GROUP)
    assert (where, made.focus, made.items) == (f"/check/{made.key}", "es,ies", 4)
    items = store.find_check(made.key).items
    page = client.get(where).text
    assert all(item.answer in page for item in items)
    with pdfplumber.open(io.BytesIO(client.get(f"{where}/sheet?paper=a4").content)) as sheet:
        text = "\n".join(page.extract_text() for page in sheet.pages)
        assert round(sheet.pages[0].width) == 595
    assert made.key in text
    assert all(code in text for code in CODES)
    for fields in ({"focus": "zzz"}, {"focus": ""}, {"focus": "es", "group": ""}):
        status, text = send(client, "/check", **{"group": key, **fields})
        assert (status, "Not possible" in text) == (400, True), fields
    assert "with 0 results" in client.get(f"{where}/remove").text
    assert send(client, f"{where}/remove") == (303, "/check")
    assert store.list_checks(GROUP) == []


def test_entering_goes_from_item_to_item_and_student_to_student(
    client: TestClient, store: Store, check: str
) -> None:
    seat = seat_of(client, check)
    assert "Q7, 1 of 3" in client.get(seat).text
    assert send(client, seat, act="right", item="1") == (303, f"{seat}?item=2&done=1")
    assert send(client, seat, act="skip", item="2", done="1") == (303, f"{seat}?item=3&done=1%2C-2")
    status, where = send(client, seat, act="wrong", item="3", said=SAID, done="1,-2")
    assert (status, where.partition("?")[0]) == (303, f"/check/{check}/enter")
    text = client.get(where).text
    assert "Next: X4" in text
    assert "Undo the last of Q7" in text
    assert store.results_of(check) == [Result(1, "Q7", True), Result(3, "Q7", False, SAID)]
    again = client.get(seat).text
    assert "Q7, 2 of 3" in again
    assert [link for link in Markup(again).links if "item=" in link][:3] == [
        f"{seat}?item={number}" for number in (1, 2, 3)
    ]


def test_undo_takes_back_one_act_after_another(
    client: TestClient, store: Store, check: str
) -> None:
    seat = seat_of(client, check)
    for tapped, done in (("1", ""), ("2", "1"), ("3", "1,2")):
        send(client, seat, act="right", item=tapped, done=done)
    back = (("1,2,3", 3, "1%2C2"), ("1,2", 2, "1"), ("1", 1, ""))
    for done, item, left in back:
        status, where = send(client, seat, act="undo", item="1", done=done, entry=f"u{item}")
        assert status == 303
        assert where == f"{seat}?item={item}" + (f"&done={left}" if left else "")
        assert [one.position for one in store.results_of(check)] == list(range(1, item))
    assert send(client, seat, act="undo", item="1") == (303, f"{seat}?item=1")
    send(client, seat, act="right", item="1")
    send(client, seat, act="undo", item="2", done="1,-2", entry="s")
    assert len(store.results_of(check)) == 1, "what was skipped has nothing to take back"


def test_undo_brings_back_what_was_entered_before(
    client: TestClient, store: Store, check: str
) -> None:
    first = Result(1, "Q7", right=False, said=SAID)
    store.enter_result(check, first)
    seat = seat_of(client, check)
    send(client, seat, act="right", item="1", entry="a")
    send(client, seat, act="wrong", item="1", done="1", entry="b")
    assert store.results_of(check) == [Result(1, "Q7", right=False)]
    send(client, seat, act="undo", item="2", done="1,1", entry="c")
    assert store.results_of(check) == [Result(1, "Q7", right=True)]
    for _ in range(2):
        send(client, seat, act="undo", item="1", done="1", entry="d")
        assert store.results_of(check) == [first], "sent twice, undone once"


def test_one_act_sent_twice_counts_once(client: TestClient, store: Store, check: str) -> None:
    """A double click, a page loaded again, and the act of a page that was left open."""
    seat = seat_of(client, check)
    page = client.get(seat).text
    sent = {FIELD: token_of(page), "entry": entry_of(page), "item": "1"}
    for act in ("wrong", "wrong", "right"):
        answer = client.post(seat, data={**sent, "act": act}, follow_redirects=False)
        assert answer.status_code == 303
    assert store.results_of(check) == [Result(1, "Q7", False)]
    undo = {FIELD: token_of(page), "entry": "u", "item": "2", "done": "1", "act": "undo"}
    client.post(seat, data=undo)
    client.post(seat, data={**sent, "act": "wrong"})
    assert store.results_of(check) == [], "an old act does not bring back what was undone"


def test_two_tabs_do_not_double_a_result(client: TestClient, store: Store, check: str) -> None:
    seat = seat_of(client, check)
    tabs = [client.get(seat).text for _ in range(2)]
    for tab, act in zip(tabs, ("wrong", "right"), strict=True):
        fields = {FIELD: token_of(tab), "entry": entry_of(tab), "item": "1", "act": act}
        assert client.post(seat, data=fields, follow_redirects=False).status_code == 303
    assert entry_of(tabs[0]) != entry_of(tabs[1])
    assert store.results_of(check) == [Result(1, "Q7", True)], "the later one stands"


def test_what_cannot_be_entered_is_told(client: TestClient, store: Store, check: str) -> None:
    seat = seat_of(client, check)
    for fields, status in (
        ({"act": "right", "item": "4"}, 400),
        ({"act": "right"}, 400),
        ({"act": "jump", "item": "1"}, 422),
        ({"act": "right", "item": "1", "done": "1;2"}, 422),
        ({"act": "wrong", "item": "1", "said": "x" * 200}, 422),
    ):
        assert send(client, seat, **fields)[0] == status, fields
    assert client.get("/check/00000000/enter").status_code == 400
    assert client.get(f"/check/{check}/enter/{'0' * 12}").status_code == 400
    assert store.results_of(check) == []


def enter_much(store: Store, check: str) -> None:
    """Results that say something: one student has it, one has not, one was asked little."""
    days = [check, *(fill_again(store, f"2026-11-{day}") for day in ("26", "27"))]
    for key in days:
        for position in (1, 2, 3):
            store.enter_result(key, Result(position, "Q7", right=True))
            store.enter_result(key, Result(position, "X4", right=False, said="/s/"))
    store.enter_result(check, Result(1, "Z9", right=False, said=SAID))


def fill_again(store: Store, date: str) -> str:
    first = store.find_check(store.list_checks(GROUP)[0].key)
    return store.keep_check(first._replace(date=date)).key


def test_progress_and_next(client: TestClient, store: Store, check: str) -> None:
    enter_much(store, check)
    key = key_of_group(client)
    group = client.get(f"/progress/{key}").text
    check_page(group)
    assert "<svg" in group
    assert "currentColor" in group
    assert "says the syllable" in group
    assert SAID not in group
    student = re.search(rf"/progress/{key}/\d{{12}}", group)
    assert student
    one = client.get(student[0]).text
    check_page(one)
    assert "Progress: student Q7" in one
    assert "X4" not in one
    judged = client.get(f"/progress/{key}?has=0.99&fewest=1").text
    assert "surely 99% right" in judged
    assert client.get(f"/progress/{key}?has=0.2&lacks=0.9").status_code == 400
    step = client.get(f"/next/{key}?taught=default:40").text
    check_page(step)
    assert "phonodrill" not in re.sub(r"<title>.*?</title>|name=\"[a-z_]+\"", "", step)
    links = Markup(step).links
    (lesson,) = (link for link in links if link.startswith("/today?focus="))
    assert client.get(lesson).status_code == 200
    assert [link for link in links if link.startswith(f"/check?group={key}&focus=")]
    for path in ("/progress", "/next"):
        assert f"{path}/{key}" in client.get(path).text


def test_a_page_looks_back_on_the_latest_checks(
    client: TestClient, store: Store, check: str
) -> None:
    enter_much(store, check)
    path = f"/progress/{key_of_group(client)}"
    assert "19 answers" in client.get(path).text
    assert "6 answers" in client.get(f"{path}?last=1").text


def test_all_of_a_student_as_a_file_and_then_nothing(
    client: TestClient, store: Store, check: str, home: Path
) -> None:
    store.enter_result(check, Result(2, "Q7", right=False, said=SAID))
    back_up(store, home / "kept.sqlite")
    group = f"/groups/{key_of_group(client)}"
    kept = link_to(client, group, rf"{group}/\d{{12}}/kept.json").removesuffix("/kept.json")
    data = client.get(f"{kept}/kept.json")
    assert data.headers["content-disposition"] == 'attachment; filename="student.json"'
    assert (data.json()["student"], data.json()["results"][0]["said"]) == ("Q7", SAID)
    table = client.get(f"{kept}/kept.csv")
    rows = list(csv.DictReader(io.StringIO(table.content.decode("utf-8-sig"))))
    assert [row["said"] for row in rows] == [SAID]
    assert "Q7 with 1 results" in client.get(f"{kept}/erase").text
    status, where = send(client, f"{kept}/erase")
    assert (status, "1 backups may still have" in where) == (200, True)
    assert store.list_students(GROUP) == CODES[1:]
    assert SAID.encode() not in (store.place.path or Path()).read_bytes()
    assert client.get(f"{kept}/kept.json").status_code == 400


def test_a_student_is_erased_from_backups_whose_folder_is_not_told(
    client: TestClient, store: Store, check: str, home: Path
) -> None:
    store.enter_result(check, Result(2, "Q7", right=False, said=SAID))
    for name in ("kept.sqlite", "moved.sqlite"):
        back_up(store, home / name)
    (home / "moved.sqlite").unlink()
    group = f"/groups/{key_of_group(client)}"
    erase = link_to(client, group, rf"{group}/\d{{12}}/erase")
    status, text = send(client, erase, backups="true")
    assert status == 200
    assert "moved.sqlite is not there any more" in text
    assert str(home) not in text
    assert SAID.encode() not in (home / "kept.sqlite").read_bytes()


def every_path(client: TestClient, check: str) -> list[str]:
    """Return all addresses that links lead to from the menu on, but those of other pages."""
    found, left = [], [*RECORDS, f"/check/{check}"]
    while left:
        path = left.pop()
        if path in found or not path.startswith(RECORDS):
            continue
        found.append(path)
        answer = client.get(path)
        assert answer.status_code == 200, path
        assert answer.headers["cache-control"] == "no-store"
        if answer.headers["content-type"].startswith("text/html"):
            left += check_page(answer.text).links
    return found


def test_no_name_no_code_and_nothing_said_in_an_address_or_the_log(
    client: TestClient, store: Store, check: str, caplog: pytest.LogCaptureFixture
) -> None:
    """Every page that links lead to, every form of entering, and what goes wrong."""
    caplog.set_level(logging.DEBUG)
    enter_much(store, check)
    addresses = every_path(client, check)
    assert len(addresses) > 40
    for seat in [path for path in addresses if re.fullmatch(r"/check/\d{8}/enter/\d{12}", path)]:
        page = client.get(seat)
        for act in ("wrong", "undo", "skip"):
            fields = {FIELD: token_of(page.text), "act": act, "item": "1", "done": "1"}
            sent = {**fields, "said": SAID, "entry": f"{act}{seat}"[:60]}
            answer = client.post(seat, data=sent, follow_redirects=False)
            addresses += [answer.headers["location"], *map(str, answer.headers.values())]
    group = f"/groups/{key_of_group(client)}"
    for path, fields in (
        (group, {"students": "Q7"}),
        ("/groups", {"name": GROUP, "students": "X4"}),
        ("/groups", {"name": "harbor-9", "students": "Q7,Q7"}),
    ):
        status, text = send(client, path, **fields)
        assert status == 400
        told = text[text.index('role="alert"') :].partition("</div>")[0]
        assert not [word for word in (GROUP, *CODES) if word in told]
    heard = "\n".join((*addresses, caplog.text))
    assert [word for word in (GROUP, *CODES, SAID) if word in heard] == []


@pytest.mark.parametrize("value", ["-1", "9" * 20, "\x00", "ﬀ🦀" * 9 + NASTY, "a" * 5000])
def test_any_value_of_any_field_is_answered(
    client: TestClient, store: Store, check: str, value: str
) -> None:
    """On every page with records, but on those that delete."""
    enter_much(store, check)
    key, seat = key_of_group(client), seat_of(client, check)
    pages = ("/groups", f"/groups/{key}", "/check", f"/check/{check}", f"/check/{check}/enter")
    for path in (*pages, seat, f"{seat}?item=3&done=1,-2", f"/progress/{key}", f"/next/{key}"):
        for form in Markup(client.get(path).text).forms:
            for name in set(form.fields) - {FIELD}:
                sent = {"act": "wrong", **form.fields, name: value}
                where = form.action or path
                answer = (
                    client.post(where, data=sent)
                    if form.method == "post"
                    else client.get(where, params=sent)
                )
                assert answer.status_code < 500, (path, name)
                if answer.headers["content-type"].startswith("text/html"):
                    check_page(answer.text)


def test_a_group_without_answers_is_told_what_to_do(client: TestClient, store: Store) -> None:
    store.add_group("harbor-1", [])
    key = key_of_group(client)
    for path in (f"/progress/{key}", f"/next/{key}", f"/groups/{key}", f"/check?group={key}"):
        text = client.get(path).text
        check_page(text)
        assert f"/check?group={key}" in text or "None yet" in text
        assert "phonodrill check" not in text


def test_a_fault_of_ours_is_logged_without_what_was_worked_on(
    client: TestClient, check: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def break_down(*_: object) -> None:
        raise KeyError(CODES[0])

    monkeypatch.setattr(Store, "results_of", break_down)
    quiet = TestClient(application_of(client), "http://127.0.0.1", raise_server_exceptions=False)
    # The lifespan is that of the first client.
    answer = quiet.get(f"/check/{check}")
    assert answer.status_code == 500
    assert answer.headers["cache-control"] == "no-store"
    assert CODES[0] not in answer.text
    with pytest.raises(Exception, match=r"KeyError in test_records_pages\.py") as caught:
        client.get(f"/check/{check}")
    assert caught.value.__suppress_context__
    assert CODES[0] not in str(caught.value)


def test_no_form_from_elsewhere_changes_anything(
    client: TestClient, store: Store, check: str
) -> None:
    client.get("/groups")
    token = client.cookies[COOKIE]
    keys = {"group": key_of_group(client), "check": check}
    keys["student"] = seat_of(client, check).rpartition("/")[2]
    routers = [sign_in.page, *(module.page for module in MODULES)]
    routes = [
        route.path.format(**keys)
        for router in routers
        for route in router.routes
        if isinstance(route, APIRoute) and "POST" in (route.methods or ())
    ]
    assert len(routes) >= 9
    for path in routes:
        for fields, headers in (
            ({}, {}),
            ({FIELD: "other"}, {}),
            ({FIELD: token}, {"origin": "http://reef.example"}),
        ):
            sent = {"act": "right", "item": "1", **fields}
            assert client.post(path, data=sent, headers=headers).status_code == 403, path
    for headers in ({"origin": "http://reef.example"}, {"content-type": "text/plain"}):
        data = {"check": check, "results": ()}
        answer = client.post("/api/records/results", json=data, headers=headers)
        assert answer.status_code in {403, 422}, headers
    assert store.list_students(GROUP) == CODES
    assert store.results_of(check) == []


def test_the_api_says_what_the_commands_say(client: TestClient, store: Store, check: str) -> None:
    enter_much(store, check)
    (group,) = client.get("/api/records/groups").json()["groups"]
    assert (group["group"], group["codes"]) == (GROUP, list(CODES))
    asked = {"group": group["key"]}
    (short,) = client.get("/api/records/groups?students=false").json()["groups"]
    assert short == {name: group[name] for name in ("group", "students", "checks", "key")}
    checks = client.get("/api/records/checks", params=asked).json()["checks"]
    assert [one["results"] for one in checks] == [6, 6, 7]
    result = {"position": 2, "student": "Z9", "right": True, "entry": "gull"}
    sent = {"check": check, "results": [result]}
    assert [client.post("/api/records/results", json=sent).json()["new"] for _ in "12"] == [1, 0]
    assert len(client.get("/api/records/check", params={"check": check}).json()["results"]) == 8
    whole = client.get("/api/records/progress", params=asked).json()
    own = client.get("/api/records/progress", params={**asked, "student": group["keys"][1]}).json()
    assert {one["student"] for one in whole["standings"]} == set(CODES)
    assert (own["student"], {one["student"] for one in own["standings"]}) == ("X4", {"X4"})
    step = client.get("/api/records/next", params=asked).json()
    assert "X4" in step["next"][0]["students"]
    schema = client.get("/api/openapi.json").json()["paths"]
    answers = {
        "/api/records/groups": client.get("/api/records/groups").json(),
        "/api/records/progress": whole,
        "/api/records/next": step,
    }
    for path, data in answers.items():
        described = schema[path]["get"]["responses"]["200"]["content"]["application/json"]
        assert set(described["schema"]["properties"]) == set(data), path
    assert "/api/records/next" in client.get("/api").text


def test_the_menu_has_the_pages(client: TestClient) -> None:
    text = client.get("/today").text
    assert [link for link in Markup(text).links if link in RECORDS] == list(RECORDS)
    assert [page.path for page in MENU] == list(RECORDS)


@pytest.mark.parametrize("content", [b"SQLite format 3\0" + b"x" * 5000, b"gulls" * 100])
def test_a_damaged_file_is_told_without_its_path(home: Path, content: bytes) -> None:
    folder = home / "phonodrill" / "records"
    folder.mkdir(parents=True)
    (folder / "records.sqlite").write_bytes(content)
    with opened(home) as client:
        for path in RECORDS:
            answer = client.get(path)
            assert answer.status_code == 503
            assert "the file of records is" in answer.text
            assert "phonodrill records restore BACKUP" in answer.text
            assert str(home) not in answer.text
        assert client.get("/today").status_code == 200, "the other pages go on"


def test_a_newer_file_is_told(home: Path) -> None:
    with opened(home) as client:
        with Store() as store, store.database.writing() as connection:
            connection.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
        answer = client.get("/groups")
        assert answer.status_code == 503
        assert "newer" in answer.text
        assert str(home) not in answer.text

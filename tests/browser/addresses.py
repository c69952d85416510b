"""Addresses of every page: as it opens, with a result, and with something wrong."""

from __future__ import annotations

from phonodrill.web.pages import MENU

PATHS = tuple(page.path for page in MENU)
_SEED = "seed=4"
RESULTS = {
    "/today": (
        f"/today?focus=es,ies&{_SEED}",
        f"/today?focus=sh&student=true&days=2&day=2&{_SEED}",
        f"/today?focus=es,ies&{_SEED}&word=torches",
    ),
    "/warm-up": (
        f"/warm-up?{_SEED}",
        f"/warm-up?task=substitute&hide=true&{_SEED}",
        f"/warm-up/chain?start=crab&end=clam&{_SEED}",
    ),
    "/show": (
        f"/show?item=1&{_SEED}",
        f"/show?task=blend&item=2&answer=shown&timer=20&{_SEED}",
        f"/show?what=words&words=torches+gull&boxes=letters&item=1&{_SEED}",
    ),
    "/endings": (
        f"/endings?{_SEED}",
        "/endings/add?word=ferry&ending=s",
        "/endings/base?word=torches",
        f"/endings/rules?{_SEED}",
    ),
    "/pairs": (
        f"/pairs?sounds=i:e&{_SEED}",
        "/pairs/words-to-read?taught=default:40&pattern=CVC",
        "/pairs/spellings?sound=f",
    ),
    "/passage": ("/passage?taught=default:40&text=The+gulls+sit+on+the+ropes.+A+crab+hid.",),
    "/words": (
        "/words?word=ferries",
        "/words/sentences?word=torches",
        "/words/own",
    ),
    "/taught": ("/taught?taught=default:30", "/taught?taught=default:12&more=3"),
    "/about": ("/about?disagreements=true", "/api"),
}
PROBLEMS = {
    "/today": "/today?focus=zzz&seed=4",
    "/warm-up": "/warm-up?sound=zzz&seed=4",
    "/show": "/show?sound=zzz&item=1&seed=4",
    "/endings": "/endings?taught=zzzz&seed=4",
    "/pairs": "/pairs?sounds=zzz:e&seed=4",
    "/words": "/words?word=zzzz",
    "/passage": "/passage?taught=zzzz&text=gulls",
    "/taught": "/taught?taught=zzzz",
}


def addresses_of(path: str) -> tuple[str, ...]:
    """Return every address of a page that is tested and pictured."""
    problem = (PROBLEMS[path],) if path in PROBLEMS else ()
    return (path, *RESULTS.get(path, ()), *problem)

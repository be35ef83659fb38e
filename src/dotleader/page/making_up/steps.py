"""What is done at the bench, in sentences: print, cut, laminate, punch, bind. Only what this stock takes."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.stocks.fault import millimetres
from dotleader.handbook.stocks.measures import leaves_together, seals
from dotleader.page.bench.guide import guides
from dotleader.page.bench.plan import Plan, Punching
from dotleader.page.bench.plan_words import end_name, plan_text, plan_title
from dotleader.page.bench.punching import pattern_of
from dotleader.page.drawn import Font
from dotleader.page.imposition import imposition
from dotleader.page.making_up.amounts import places_said
from dotleader.page.making_up.feeding import fed_again, measured, piled, setting
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.names import FRONTS, SHEETS
from dotleader.page.sheet.cut_files import cut_by
from dotleader.page.sheet.cut_shapes import Layer
from dotleader.page.sheet.cut_words import colours_in_brief
from dotleader.page.type.metrics import shown
from dotleader.source.record import record

MATTE = "Take matte film: glossy film throws light back into the eye (NASA CR-177605, no. 17)."

FOLD = "Score each card along its fold, with a rule and a blunt point. Fold it with the front side outside."


@record
class Work:
    """One kind of work: its name, what is done, and the plan by which holes are punched where it has one."""

    title: str
    sentences: tuple[str, ...]
    plan: Plan | None = None


def works(job: Job) -> Iterator[Work]:
    """Everything but punching, in the order in which it is done; punching comes before the last (`punch_works`)."""
    yield Work("Print", tuple(_print(job)))
    cut = tuple(_cut(job))
    if cut:
        yield Work("Cut", cut)
    if job.book.stock.folded:
        yield Work("Fold", (FOLD,))
    if job.filmed:
        yield Work("Laminate", tuple(_laminate(job)))


def binding(job: Job) -> Work:
    return Work("Bind", tuple(_bind(job)))


def punch_works(job: Job) -> tuple[Work, ...]:
    """For each punch that is described, its plan; where none is, how the holes lie."""
    stock = job.book.stock
    if not stock.holes:
        return ()
    if job.punchings:
        return tuple(map(_punch, job.punchings))
    pattern = pattern_of(stock)
    pouch = " of the pouch" if job.filmed else ""
    comes = "hole comes" if len(pattern.centres) == 1 else "holes come"
    return (
        Work(
            "Punch",
            (
                f"The {comes} {places_said(pattern.centres)} from the {end_name(pattern, True)}{pouch} and "
                f"{millimetres(pattern.inset)} from the edge that is bound, {millimetres(pattern.diameter)} wide.",
                "With a punch block in the handbook, this sheet says which strokes make them.",
            ),
        ),
    )


def _punch(found: Punching) -> Work:
    if not isinstance(found, Plan):
        return Work(plan_title(found), plan_text(found))
    count = len(guides(found))
    last = ("The guide is" if count == 1 else "The guides are") + " at the end of this sheet, to be cut out."
    return Work(plan_title(found), (*plan_text(found), *((last,) if count else ())), found)


def _print(job: Job) -> Iterator[str]:
    if job.draft:
        yield "This is a draft with errors, to be read and not to be flown by."
    name = FRONTS if job.one_sided else SHEETS
    set_up = f"The first sheet of {name} has rulers: print it by itself. Each is {job.ruler // 1000} mm long."
    yield f"{setting(job.turning, job.one_sided)} {set_up if job.set_up else measured(job.ruler)}"
    if job.corrected:
        name = shown(job.corrected, Font.REGULAR)
        yield f"The backs are corrected for {name}: print on no other. Hold the first sheet against the light."
    else:
        yield (
            "The backs are not corrected for a printer. Against the light, front and back of the first sheet agree "
            "within 1 mm; if not, see dotleader print --calibration."
        )
    if job.copies > 1:
        once = "; the sheet of rulers comes once" if job.set_up else ""
        yield f"The file has all {job.copies} copies, one whole copy after another{once}."
    if job.one_sided:
        yield from fed_again(job.turning)


def _cut(job: Job) -> Iterator[str]:
    stock = job.book.stock
    if not job.cuttings:
        return
    filling = imposition(stock).filling
    if not filling:
        yield "By hand: along the crop marks, the steel rule on the leaf, in light strokes."
    elif job.trimmed:
        yield "By hand: where the sheet of rulers says. The leaves fill the paper, and no mark stands beside them."
    else:
        yield "A leaf is as large as its paper, and no leaf is cut out."
    filed = {cutting.number for cutting in job.cuttings}
    machine = cut_by([sheet.arrangement for sheet in job.papers if sheet.arrangement in filed])
    holes = ""
    if any(cutting.on(Layer.HOLES) for cutting in job.cuttings):
        again = "are punched once more through the film" if job.filmed else "need no punch then"
        wider = f", {millimetres(stock.relief)} wider all round so that film seals around them," if stock.relief else ""
        holes = f" Holes are cut with the rest{wider} and {again}."
    colours = colours_in_brief(job.cuttings)
    yield f"{machine} Fronts are up; for other programs there is a DXF beside each SVG. {colours}{holes}"
    if stock.recess:
        where = "where the sheet of rulers says" if filling else "between the two marks beside it"
        yield f"Cut the outer edge back by {millimetres(stock.recess)} but at the tab, {where}."
    if stock.corner_radius:
        film = " The pouch has the same radius, or is rounded to it." if job.filmed else ""
        yield f"Round the corners to {millimetres(stock.corner_radius)}.{film}"
    if job.order == "stack":
        yield from piled(job.papers, leaves_together(job.book.stock))


def _laminate(job: Job) -> Iterator[str]:
    across, along = (millimetres(seal) for seal in seals(job.book.stock))
    around = f"{across} of film all round" if across == along else f"{across} of film at the sides, {along} at the ends"
    yield MATTE
    yield f"Lay the leaf into the middle of the pouch: {around}. Paper that reaches the edge lets damp in."
    yield "Set the heat that the makers of film and laminator say, the closed edge first. Try a spoilt leaf."
    yield "Let each one cool flat under a board before it is handled: warm film keeps every bend."


def _bind(job: Job) -> Iterator[str]:
    stock = job.book.stock
    yield f"Put the {'cards' if stock.folded else 'leaves'} in the order drawn, fronts up, the first on the top."
    if stock.bound_at == "top" and not stock.folded:
        yield "The backs stand head to foot: leaves are turned up, over the upper edge."
    if job.part:
        yield "This is a part of the book, with the labels of all of it: others are left out."
    if stock.holes or stock.rings:
        yield "Close the rings and turn every leaf all the way round once: none may catch."

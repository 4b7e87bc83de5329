"""The preview shows what is wrong at the top of the page, and beside the sentence that it concerns."""

from __future__ import annotations

from generator.website.serve import NEW_PAGE, OLD_PAGE, Remark, Shown, with_remarks

PAGE = (
    '<html><head><title>Lift 2 kg slowly.</title></head><body class="x"><img alt="Lift 2 kg slowly.">'
    '<p>Lift <bdi dir="ltr">2\u00a0kg</bdi> slowly.</p><p>Hold for 3 s.</p></body></html>'
)
REMARK = Remark("a.yml:3:1: hard: too hard", "a.yml:3:1: too hard", "Lift 2 kg slowly.")


def shown(remark: Remark, path: str = "en/index.html", page: str = PAGE) -> str:
    """Return a page with one remark."""
    return with_remarks(page.encode(), Shown((remark,)), path).decode()


def test_a_remark_stands_after_its_sentence() -> None:
    """The mark follows the sentence as it is read, in its paragraph, and leaves title and picture alone."""
    html = shown(REMARK)
    assert '</bdi> slowly.<span role="note"' in html
    assert html.count("a.yml:3:1: too hard") == 1
    assert html.count('role="alert"') == 1


def test_a_sentence_with_a_phrase_is_found_filled() -> None:
    """``Hold for {hold}.`` is the sentence that the page shows with its number."""
    remark = Remark("b", "beside", "Hold for {hold}.")
    filled = PAGE.replace("Hold for 3 s.", 'Hold for <bdi dir="ltr">3\u00a0s</bdi>.')
    assert '</bdi>.<span role="note"' in shown(remark, page=filled)


def test_a_remark_is_no_part_of_a_link() -> None:
    """The name of an exercise leads to its page; the mark beside it does not."""
    linked = PAGE.replace("<p>Hold for 3 s.</p>", '<a href="x.html">Hold</a>')
    assert 'Hold</a><span role="note"' in shown(Remark("b", "beside", "Hold"), page=linked)


def test_a_remark_for_one_page_stands_on_no_other() -> None:
    """The name of an exercise stands on many pages; its remark is beside it on its own page alone."""
    remark = Remark("b", "beside", "Lift 2 kg slowly.", "en/exercises/lift.html")
    assert "beside" not in shown(remark)
    assert "beside" in shown(remark, "en/exercises/lift.html")


def test_what_has_no_sentence_stands_at_the_top_alone() -> None:
    """A remark without a sentence, or whose sentence is not on the page, is in the list at the top."""
    for words in ("", "Not on this page."):
        html = shown(Remark("c.yml: wrong", "beside", words))
        assert "c.yml: wrong" in html
        assert "beside" not in html


def test_the_list_says_whether_the_page_is_new() -> None:
    """After warnings the page shows the change; after errors it is the page of before."""
    assert NEW_PAGE in shown(REMARK)
    old = with_remarks(PAGE.encode(), Shown((REMARK,), fresh=False), "x.html").decode()
    assert OLD_PAGE in old
    assert NEW_PAGE not in old


def test_what_is_shown_can_do_nothing() -> None:
    """Words of a file that look like markup are shown as words."""
    html = shown(Remark("<script>1</script>", "<b>", "Lift 2 kg slowly."))
    assert "<script>" not in html
    assert "<b>" not in html


def test_a_page_without_remarks_is_as_it_was() -> None:
    """Nothing wrong, nothing added."""
    assert with_remarks(PAGE.encode(), Shown(), "x.html") == PAGE.encode()

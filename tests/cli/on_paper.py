#!/usr/bin/env python3
"""Prints a counter sheet on A4 and on Letter with a browser, and tells what came of it.

    on_paper.py SHEET [WORDS...]

For each paper: how many pages, whether the smallest words can be read (5.5 points or more: newspapers' small
advertisements are set in that, common practice), and which of the WORDS are not to be found in the print.
"""
import html
import pathlib
import re
import subprocess
import sys
import tempfile

LEAST_POINTS = 5.5
# Liberation Sans, which the sheet falls back to: ascent and descent of its hhea table, 0.905 and 0.212.
HEIGHT_OF_WORDS = 0.905 + 0.212


def print_sheet(sheet, paper, folder):
    page, pdf = folder / f"{paper}.html", folder / f"{paper}.pdf"
    page.write_text(sheet.replace("@page{", f"@page{{size:{paper};", 1), encoding="utf-8")
    subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder}/profile",
                    "--no-pdf-header-footer", f"--print-to-pdf={pdf}", str(page)], check=True, capture_output=True)
    return pdf


def read_words(pdf):
    """Each word of the print with the size of its type in points; turned words lie, so the lesser side counts."""
    boxes = subprocess.run(["pdftotext", "-bbox", str(pdf), "-"], check=True, capture_output=True, text=True).stdout
    for x0, y0, x1, y1, word in re.findall(
            r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>', boxes):
        sides = [float(x1) - float(x0), float(y1) - float(y0)]
        turned = sides[1] > 2.0 * sides[0] and len(html.unescape(word)) > 2
        yield html.unescape(word), (sides[0] if turned else sides[1]) / HEIGHT_OF_WORDS


def main(path, wanted):
    sheet = pathlib.Path(path).read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as folder:
        for paper in ("A4", "letter"):
            pdf = print_sheet(sheet, paper, pathlib.Path(folder))
            pages = re.search(r"^Pages:\s+(\d+)", subprocess.run(["pdfinfo", str(pdf)], check=True,
                              capture_output=True, text=True).stdout, re.M).group(1)
            words = list(read_words(pdf))
            smallest = min(size for _, size in words)
            print(f"{paper}: {pages} pages,", "legible" if smallest >= LEAST_POINTS else f"down to {smallest:.1f} points")
            text = " ".join(word for word, _ in words)
            for words_wanted in wanted:
                if words_wanted not in text:
                    print(f"{paper}: without {words_wanted}")


main(sys.argv[1], sys.argv[2:])

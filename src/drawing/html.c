/* SPDX-License-Identifier: MIT */
#include "drawing/html.h"

#include <string.h>

#include "drawing/escape.h"

/*
 * Black on white, and nothing told by colour alone. Sizes in points, so that print and screen agree; the
 * paper's own size is left to the printer, so that A4 and Letter both do.
 */
static const char STYLE[] =
    "@page{margin:11mm 10mm}"
    "*{box-sizing:border-box}"
    "body{margin:0;background:#fff;color:#000;font:8.5pt/1.25 Helvetica,Arial,'Liberation Sans','Nimbus "
    "Sans',sans-serif}"
    "main{max-width:190mm;margin:0 auto;padding:4mm 0}"
    "h1{font-size:15pt;line-height:1.15;margin:0 0 1mm}"
    "h2{font-size:10.5pt;margin:2.5mm 0 .6mm;break-after:avoid}"
    "p{margin:.6mm 0}"
    ".verdict{font-size:10.5pt;font-weight:bold}"
    "figure{margin:1.5mm 0;break-inside:avoid}"
    "svg{display:block;width:100%;height:auto}"
    ".pair{display:grid;grid-template-columns:1fr 1fr;gap:4mm;align-items:start}"
    "table{border-collapse:collapse;width:100%}"
    "caption{text-align:left;font-weight:bold;padding:1mm 0;break-after:avoid}"
    "tr:has([scope=rowgroup]){break-after:avoid}"
    "th,td{text-align:left;vertical-align:top;padding:.5mm 1.6mm .5mm 0;border-bottom:.2mm solid #777}"
    "thead th{border-bottom:.35mm solid #000;font-weight:normal;font-size:8pt}"
    "thead{display:table-header-group}"
    "tr{break-inside:avoid}"
    ".w3{width:3%}.w8{width:8%}.w10{width:10%}.w14{width:14%}.w16{width:16%}.w18{width:18%}.w20{width:20%}"
    ".w24{width:24%}.w36{width:36%}.w46{width:46%}"
    ".dense{font-size:7.5pt;line-height:1.2}"
    ".dense small{font-size:6.5pt}"
    ".plan svg{width:auto;max-width:100%;max-height:88mm;margin:0 auto}"
    ".plan .pair svg{max-height:80mm}"
    ".n{text-align:right;white-space:nowrap}"
    "small{font-size:7pt;color:#333}"
    "tbody th{font-weight:bold}"
    "ul,ol{margin:.6mm 0;padding-left:5mm}"
    "li{break-inside:avoid}"
    ".dense .run h2{display:inline;font-size:7.5pt}"
    ".dense .run ul{display:inline;padding:0}"
    ".dense .run li{display:inline}"
    ".dense .run li:not(:last-child)::after{content:' \\2022  '}"
    ".dense td,.dense th{padding-top:.3mm;padding-bottom:.3mm}"
    ".columns{columns:2;column-gap:7mm}"
    ".columns section{break-inside:avoid-page}"
    ".error{font-weight:bold}"
    "input[type=checkbox]{width:3.4mm;height:3.4mm;margin:0}"
    ".sign{display:grid;grid-template-columns:2fr 2fr 1fr;gap:6mm;margin-top:9mm;break-inside:avoid}"
    ".sign p{border-top:.3mm solid #000;padding-top:.8mm}"
    ".next{break-before:page}"
    "@media screen{main{padding:4mm}@media "
    "(max-width:150mm){.columns{columns:1}.pair{grid-template-columns:1fr}}table{display:block;overflow-x:"
    "auto}}";

const char *ow_sheet_style(void)
{
    return STYLE;
}

void ow_html_begin(ow_text *text, const char *title, const char *look)
{
    ow_text_add(text, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>");
    ow_escape(text, title);
    ow_text_add(text, "</title>\n<style>");
    ow_text_add(text, STYLE);
    ow_text_add(text, "</style>\n</head>\n<body>\n");
    ow_text_format(text, "<main%s>\n", look);
}

void ow_html_end(ow_text *text)
{
    ow_text_add(text, "</main>\n</body>\n</html>\n");
}

void ow_html_element(ow_text *text, const char *name, const char *words)
{
    ow_text_format(text, "<%s>", name);
    ow_escape(text, words);
    ow_text_format(text, "</%.*s>\n", (int)strcspn(name, " "), name);
}

/* One heading: "#price:8" is of figures and takes 8 in a hundred of the width (a class of the style sheet).
 */
static void write_heading(ow_text *text, const char *heading, size_t length)
{
    bool figures = length > 0 && heading[0] == '#';
    size_t name = figures ? 1 : 0, end = length;
    for (size_t index = name; index < length; index++)
        if (heading[index] == ':')
            end = index;
    ow_text_add(text, "<th scope=\"col\"");
    if (figures || end < length) {
        ow_text_add(text, figures ? " class=\"n" : " class=\"");
        if (end < length)
            ow_text_format(text, "%sw%.*s", figures ? " " : "", (int)(length - end - 1), heading + end + 1);
        ow_text_char(text, '"');
    }
    ow_text_char(text, '>');
    ow_escape_bytes(text, heading + name, end - name);
    ow_text_add(text, "</th>");
}

void ow_html_table_begin(ow_text *text, const char *caption, const char *headings)
{
    ow_text_add(text, "<table>\n<caption>");
    ow_escape(text, caption);
    ow_text_add(text, "</caption>\n<thead><tr>");
    for (;;) {
        size_t length = strcspn(headings, "|");
        write_heading(text, headings, length);
        if (headings[length] == '\0')
            break;
        headings += length + 1;
    }
    ow_text_add(text, "</tr></thead>\n<tbody>\n");
}

void ow_html_table_end(ow_text *text)
{
    ow_text_add(text, "</tbody>\n</table>\n");
}

void ow_html_cell(ow_text *text, const char *words)
{
    ow_html_element(text, "td", words);
}

void ow_html_figure_cell(ow_text *text, const char *words)
{
    ow_html_element(text, "td class=\"n\"", words);
}

void ow_html_tick_cell(ow_text *text, const char *what)
{
    ow_text_add(text, "<td><input type=\"checkbox\" aria-label=\"");
    ow_escape(text, what);
    ow_text_add(text, "\"/></td>\n");
}

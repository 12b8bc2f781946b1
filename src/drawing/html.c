/* SPDX-License-Identifier: MIT */
#include "drawing/html.h"

#include <string.h>

#include "drawing/escape.h"

/*
 * Black on white, and nothing told by colour alone. Sizes in points, so that print and screen agree; the
 * paper's own size is left to the printer, so that A4 and Letter both do. What is read is 7.5 points or more,
 * sources and notes 7; a job is set smaller than a layout alone.
 */
static const char STYLE[] =
    "@page{margin:7mm 9mm 8.5mm;@bottom-left{content:'Counter sheet';font:7pt sans-serif}"
    "@bottom-right{content:'page ' counter(page) ' of ' counter(pages);font:7pt sans-serif}}"
    "*{box-sizing:border-box}"
    "body{margin:0;background:#fff;color:#000;font:8pt/1.18 Helvetica,Arial,'Liberation "
    "Sans',sans-serif;orphans:2;widows:2;print-color-adjust:exact}"
    "main{max-width:198mm;margin:0 auto}"
    ".dense{font-size:7.5pt;line-height:1.13}"
    /* head */
    ".head{display:grid;grid-template-columns:1fr auto;gap:0 5mm;align-items:end;border-bottom:.5mm solid "
    "#000;padding-bottom:1mm}"
    "h1{font-size:14pt;line-height:1.1;margin:0}h1.long{font-size:10pt}"
    ".verdict{font-size:9pt;font-weight:bold;margin:0;border:.3mm solid #000;padding:.6mm 1.6mm;max-width:"
    "82mm}"
    ".verdict.no{background:#000;color:#fff}"
    ".facts{display:flex;flex-wrap:wrap;gap:0 6mm;margin:1mm 0 0}"
    ".facts div{display:flex;gap:1.2mm}"
    ".facts dt{color:#333}"
    ".facts dd{margin:0}"
    /* words */
    "h2{font-size:1.18em;line-height:1.15;margin:1.4mm 0 .4mm;break-after:avoid}"
    "p{margin:.5mm 0}"
    "small{font-size:7pt;color:#333}"
    "ul,ol{margin:.4mm 0;padding:0}li{margin-left:1.9em}" /* of the item: a list may stand in columns */
    "li,tr,figure,.few,.caution,.supply,.order,.sign{break-inside:avoid}"
    ".findings{list-style:none}.findings li,.run li{margin-left:0}"
    ".dense .findings{columns:2;column-gap:6mm}"
    ".findings li{display:grid;grid-template-columns:5.4mm 1fr;margin-bottom:.4mm}"
    ".run h2{display:inline;font-size:1em}"
    ".run ul{display:inline}"
    ".run li{display:inline}"
    ".run li:not(:last-child)::after{content:' \\2022  '}"
    ".dense .run{font-size:7pt}.dense .caution{font-size:7.5pt}"
    ".columns{columns:2;column-gap:6mm;margin-top:1.5mm}"
    "section+section{margin-top:.8mm}"
    "ol.columns{margin-top:.3mm}"
    ".caution,.reading{border:.4mm solid #000;padding:.8mm 1.6mm;margin-top:1.5mm}"
    ".reading,.facts dd,tbody th,.error,figcaption{font-weight:bold}.reading{border-style:dashed}"
    /* figures */
    "figure{margin:.8mm 0}"
    "figcaption{margin-bottom:.4mm}"
    "svg{display:block;width:100%;height:auto}"
    "svg.mark{width:4.6mm;height:4.6mm}"
    ".joints svg.mark{display:inline-block;width:2.7mm;height:2.7mm;vertical-align:-.5mm}"
    ".figures{display:grid;grid-template-columns:repeat(3,1fr);gap:0 3.5mm;margin-top:1.5mm}"
    ".figures caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}" /* heard
                                                                                                     */
    ".wide{grid-column:2/4}.wide ol{columns:2;column-gap:3.5mm}"
    ".figures+figure ol{columns:3;column-gap:3.5mm}"
    ".figures table{margin-top:.6mm}.figures .n{padding-left:1mm;padding-right:0}"
    /* tables */
    "table{border-collapse:collapse;width:100%}"
    "caption{text-align:left;font-weight:bold;font-size:1.18em;padding:0 0 .4mm;break-after:avoid}"
    "thead{display:table-header-group;break-after:avoid}thead tr{break-after:avoid}"
    "th,td{text-align:left;vertical-align:baseline;padding:.08mm 1mm .08mm 0;border-bottom:.15mm solid "
    "#888}"
    "th:last-child,td:last-child{padding-right:0}"
    "thead th{border-bottom:.3mm solid #000;font-weight:normal;font-size:7pt;line-height:1.1;vertical-align:"
    "bottom}"
    "th[scope=rowgroup]{writing-mode:vertical-rl;transform:rotate(180deg);text-align:center;padding:0;font-"
    "size:7pt}"
    "tbody+tbody tr:first-child>*{border-top:.3mm solid #000}"
    ".n{text-align:right}td.n,tbody th{white-space:nowrap}.supply "
    "td.n{white-space:normal}td.n.whole{white-space:nowrap}"
    ".w2{width:1.6%}.w3{width:3%}.w4{width:3.1%}.w5{width:6.1%}.w11{width:12.7%}.w25,.w26,.w27{width:25.5%}"
    ".joints table{table-layout:fixed}"
    ".supply{display:grid;grid-template-columns:1.85fr 1fr;gap:0 5mm;align-items:start;"
    "margin-top:1.5mm}"
    ".supply>:nth-child(3){grid-column:1/-1}"
    ".joints{margin-top:1.5mm}"
    ".notes{margin:.5mm 0 0;font-size:7pt;color:#333}"
    ".total td{font-weight:bold;border-bottom:.3mm solid #000;border-top:.3mm solid #000}"
    "input{appearance:none;width:2.7mm;height:2.7mm;margin:0;border:.25mm solid "
    "#000;vertical-align:-.3mm;background:#fff}"
    "input:checked{background:#000}"
    ".sign{display:grid;grid-template-columns:2fr 2fr 1fr;gap:6mm;margin-top:6.5mm;break-before:avoid}"
    ".sign p{border-top:.3mm solid #000;padding-top:.6mm;margin:0}"
    "@media screen{main{padding:4mm}@media (max-width:150mm){.columns,.dense .findings,.wide "
    "ol,.figures+figure ol{columns:1}.figures "
    "svg{max-width:80mm}.wide{grid-column:auto}.figures,.supply,.head{"
    "grid-template-columns:1fr}table{display:block;overflow-x:auto}}}";

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

void ow_html_table_head(ow_text *text, const char *headings)
{
    ow_text_add(text, "<thead><tr>");
    for (;;) {
        size_t length = strcspn(headings, "|");
        write_heading(text, headings, length);
        if (headings[length] == '\0')
            break;
        headings += length + 1;
    }
    ow_text_add(text, "</tr></thead>\n");
}

void ow_html_table_begin(ow_text *text, const char *caption, const char *headings)
{
    ow_text_add(text, "<table>\n");
    ow_html_element(text, "caption", caption);
    ow_html_table_head(text, headings);
    ow_text_add(text, "<tbody>\n");
}

void ow_html_table_end(ow_text *text)
{
    ow_text_add(text, "</tbody>\n</table>\n");
}

void ow_html_cell(ow_text *text, const char *words)
{
    ow_html_element(text, "td", words);
}

void ow_html_fact(ow_text *text, const char *name, const char *value)
{
    if (value == NULL || value[0] == '\0')
        return;
    ow_text_add(text, "<div>");
    ow_html_element(text, "dt", name);
    ow_html_element(text, "dd", value);
    ow_text_add(text, "</div>\n");
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

void ow_html_mark(ow_text *text, ow_canvas *canvas, const char *name)
{
    text->failed = text->failed || ow_canvas_status(canvas) != OW_OK;
    ow_text_format(text, "<svg class=\"mark\" role=\"img\" aria-label=\"%s\" viewBox=\"-.3 -.3 4.6 4.6\"><g ",
                   name);
    ow_text_add(text, "fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\">");
    ow_text_bytes(text, canvas->body.data, canvas->body.length);
    ow_text_add(text, "</g></svg>");
    ow_canvas_done(canvas);
}

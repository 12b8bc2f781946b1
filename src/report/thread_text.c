/* SPDX-License-Identifier: MIT */
/* A thread's dimensions and limits for a person. */
#include <math.h>

#include "oilway/report_thread.h"
#include "report/look.h"

/* In mm, and a hair more: 7/16 in is 11.1125 mm, which rounds up. */
#define MM(metres) ((metres)*1e3 + 1e-7)
#define DEGREES(rad) ((rad)*180 / 3.14159265358979323846)
#define COLUMN 19

/* "10.854 to 10.994", "up to 10.376", "from 12.000". */
static void write_limits(ow_text *text, const ow_size_limits *limits)
{
    size_t start = text->length;
    if (limits->has_least && limits->has_most)
        ow_text_format(text, "%.3f to %.3f", MM(limits->least_m), MM(limits->most_m));
    else if (limits->has_most)
        ow_text_format(text, "up to %.3f", MM(limits->most_m));
    else
        ow_text_format(text, "from %.3f", MM(limits->least_m));
    size_t width = text->length - start;
    ow_text_repeat(text, ' ', width < COLUMN ? COLUMN - width : 1);
}

static void write_side(ow_text *text, const ow_thread_size *size)
{
    ow_text_format(text, "  %-6s %-8s ", size->male ? "male" : "female", size->class_name);
    write_limits(text, &size->major);
    write_limits(text, &size->pitch_diameter);
    write_limits(text, &size->minor);
    ow_text_format(text, "%s\n", ow_basis_words(size->limits_basis));
}

static void write_head(ow_text *text, const ow_thread_size *size, const ow_style *style)
{
    const char *degree = style->ascii ? " deg" : "\xc2\xb0";
    ow_text name = ow_text_new(text->context);
    ow_thread_write(&name, &size->thread);
    ow_look_paint(text, OW_PAINT_STRONG, style, ow_text_words(&name));
    ow_text_done_into(&name, text);
    ow_text_format(text, "   %s\n", size->source);
    ow_text_format(text,
                   "  pitch %.4g mm (%.4g tpi), profile %.0f%s, depth %.3f mm of a sharp V of %.3f mm\n",
                   MM(size->pitch_m), 25.4e-3 / size->pitch_m, 2 * DEGREES(size->flank_angle_rad), degree,
                   MM(size->depth_m), MM(size->triangle_m));
    ow_text_format(text, "  basic%s: major %.3f, pitch %.3f, minor %.3f mm\n",
                   size->taper > 0 ? " at the gauge plane" : "", MM(size->major.basic_m),
                   MM(size->pitch_diameter.basic_m), MM(size->minor.basic_m));
}

static void write_taper(ow_text *text, const ow_thread_size *size)
{
    if (size->taper <= 0)
        return;
    if (size->male)
        ow_text_format(text,
                       "  male taper 1 in 16: gauge plane %.2f mm from the small end (pitch diameter %.3f mm "
                       "there), give or "
                       "take %.2f mm;\n    hand-tight %.1f turns, %.1f more for the wrench, useful thread "
                       "%.2f mm (%s)\n",
                       MM(size->gauge_m), MM(size->small_end_m), MM(size->gauge_tolerance_m),
                       size->hand_tight_m / size->pitch_m, size->wrench_m / size->pitch_m, MM(size->useful_m),
                       ow_basis_words(size->lengths_basis));
    else if (size->gauge_m > 0)
        ow_text_format(
            text, "  female taper 1 in 16: pitch diameter %.3f mm at the mouth, gauge plane %.2f mm inside\n",
            MM(size->mouth_m), MM(size->gauge_m));
    else
        ow_text_format(text,
                       "  female taper 1 in 16: gauge plane at the mouth (pitch diameter %.3f mm there)\n",
                       MM(size->mouth_m));
}

static void write_tap(ow_text *text, const ow_thread *thread)
{
    ow_tapping tapping;
    if (ow_thread_tapping(thread, &tapping) != OW_OK)
        return;
    ow_text_add(text, "  tapping ");
    ow_thread_write(text, &tapping.hole);
    ow_text_format(text, ": drill %.1f mm (bore %.2f to %.2f mm%s, %s)\n", MM(tapping.drill_m),
                   MM(tapping.minor_least_m), MM(tapping.minor_most_m),
                   tapping.taper_reamed ? " at the small end; better taper-reamed 1 in 16" : "",
                   ow_basis_words(tapping.basis));
    ow_text_format(text, "    full thread %.1f mm deep", MM(tapping.thread_depth_m));
    if (tapping.thread_depth_light_m > tapping.thread_depth_m)
        ow_text_format(text, " in steel, %.1f mm in light alloy", MM(tapping.thread_depth_light_m));
    ow_text_format(text, "; blind hole %.1f mm\n", MM(tapping.drill_depth_m));
    ow_text_format(text, "    at least %.1f mm of metal all round", MM(tapping.wall_least_m));
    if (tapping.face_m > 0)
        ow_text_format(text, ", flat face %.0f mm across for the washer (DIN 3852)", MM(tapping.face_m));
    else if (!tapping.taper_reamed)
        ow_text_add(text, ", flat face as wide as the washer");
    ow_text_add(text, " (common practice)\n");
}

static void write_cautions(ow_text *text, const ow_thread *thread, const ow_style *style)
{
    for (size_t i = 0; i < ow_tapping_caution_count(); i++) {
        if (!ow_tapping_caution_is_for(i, thread))
            continue;
        ow_text_format(text, "    %s ", ow_sign_words(OW_SIGN_WARN, style));
        ow_look_fold(text, style, 6, 6, ow_tapping_caution_at(i));
        ow_text_char(text, '\n');
    }
}

static void write_use(ow_text *text, const ow_thread *thread, const ow_style *style)
{
    ow_text_add(text, "  met as: ");
    ow_look_fold(text, style, 10, 10, ow_thread_use(thread));
    ow_text_char(text, '\n');
}

/* One thread of known pitch. */
static bool write_thread(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap,
                         const ow_style *style)
{
    bool any = false;
    ow_thread_size size, tapers[2];
    size_t taper_count = 0;
    for (int male = 1; male >= 0; male--)
        for (int c = only; c < (only == OW_CLASS_USUAL ? OW_CLASS_COUNT : (int)only + 1); c++) {
            if (ow_thread_size_of(thread, male != 0, (ow_thread_class)c, &size) != OW_OK ||
                (c == OW_CLASS_USUAL && size.class_name[0])) /* it comes again under its own name */
                continue;
            if (!any) {
                write_head(text, &size, style);
                ow_text_format(text, "  %-15s %-*s%-*s%s\n", "mm", COLUMN, "major", COLUMN, "pitch", "minor");
            }
            write_side(text, &size);
            if (size.taper > 0 && taper_count < 2)
                tapers[taper_count++] = size;
            any = true;
        }
    for (size_t i = 0; i < taper_count; i++)
        write_taper(text, &tapers[i]);
    if (any && ow_thread_joins(thread->family)[0])
        ow_text_format(text, "  joins: %s\n", ow_thread_joins(thread->family));
    if (any && ow_thread_use(thread)[0])
        write_use(text, thread, style);
    if (any && tap)
        write_tap(text, thread);
    return any;
}

/* In every pitch of the tables. */
static bool write_readings(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap,
                           const ow_style *style)
{
    bool any = false;
    for (size_t i = 0; i < ow_thread_count(); i++) {
        const ow_thread *known = ow_thread_at(i);
        if (known->family != thread->family || known->size != thread->size)
            continue;
        if (any)
            ow_text_char(text, '\n');
        any = write_thread(text, known, only, tap, style) || any;
    }
    return any;
}

bool ow_report_thread_text(ow_text *text, const ow_thread *thread, ow_thread_class only, bool tap,
                           const ow_style *style)
{
    bool any = thread->pitch != 0 ? write_thread(text, thread, only, tap, style)
                                  : write_readings(text, thread, only, tap, style);
    if (any && tap)
        write_cautions(text, thread, style);
    return any;
}

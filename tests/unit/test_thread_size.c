/* SPDX-License-Identifier: MIT */
/* Limits of size against published tables. The table is named beside each block of figures; lengths in mm
 * unless said. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/thread_size.h"

#define MM 1e-3
#define INCH 25.4e-3

static ow_thread thread_of(const char *words)
{
    ow_thread thread = {0};
    size_t used;
    if (ow_thread_read(words, &thread, &used) != OW_OK)
        fail_msg("\"%s\" is not read", words);
    return thread;
}

static ow_thread_size size_of(const char *words, bool male, ow_thread_class class_wanted)
{
    ow_thread_size size = {0};
    ow_thread thread = thread_of(words);
    if (ow_thread_size_of(&thread, male, class_wanted, &size) != OW_OK)
        fail_msg("\"%s\" has no size", words);
    return size;
}

static void near(const char *words, const char *what, double found_m, double expected, double unit,
                 double tolerance)
{
    if (fabs(found_m / unit - expected) > tolerance * 1.000001)
        fail_msg("%s: %s is %.5f, published %.5f", words, what, found_m / unit, expected);
}

typedef struct row {
    const char *words;
    double crest_most, crest_least, pitch_most, pitch_least;
} row;

static void assert_rows(const row *rows, size_t count, bool male, ow_thread_class class_wanted, double unit,
                        double tolerance)
{
    for (size_t i = 0; i < count; i++) {
        const row *r = &rows[i];
        ow_thread_size size = size_of(r->words, male, class_wanted);
        ow_size_limits crest = male ? size.major : size.minor;
        assert_true(crest.has_least && crest.has_most);
        near(r->words, "crest most", crest.most_m, r->crest_most, unit, tolerance);
        near(r->words, "crest least", crest.least_m, r->crest_least, unit, tolerance);
        near(r->words, "pitch most", size.pitch_diameter.most_m, r->pitch_most, unit, tolerance);
        near(r->words, "pitch least", size.pitch_diameter.least_m, r->pitch_least, unit, tolerance);
    }
}
#define ASSERT_ROWS(rows, male, class_wanted, unit, tolerance) \
    assert_rows(rows, sizeof(rows) / sizeof(rows)[0], male, class_wanted, unit, tolerance)

/* ISO 965-2:1998 table of limits for bolts, 6g (coarse and fine); M14 rows also in a public DIN 13 table. */
static void metric_bolts_keep_the_limits_of_6g(void **state)
{
    static const row rows[] = {
        {"M5x0.8", 4.976, 4.826, 4.456, 4.361},      {"M6x1", 5.974, 5.794, 5.324, 5.212},
        {"M8x1", 7.974, 7.794, 7.324, 7.212},        {"M8x1.25", 7.972, 7.760, 7.160, 7.042},
        {"M10x1", 9.974, 9.794, 9.324, 9.212},       {"M10x1.25", 9.972, 9.760, 9.160, 9.042},
        {"M10x1.5", 9.968, 9.732, 8.994, 8.862},     {"M12x1.25", 11.972, 11.760, 11.160, 11.028},
        {"M12x1.5", 11.968, 11.732, 10.994, 10.854}, {"M12x1.75", 11.966, 11.701, 10.829, 10.679},
        {"M14x1", 13.974, 13.794, 13.324, 13.206},   {"M14x1.5", 13.968, 13.732, 12.994, 12.854},
        {"M14x2", 13.962, 13.682, 12.663, 12.503},   {"M16x1.5", 15.968, 15.732, 14.994, 14.854},
        {"M16x2", 15.962, 15.682, 14.663, 14.503},   {"M18x1.5", 17.968, 17.732, 16.994, 16.854},
        {"M22x1.5", 21.968, 21.732, 20.994, 20.854}, {"M24x2", 23.962, 23.682, 22.663, 22.493},
    };
    (void)state;
    ASSERT_ROWS(rows, true, OW_CLASS_USUAL, MM, 0.0011);
    assert_string_equal(size_of("M10x1", true, OW_CLASS_USUAL).class_name, "6g");
}

/* ANSI/ASME B1.13M-1995 table of internal threads, 6H, a public copy; minor then pitch. */
static void metric_holes_keep_the_limits_of_6H(void **state)
{
    static const row rows[] = {
        {"M9x1.25", 7.912, 7.647, 8.348, 8.188},      {"M10x1", 9.153, 8.917, 9.500, 9.350},
        {"M10x1.25", 8.912, 8.647, 9.348, 9.188},     {"M10x1.5", 8.676, 8.376, 9.206, 9.026},
        {"M11x1", 10.153, 9.917, 10.500, 10.350},     {"M12x1", 11.153, 10.917, 11.510, 11.350},
        {"M12x1.25", 10.912, 10.647, 11.368, 11.188}, {"M12x1.5", 10.676, 10.376, 11.216, 11.026},
        {"M12x1.75", 10.441, 10.106, 11.063, 10.863}, {"M14x1.5", 12.676, 12.376, 13.216, 13.026},
        {"M14x2", 12.210, 11.835, 12.913, 12.701},    {"M10x0.75", 9.378, 9.188, 9.645, 9.513},
    };
    (void)state;
    ASSERT_ROWS(rows, false, OW_CLASS_USUAL, MM, 0.0011);
}

/* ISO 965-1: position h has no deviation; M6x1 and M10x1.5 6h in a public table of ANSI/ASME B1.13M. */
static void class_6h_has_the_tolerance_of_6g_without_its_deviation(void **state)
{
    static const row rows[] = {
        {"M5x0.8", 5.000, 4.850, 4.480, 4.385},
        {"M6x1", 6.000, 5.820, 5.350, 5.238},
        {"M10x1.5", 10.000, 9.764, 9.026, 8.894},
    };
    (void)state;
    ASSERT_ROWS(rows, true, OW_CLASS_6H_EXTERNAL, MM, 0.0011);
}

/* ISO 965-1:1998 table cells that the file does not carry (from memory): the formula must find them to within
 * the step of the R40 series that the standard's own rounding leaves open. */
static void sizes_beyond_the_table_follow_the_formula(void **state)
{
    static const row rows[] = {
        {"M3x0.5", 2.980, 2.874, 2.655, 2.580},
        {"M4x0.7", 3.978, 3.838, 3.523, 3.433},
        {"M20x2.5", 19.958, 19.623, 18.334, 18.164},
        {"M24x3", 23.952, 23.577, 22.003, 21.803},
    };
    (void)state;
    ASSERT_ROWS(rows, true, OW_CLASS_USUAL, MM, 0.0125);
    assert_int_equal(size_of("M20x2.5", true, OW_CLASS_USUAL).limits_basis, OW_BASIS_COMPUTED);
    assert_int_equal(size_of("M12x1.5", true, OW_CLASS_USUAL).limits_basis, OW_BASIS_PUBLISHED);
}

/* ASME B1.1 table of limits, class 2A, inches: public copies (1/4 to 5/8), the rest from memory of the same
 * table. 12-UN sizes: the printed table may differ by 0.0001. */
static void unified_bolts_keep_the_limits_of_2A(void **state)
{
    static const row rows[] = {
        {"1/4-20 UNC", 0.2489, 0.2408, 0.2164, 0.2127},   {"1/4-28 UNF", 0.2490, 0.2425, 0.2258, 0.2225},
        {"5/16-18 UNC", 0.3113, 0.3026, 0.2752, 0.2712},  {"5/16-24 UNF", 0.3114, 0.3042, 0.2843, 0.2806},
        {"3/8-24 UNF", 0.3739, 0.3667, 0.3468, 0.3430},   {"7/16-20 UNF", 0.4362, 0.4281, 0.4037, 0.3995},
        {"1/2-20 UNF", 0.4987, 0.4906, 0.4662, 0.4619},   {"9/16-18 UNF", 0.5611, 0.5524, 0.5250, 0.5205},
        {"5/8-18 UNF", 0.6236, 0.6149, 0.5875, 0.5828},   {"3/4-16 UNF", 0.7485, 0.7391, 0.7079, 0.7029},
        {"7/8-14 UNF", 0.8734, 0.8631, 0.8270, 0.8216},   {"1-12 UNF", 0.9982, 0.9868, 0.9441, 0.9382},
        {"1 1/16-12 UN", 1.0608, 1.0494, 1.0067, 1.0010},
    };
    (void)state;
    ASSERT_ROWS(rows, true, OW_CLASS_USUAL, INCH, 0.0001);
}

/* ASME B1.1 table of limits, internal: pitch diameter of 2B and 3B in mm from a tap maker's public table of
 * ANSI B1.1; minor diameters of 2B in inches, which the table gives to 0.001, from memory of the same table.
 */
static void unified_holes_keep_the_limits_of_2B_and_3B(void **state)
{
    static const struct {
        const char *words;
        double pitch_least, pitch_most_2b, pitch_most_3b, minor_least_in, minor_most_in;
    } rows[] = {
        {"1/4-28 UNF", 5.761, 5.870, 5.842, 0.211, 0.220},
        {"5/16-24 UNF", 7.249, 7.371, 7.341, 0.267, 0.277},
        {"3/8-24 UNF", 8.837, 8.961, 8.931, 0.330, 0.340},
        {"7/16-20 UNF", 10.287, 10.424, 10.391, 0.383, 0.395},
        {"1/2-20 UNF", 11.874, 12.017, 11.981, 0.446, 0.457},
        {"9/16-18 UNF", 13.371, 13.520, 13.482, 0.502, 0.515},
        {"5/8-18 UNF", 14.958, 15.110, 15.072, 0.565, 0.578},
        {"3/4-16 UNF", 18.019, 18.184, 18.143, 0.682, 0.696},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_thread_size usual = size_of(rows[i].words, false, OW_CLASS_2B);
        ow_thread_size close = size_of(rows[i].words, false, OW_CLASS_3B);
        near(rows[i].words, "pitch least", usual.pitch_diameter.least_m, rows[i].pitch_least, MM, 0.0013);
        near(rows[i].words, "pitch most 2B", usual.pitch_diameter.most_m, rows[i].pitch_most_2b, MM, 0.0013);
        near(rows[i].words, "pitch most 3B", close.pitch_diameter.most_m, rows[i].pitch_most_3b, MM, 0.0026);
        near(rows[i].words, "minor least", usual.minor.least_m, rows[i].minor_least_in, INCH, 0.0007);
        near(rows[i].words, "minor most", usual.minor.most_m, rows[i].minor_most_in, INCH, 0.0007);
    }
    /* 7/16-20 UNF-3B minor, 0.3916 in (from memory of the same table). */
    near("7/16-20", "minor 3B", size_of("7/16-20", false, OW_CLASS_3B).minor.most_m, 0.3916, INCH, 0.0001);
    near("7/16-20", "pitch 3A", size_of("7/16-20", true, OW_CLASS_3A).pitch_diameter.least_m, 0.4019, INCH,
         0.0001);
}

/* ASME B1.20.1 table of basic dimensions, inches; two public copies. Truncation: greatest, from the same. */
static void american_pipe_threads_stand_where_the_standard_puts_them(void **state)
{
    static const struct {
        const char *words;
        double small_end, gauge, hand_tight, useful, truncation_most;
    } rows[] = {
        {"1/16 NPT", 0.27118, 0.28118, 0.160, 0.2611, 0.0036},
        {"1/8 NPT", 0.36351, 0.37360, 0.1615, 0.2639, 0.0036},
        {"1/4 NPT", 0.47739, 0.49163, 0.2278, 0.4018, 0.0049},
        {"3/8 NPT", 0.61201, 0.62701, 0.240, 0.4078, 0.0049},
        {"1/2 NPT", 0.75843, 0.77843, 0.320, 0.5337, 0.0056},
        {"3/4 NPT", 0.96768, 0.98887, 0.339, 0.5457, 0.0056},
        {"1 NPT", 1.21363, 1.23863, 0.400, 0.6828, 0.0063},
        {"1 1/4 NPT", 1.55713, 1.58338, 0.420, 0.7068, 0.0063},
        {"2 NPT", 2.26902, 2.29627, 0.436, 0.7565, 0.0063},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_thread_size male = size_of(rows[i].words, true, OW_CLASS_USUAL);
        ow_thread_size female = size_of(rows[i].words, false, OW_CLASS_USUAL);
        near(rows[i].words, "E0", male.small_end_m, rows[i].small_end, INCH, 0.00001);
        near(rows[i].words, "E1", male.pitch_diameter.basic_m, rows[i].gauge, INCH, 0.00001);
        near(rows[i].words, "E1", female.mouth_m, rows[i].gauge, INCH, 0.00001);
        near(rows[i].words, "L1", male.gauge_m, rows[i].hand_tight, INCH, 0.0005);
        near(rows[i].words, "L2", male.useful_m, rows[i].useful, INCH, 0.0001);
        /* The bluntest crest: sharp crest less twice the greatest truncation, one turn small. */
        double blunt =
            rows[i].gauge + (male.triangle_m - male.pitch_m / 16) / INCH - 2 * rows[i].truncation_most;
        near(rows[i].words, "least major", male.major.least_m, blunt, INCH, 0.0002);
        assert_true(male.taper == 1.0 / 16 && male.pitch_diameter.most_m > male.pitch_diameter.least_m);
    }
}

/* ISO 7-1:1994 table 1: gauge diameter and length, useful thread, gauge tolerance. A public table of a thread
 * model; tolerances from memory. */
static void taper_pipe_threads_stand_where_the_standard_puts_them(void **state)
{
    static const struct {
        const char *size;
        double major, pitch, minor, gauge, useful, gauge_tolerance, internal_tolerance, parallel;
    } rows[] = {
        {"1/16", 7.723, 7.142, 6.561, 4.0, 6.5, 0.9, 1.1, 0.071},
        {"1/8", 9.728, 9.147, 8.566, 4.0, 6.5, 0.9, 1.1, 0.071},
        {"1/4", 13.157, 12.301, 11.445, 6.0, 9.7, 1.3, 1.7, 0.104},
        {"3/8", 16.662, 15.806, 14.950, 6.4, 10.1, 1.3, 1.7, 0.104},
        {"1/2", 20.955, 19.793, 18.631, 8.2, 13.2, 1.8, 2.3, 0.142},
        {"3/4", 26.441, 25.279, 24.117, 9.5, 14.5, 1.8, 2.3, 0.142},
        {"1", 33.249, 31.770, 30.291, 10.4, 16.8, 2.3, 2.9, 0.180},
        {"1 1/4", 41.910, 40.431, 38.952, 12.7, 19.1, 2.3, 2.9, 0.180},
        {"2", 59.614, 58.135, 56.656, 15.9, 23.4, 2.3, 2.9, 0.180},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        static const char *const families[] = {"R", "Rc", "Rp"};
        char words[3][16];
        ow_thread_size size[3];
        for (size_t k = 0; k < 3; k++) {
            snprintf(words[k], sizeof words[k], "%s%s", families[k], rows[i].size);
            size[k] = size_of(words[k], k == 0, OW_CLASS_USUAL);
            near(words[k], "major", size[k].major.basic_m, rows[i].major, MM, 0.0006);
            near(words[k], "pitch", size[k].pitch_diameter.basic_m, rows[i].pitch, MM, 0.0006);
            near(words[k], "minor", size[k].minor.basic_m, rows[i].minor, MM, 0.0006);
        }
        near(words[0], "gauge length", size[0].gauge_m, rows[i].gauge, MM, 0.05);
        near(words[0], "useful thread", size[0].useful_m, rows[i].useful, MM, 0.05);
        near(words[0], "gauge tolerance", size[0].gauge_tolerance_m, rows[i].gauge_tolerance, MM, 0.05);
        near(words[0], "small end", size[0].small_end_m, rows[i].pitch - rows[i].gauge / 16, MM, 0.001);
        near(words[1], "gauge tolerance", size[1].gauge_tolerance_m, rows[i].internal_tolerance, MM, 0.06);
        near(words[2], "pitch most", size[2].pitch_diameter.most_m, rows[i].pitch + rows[i].parallel, MM,
             0.0011);
        near(words[2], "minor least", size[2].minor.least_m, rows[i].minor - rows[i].parallel, MM, 0.0011);
    }
}

/* ISO 228-1 table 1: a public table of minor limits (G1/8 to G1) and of the pitch tolerances. */
static void parallel_pipe_threads_keep_the_limits_of_iso_228(void **state)
{
    static const struct {
        const char *words;
        double major, major_least, pitch, tolerance, minor_least, minor_most;
    } rows[] = {
        {"G1/16", 7.723, 7.509, 7.142, 0.107, 6.561, 6.843},
        {"G1/8", 9.728, 9.514, 9.147, 0.107, 8.566, 8.848},
        {"G1/4", 13.157, 12.907, 12.301, 0.125, 11.445, 11.890},
        {"G3/8", 16.662, 16.412, 15.806, 0.125, 14.950, 15.395},
        {"G1/2", 20.955, 20.671, 19.793, 0.142, 18.631, 19.172},
        {"G5/8", 22.911, 22.627, 21.749, 0.142, 20.587, 21.128},
        {"G3/4", 26.441, 26.157, 25.279, 0.142, 24.117, 24.658},
        {"G7/8", 30.201, 29.917, 29.039, 0.142, 27.877, 28.418},
        {"G1", 33.249, 32.889, 31.770, 0.180, 30.291, 30.931},
        {"G1 1/4", 41.910, 41.550, 40.431, 0.180, 38.952, 39.592},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const char *words = rows[i].words;
        ow_thread_size a = size_of(words, true, OW_CLASS_A), b = size_of(words, true, OW_CLASS_B);
        ow_thread_size hole = size_of(words, false, OW_CLASS_USUAL);
        near(words, "major most", a.major.most_m, rows[i].major, MM, 0.0006);
        near(words, "major least", a.major.least_m, rows[i].major_least, MM, 0.0006);
        near(words, "pitch most", a.pitch_diameter.most_m, rows[i].pitch, MM, 0.0006);
        near(words, "pitch least A", a.pitch_diameter.least_m, rows[i].pitch - rows[i].tolerance, MM, 0.0006);
        near(words, "pitch least B", b.pitch_diameter.least_m, rows[i].pitch - 2 * rows[i].tolerance, MM,
             0.0006);
        near(words, "hole pitch most", hole.pitch_diameter.most_m, rows[i].pitch + rows[i].tolerance, MM,
             0.0006);
        near(words, "hole minor least", hole.minor.least_m, rows[i].minor_least, MM, 0.0006);
        near(words, "hole minor most", hole.minor.most_m, rows[i].minor_most, MM, 0.0006);
    }
}

/* ASME B1.20.1 table of NPSM (from memory): major and pitch of the male, pitch of the female, inches. */
static void straight_pipe_swivels_follow_class_2(void **state)
{
    ow_thread_size male = size_of("1/8 NPSM", true, OW_CLASS_USUAL), female;
    (void)state;
    near("1/8 NPSM", "major most", male.major.most_m, 0.397, INCH, 0.0006);
    near("1/8 NPSM", "major least", male.major.least_m, 0.390, INCH, 0.0006);
    near("1/8 NPSM", "pitch most", male.pitch_diameter.most_m, 0.3725, INCH, 0.0001);
    near("1/8 NPSM", "pitch least", male.pitch_diameter.least_m, 0.3689, INCH, 0.0001);
    female = size_of("1/8 NPSM", false, OW_CLASS_USUAL);
    near("1/8 NPSM", "hole pitch least", female.pitch_diameter.least_m, 0.3736, INCH, 0.0001);
    near("1/8 NPSM", "hole pitch most", female.pitch_diameter.most_m, 0.3783, INCH, 0.0001);
    near("1/4 NPSM", "pitch least", size_of("1/4 NPSM", true, OW_CLASS_USUAL).pitch_diameter.least_m, 0.4859,
         INCH, 0.0001);
}

/* Every male enters its own female, whatever the classes: the clearance of the limits is never negative for a
 * parallel thread, and its crests pass the other's roots. */
static void every_thread_has_room_in_its_own_hole(void **state)
{
    static const ow_thread_class males[] = {OW_CLASS_6G_EXTERNAL, OW_CLASS_6H_EXTERNAL, OW_CLASS_2A,
                                            OW_CLASS_3A,          OW_CLASS_A,           OW_CLASS_B};
    static const ow_thread_class females[] = {OW_CLASS_USUAL, OW_CLASS_2B, OW_CLASS_3B, OW_CLASS_6H_INTERNAL};
    size_t pairs = 0;
    (void)state;
    for (size_t i = 0; i < ow_thread_count(); i++)
        for (size_t m = 0; m < 6; m++)
            for (size_t f = 0; f < 4; f++) {
                ow_thread_size male, female;
                if (ow_thread_size_of(ow_thread_at(i), true, males[m], &male) != OW_OK ||
                    ow_thread_size_of(ow_thread_at(i), false, females[f], &female) != OW_OK)
                    continue;
                pairs++;
                assert_true(female.pitch_diameter.least_m >= male.pitch_diameter.most_m - 1e-6);
                assert_true(female.major.least_m >= male.major.most_m - 2e-6);
                assert_true(female.minor.least_m >= male.minor.most_m - 2e-6);
                assert_true(male.pitch_diameter.least_m < male.pitch_diameter.most_m);
                assert_true(male.major.least_m > female.minor.most_m);
            }
    assert_true(pairs > 600);
}

static void what_has_no_size_is_refused(void **state)
{
    ow_thread_size size;
    ow_thread thread = thread_of("M10");
    (void)state;
    assert_int_equal(ow_thread_size_of(&thread, true, OW_CLASS_USUAL, &size), OW_RANGE);
    thread = thread_of("R1/8");
    assert_int_equal(ow_thread_size_of(&thread, false, OW_CLASS_USUAL, &size), OW_NONE);
    thread = thread_of("Rc1/8");
    assert_int_equal(ow_thread_size_of(&thread, true, OW_CLASS_USUAL, &size), OW_NONE);
    thread = thread_of("M10x1 taper");
    assert_int_equal(ow_thread_size_of(&thread, false, OW_CLASS_USUAL, &size), OW_NONE);
    thread = thread_of("M11x1 taper");
    assert_int_equal(ow_thread_size_of(&thread, true, OW_CLASS_USUAL, &size), OW_RANGE);
    thread = thread_of("M10x1");
    assert_int_equal(ow_thread_size_of(&thread, true, OW_CLASS_2A, &size), OW_RANGE);
    assert_int_equal(ow_thread_size_of(&thread, true, OW_CLASS_6H_INTERNAL, &size), OW_RANGE);
}

static void a_class_is_read_by_its_name(void **state)
{
    ow_thread_class read;
    (void)state;
    assert_true(ow_thread_class_read("6h", &read) && read == OW_CLASS_6H_EXTERNAL);
    assert_true(ow_thread_class_read("6H", &read) && read == OW_CLASS_6H_INTERNAL);
    assert_true(ow_thread_class_read("A", &read) && read == OW_CLASS_A);
    assert_true(ow_thread_class_read("class B", &read) && read == OW_CLASS_B);
    assert_true(ow_thread_class_read("2a", &read) && read == OW_CLASS_2A);
    assert_false(ow_thread_class_read("4A", &read));
    assert_false(ow_thread_class_read("6G", &read)); /* a hole's position, with other limits */
    assert_false(ow_thread_class_read("", &read));
}

/* As ISO 965-1, ASME B1.1 and ISO 228-1 write a designation whole. */
static void a_class_may_stand_behind_the_designation(void **state)
{
    static const struct {
        const char *words, *bare;
        ow_thread_class class_said;
    } rows[] = {
        {"M12x1.5-6g", "M12x1.5", OW_CLASS_6G_EXTERNAL},
        {"M12x1.5-6H", "M12x1.5", OW_CLASS_6H_INTERNAL},
        {"7/16-20 UNF-2A", "7/16-20", OW_CLASS_2A},
        {"7/16-20 UNF 3b", "7/16-20", OW_CLASS_3B},
        {"1 1/16-12 UN - 2B", "1 1/16-12", OW_CLASS_2B},
        {"G1/4 A", "G1/4", OW_CLASS_A},
        {"G1/4B", "G1/4", OW_CLASS_B},
        {"G1/4 class B", "G1/4", OW_CLASS_B},
        {"M10x1 ", "M10x1", OW_CLASS_USUAL},
    };
    static const char *const wrong[] = {"", "A", "-2A", "2A", "M12x1.5-6g-6g", "M12x1.5-7g", "M12x1.5 LH-6g"};
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_thread read, bare = thread_of(rows[i].bare);
        ow_thread_class said;
        if (ow_thread_read_class(rows[i].words, &read, &said) != OW_OK)
            fail_msg("%s is not read", rows[i].words);
        assert_true(ow_thread_same(&read, &bare));
        assert_int_equal(said, rows[i].class_said);
    }
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ow_thread read;
        ow_thread_class said;
        assert_int_equal(ow_thread_read_class(wrong[i], &read, &said), OW_INPUT);
    }
}

/* ISO 2306:1972 tapping drills (from memory) for metric and UNF; G: a public table of G drills; NPT: straight
 * drill K0, and a public table of NPT drills that stand within 0.35 mm above it. */
static void a_hole_is_drilled_with_the_usual_drill(void **state)
{
    static const struct {
        const char *words;
        double drill, tolerance;
    } rows[] = {
        {"M5x0.8", 4.2, 0.01},    {"M6x1", 5.0, 0.01},        {"M8x1.25", 6.8, 0.01},
        {"M10x1", 9.0, 0.01},     {"M10x1.25", 8.8, 0.01},    {"M10x1.5", 8.5, 0.01},
        {"M12x1.75", 10.2, 0.01}, {"M12x1.5", 10.5, 0.01},    {"M14x1.5", 12.5, 0.01},
        {"5/16-24", 6.9, 0.01},   {"3/8-24", 8.5, 0.01},      {"7/16-20", 9.9, 0.01},
        {"1/2-20", 11.5, 0.01},   {"9/16-18", 12.9, 0.01},    {"3/4-16", 17.5, 0.01},
        {"G1/8", 8.8, 0.01},      {"G1/4", 11.8, 0.01},       {"G3/8", 15.25, 0.06},
        {"G1/2", 19.0, 0.01},     {"G3/4", 24.5, 0.01},       {"G1", 30.75, 0.06},
        {"1/8 NPT", 8.5, 0.25},   {"1/4 NPT", 11.11, 0.2},    {"3/8 NPT", 14.68, 0.35},
        {"1/2 NPT", 18.0, 0.25},  {"M10x1 taper", 9.0, 0.01}, {"Rc1/8", 8.4, 0.15},
        {"R1/4", 11.2, 0.25},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ow_tapping tapping;
        ow_thread thread = thread_of(rows[i].words);
        assert_int_equal(ow_thread_tapping(&thread, &tapping), OW_OK);
        near(rows[i].words, "drill", tapping.drill_m, rows[i].drill, MM, rows[i].tolerance);
    }
}

static void the_drill_leaves_a_bore_within_the_limits(void **state)
{
    (void)state;
    for (size_t i = 0; i < ow_thread_count(); i++) {
        ow_tapping tapping;
        assert_int_equal(ow_thread_tapping(ow_thread_at(i), &tapping), OW_OK);
        assert_true(tapping.drill_m < tapping.minor_most_m + 1e-6);
        assert_true(tapping.drill_m > tapping.minor_least_m - 0.06e-3);
        assert_true(tapping.drill_depth_m > tapping.thread_depth_light_m);
        assert_true(tapping.wall_least_m >= 3e-3);
    }
    assert_true(ow_tapping_caution_count() >= 5);
    assert_null(ow_tapping_caution_at(ow_tapping_caution_count()));
}

/* A washer's face is no matter of a taper port, nor a taper's fit of a washer port (common practice). */
static void cautions_go_by_the_hole_that_is_tapped(void **state)
{
    ow_thread taper = thread_of("R1/8"), parallel = thread_of("M10x1 taper"); /* tapped Rc1/8 and M10x1 */
    size_t for_taper = 0, for_parallel = 0, for_both = 0;
    (void)state;
    for (size_t i = 0; i < ow_tapping_caution_count(); i++) {
        bool one = ow_tapping_caution_is_for(i, &taper), other = ow_tapping_caution_is_for(i, &parallel);
        assert_true(one || other);
        for_taper += one;
        for_parallel += other;
        for_both += one && other;
        if (strstr(ow_tapping_caution_at(i), "washer:"))
            assert_false(one);
        if (strstr(ow_tapping_caution_at(i), "A taper thread is tapped"))
            assert_false(other);
    }
    assert_true(for_taper > for_both && for_parallel > for_both && for_both >= 5);
    assert_false(ow_tapping_caution_is_for(ow_tapping_caution_count(), &taper));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(metric_bolts_keep_the_limits_of_6g),
        cmocka_unit_test(metric_holes_keep_the_limits_of_6H),
        cmocka_unit_test(class_6h_has_the_tolerance_of_6g_without_its_deviation),
        cmocka_unit_test(sizes_beyond_the_table_follow_the_formula),
        cmocka_unit_test(unified_bolts_keep_the_limits_of_2A),
        cmocka_unit_test(unified_holes_keep_the_limits_of_2B_and_3B),
        cmocka_unit_test(american_pipe_threads_stand_where_the_standard_puts_them),
        cmocka_unit_test(taper_pipe_threads_stand_where_the_standard_puts_them),
        cmocka_unit_test(parallel_pipe_threads_keep_the_limits_of_iso_228),
        cmocka_unit_test(straight_pipe_swivels_follow_class_2),
        cmocka_unit_test(every_thread_has_room_in_its_own_hole),
        cmocka_unit_test(what_has_no_size_is_refused),
        cmocka_unit_test(a_class_is_read_by_its_name),
        cmocka_unit_test(a_class_may_stand_behind_the_designation),
        cmocka_unit_test(cautions_go_by_the_hole_that_is_tapped),
        cmocka_unit_test(a_hole_is_drilled_with_the_usual_drill),
        cmocka_unit_test(the_drill_leaves_a_bore_within_the_limits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

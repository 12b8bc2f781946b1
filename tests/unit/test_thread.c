/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

#include "oilway/thread.h"

static const ow_context context = OW_CONTEXT_INIT;

static void assert_reads(const char *words, const char *canonical, size_t used)
{
    ow_thread thread;
    size_t length = 0;
    if (ow_thread_read(words, &thread, &length) != OW_OK)
        fail_msg("\"%s\" is not read", words);
    ow_text text = ow_text_new(&context);
    ow_thread_write(&text, &thread);
    assert_int_equal(ow_text_status(&text), OW_OK);
    assert_string_equal(ow_text_words(&text), canonical);
    assert_int_equal(length, used ? used : strlen(words));
    ow_text_done(&text);
}

static void the_shop_may_write_a_designation_in_its_own_way(void **state)
{
    (void)state;
    assert_reads("M12x1.5", "M12x1.5", 0);
    assert_reads("m12 X 1.50", "M12x1.5", 0);
    assert_reads("M12\xc3\x97"
                 "1.25",
                 "M12x1.25", 0);
    assert_reads("M10", "M10", 0);
    assert_reads("M10 female", "M10", 3);
    assert_reads("M10x1 male taper", "M10x1", 5);
    assert_reads("M10x1 keg", "M10x1 taper", 0);
    assert_reads("7/16-20 UNF", "7/16-20 UNF", 0);
    assert_reads("7/16-20", "7/16-20 UNF", 0);
    assert_reads("7/16 unf", "7/16-20 UNF", 0);
    assert_reads("7/16\"-20 UNF male", "7/16-20 UNF", 12);
    assert_reads("7/16-24 female", "7/16-24 UNS", 7);
    assert_reads("1 1/16-12 UN", "1 1/16-12 UN", 0);
    assert_reads("1-1/16-12", "1 1/16-12 UN", 0);
    assert_reads("1-12 UNF", "1-12 UNF", 0);
    assert_reads("1-14", "1-14 UNS", 0);
    assert_reads("1/8-27 NPT male", "1/8-27 NPT", 10);
    assert_reads("1/8 NPT", "1/8-27 NPT", 0);
    assert_reads("1/8npt", "1/8-27 NPT", 0);
    assert_reads("1-11.5 NPT", "1-11.5 NPT", 0);
    assert_reads("1-11 1/2 NPT", "1-11.5 NPT", 0);
    assert_reads("1/4 NPTF", "1/4-18 NPTF", 0);
    assert_reads("1/4 NPSM", "1/4-18 NPSM", 0);
    assert_reads("R1/8", "R1/8", 0);
    assert_reads("RC 1/8 female", "Rc1/8", 6);
    assert_reads("rp1/2", "Rp1/2", 0);
    assert_reads("1/8 BSPT", "R1/8", 0);
    assert_reads("1/8-28 BSPP", "G1/8", 0);
    assert_reads("G 1 1/4", "G1 1/4", 0);
    assert_reads("3/8 UN", "3/8 UN", 0);
}

static void what_no_table_carries_is_refused(void **state)
{
    static const char *const wrong[] = {
        "",         "M",           "Mx1",        "M12x",       "M12x1.5y",    "M12x9",       "M0.5",
        "M1234567", "1/8",         "1/8-28 NPT", "1/3-20 UNF", "7/16-21 UNF", "7/16-20 UNC", "1/64-20 UNF",
        "G1/7",     "G",           "R5/8",       "Q1/8",       "9/8 NPT",     "7/16-",       "-4",
        "1/0 NPT",  "9999999 NPT", "M12x1.5555", "1/8 BSP",    "banjo 10",    "hose -4",     "1/4-18",
    };
    (void)state;
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ow_thread thread = {OW_THREAD_G, -7, -7};
        size_t used = 77;
        if (ow_thread_read(wrong[i], &thread, &used) != OW_INPUT)
            fail_msg("\"%s\" was read", wrong[i]);
        assert_int_equal(thread.size, -7);
        assert_int_equal(used, 77);
    }
}

static void every_size_known_reads_back_from_its_own_name(void **state)
{
    (void)state;
    assert_true(ow_thread_count() > 200);
    assert_null(ow_thread_at(ow_thread_count()));
    for (size_t i = 0; i < ow_thread_count(); i++) {
        const ow_thread *thread = ow_thread_at(i);
        ow_thread again;
        size_t used;
        ow_text text = ow_text_new(&context);
        ow_thread_write(&text, thread);
        assert_int_equal(ow_thread_read(ow_text_words(&text), &again, &used), OW_OK);
        assert_true(ow_thread_same(thread, &again));
        assert_int_equal(used, text.length);
        ow_text_done(&text);
        for (size_t k = 0; k < i; k++)
            assert_false(ow_thread_same(thread, ow_thread_at(k)));
        assert_true(ow_thread_major_m(thread) > 0.002 && ow_thread_major_m(thread) < 0.07);
        assert_true(ow_thread_pitch_m(thread) > 0.0004 && ow_thread_pitch_m(thread) < 0.006);
    }
}

/* ISO 724 (M12x1.5), ASME B1.1 (7/16-20), ASME B1.20.1 (E1 of 1/8-27: 0.37360 in, and 0.8 P),
 * ISO 7-1 and ISO 228-1 (1/8: 9.728 mm, 28 threads per inch). */
static void basic_diameter_and_pitch_are_those_of_the_standard(void **state)
{
    static const struct {
        const char *words;
        double major_mm, pitch_mm;
    } cases[] = {
        {"M12x1.5", 12, 1.5},
        {"7/16-20 UNF", 11.1125, 1.27},
        {"1/8 NPT", 10.242, 0.9407},
        {"1-11.5 NPT", 33.228, 2.2087},
        {"R1/8", 9.728, 0.9071},
        {"G1/2", 20.955, 1.8143},
        {"M10", 10, 0},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        ow_thread thread;
        size_t used;
        assert_int_equal(ow_thread_read(cases[i].words, &thread, &used), OW_OK);
        assert_true(fabs(ow_thread_major_m(&thread) * 1e3 - cases[i].major_mm) < 0.0006);
        assert_true(fabs(ow_thread_pitch_m(&thread) * 1e3 - cases[i].pitch_mm) < 0.00006);
    }
}

/* Names of the trade: ISO 2904 (Tr), JIS B 0203 (PT), ISO 228-1, ISO 965-1 (Ph, classes), ASME B1.1. */
static void a_designation_that_no_table_carries_is_called_by_its_name(void **state)
{
    static const struct {
        const char *words, *marked, *said;
    } rows[] = {
        {"M12x1.5 LH", "LH", "left-hand"},
        {"M12x1.5-LH male washer", "M12x1.5-LH", "left-hand"},
        {"3/8-24 UNF left-hand", "left-hand", "left-hand"},
        {"M16xPh3P1.5", "M16xPh3P1.5", "several starts"},
        {"M12x1.5 2 start", "start", "several starts"},
        {"Tr20x4", "Tr20x4", "trapezoidal"},
        {"1/4 BSW female", "BSW", "Whitworth"},
        {"pt1/8", "pt1/8", "ISO 7-1"},
        {"PF 1/8", "PF", "ISO 228-1"},
        {"3/8-24 NF", "NF", "UNF"},
        {"7/16-20 UNJF-3A", "UNJF-3A", "rounded roots"},
        {"1/8 NPSF", "NPSF", "NPSM"},
        {"#10-32 UNF", "#10-32", "not in the tables"},
        {"7/16-20 UNF-2A male", "UNF-2A", "tolerance class"},
        {"M12x1.5-6H", "M12x1.5-6H", "tolerance class"},
    };
    static const char *const plain[] = {
        "M12x1.5", "7/16-20 UNF male washer", "1/8 NPT", "R1/8 male", "G1/4 male cone60", "", "  "};
    size_t start, length;
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const ow_thread_other *other = ow_thread_other_of(rows[i].words, &start, &length);
        if (!other || !strstr(other->what, rows[i].said))
            fail_msg("%s: %s", rows[i].words, other ? other->what : "nothing");
        assert_int_equal(length, strlen(rows[i].marked));
        assert_memory_equal(rows[i].words + start, rows[i].marked, length);
        assert_true(strlen(other->what) < 120 && strlen(other->mend) < 120 && other->mend[0]);
    }
    for (size_t i = 0; i < sizeof plain / sizeof plain[0]; i++)
        assert_null(ow_thread_other_of(plain[i], &start, &length));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_shop_may_write_a_designation_in_its_own_way),
        cmocka_unit_test(what_no_table_carries_is_refused),
        cmocka_unit_test(every_size_known_reads_back_from_its_own_name),
        cmocka_unit_test(a_designation_that_no_table_carries_is_called_by_its_name),
        cmocka_unit_test(basic_diameter_and_pitch_are_those_of_the_standard),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

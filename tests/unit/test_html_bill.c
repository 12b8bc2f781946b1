/* SPDX-License-Identifier: MIT */
/* The bill on a counter sheet: what holds for a consumable is found below by its letter. */
#include <stdio.h>
#include <string.h>

#include "drawing/html.h"
#include "support/testing.h"

#define SIZES 60

static size_t count_of(const char *words, const char *wanted)
{
    size_t count = 0;
    for (const char *at = strstr(words, wanted); at != NULL; at = strstr(at + 1, wanted))
        count++;
    return count;
}

/* A ring of each of many sizes, each with a note of its own. */
static void each_note_of_many_has_a_letter_of_its_own(void **state)
{
    static char notes[SIZES][32];
    static ow_bill_consumable items[SIZES];
    const ow_context context = OW_CONTEXT_INIT;
    ow_text text = ow_text_new(&context);
    (void)state;
    for (int size = 0; size < SIZES; size++) {
        (void)snprintf(notes[size], sizeof notes[size], "%d mm outside", 10 + size);
        items[size] = (ow_bill_consumable){"O-ring", "", 1, "measured", notes[size]};
    }
    const ow_bill bill = {.context = &context, .consumables = items, .consumable_count = SIZES};
    ow_html_bill(&text, &bill);
    assert_int_equal(ow_text_status(&text), OW_OK);
    for (int size = 0; size < SIZES; size++) {
        char letter[8] = "", row[48], note[64];
        if (size >= 26)
            letter[0] = (char)('a' + size / 26 - 1);
        letter[strlen(letter)] = (char)('a' + size % 26);
        (void)snprintf(row, sizeof row, "<small>(%s)</small>", letter);
        (void)snprintf(note, sizeof note, "(%s) %.30s; measured", letter, notes[size]);
        assert_int_equal(count_of(ow_text_words(&text), row), 1);
        assert_int_equal(count_of(ow_text_words(&text), note), 1);
    }
    ow_text_done(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_note_of_many_has_a_letter_of_its_own),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

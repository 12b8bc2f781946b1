/* SPDX-License-Identifier: MIT */
/* The block `asked`: limits, and who is served and who is kept. */
#include <string.h>

#include "base/words.h"
#include "layout/asked.h"
#include "layout/reading.h"

/* The two lists of ports stand among the limits, as the options do on the command line. */
static const char *const port_keys[] = {"to", "keep"};

static ow_status read_range(ow_reading *reading, const ow_asked_key *key, const ow_yaml *node,
                            double *low_high)
{
    double low, high;
    if (node->kind == OW_YAML_SCALAR &&
        ow_quantity_read_range(node->words, key->dimension, &low, &high) == OW_OK && low >= key->low &&
        high <= key->high) {
        low_high[0] = low;
        low_high[1] = high;
        return OW_OK;
    }
    ow_reading_fault(reading, node->span, "a range of lengths up to 50 mm, such as 0.8..1.2 mm", NULL,
                     "%s: this is no range", key->key);
    return OW_INPUT;
}

static ow_status read_key(ow_reading *reading, const ow_asked_key *key, const ow_yaml *member,
                          ow_limits *limits)
{
    const ow_context *context = reading->context;
    const ow_source *source = reading->source;
    void *to = (char *)limits + key->offset;
    size_t choice = 0, choices = 0;
    bool yes = false;
    ow_status status = OW_OK;
    switch (key->type) {
    case OW_ASKED_QUANTITY:
        return ow_yaml_quantity(context, source, member, key->dimension, key->low, key->high, to);
    case OW_ASKED_RANGE:
        return read_range(reading, key, ow_yaml_real(member), to);
    case OW_ASKED_CHOICE:
        while (choices < OW_ASKED_CHOICES && key->choices[choices])
            choices++;
        status = ow_yaml_choice(context, source, member, key->choices, choices, &choice);
        if (status == OW_OK)
            *(int *)to = (int)choice;
        return status;
    case OW_ASKED_YES:
    case OW_ASKED_UNLESS:
        status = ow_yaml_bool(context, source, member, &yes);
        if (status == OW_OK)
            *(bool *)to = yes != (key->type == OW_ASKED_UNLESS);
        return status;
    case OW_ASKED_DEGREES:
        status = ow_yaml_quantity(context, source, member, key->dimension, key->low, key->high, to);
        limits->has_temperature = limits->has_temperature || status == OW_OK;
        return status;
    }
    return OW_FAULT;
}

static void unknown_key(ow_reading *reading, const ow_yaml *member)
{
    const char *known[32];
    size_t count = ow_asked_key_count();
    ow_text expected = ow_text_new(reading->context);
    for (size_t i = 0; i < count + 2; i++) {
        known[i] = i < count ? ow_asked_key_at(i)->key : port_keys[i - count];
        ow_text_format(&expected, "%s%s", i ? ", " : "one of ", known[i]);
    }
    ow_reading_note(reading, ow_text_status(&expected));
    if (!expected.failed)
        ow_reading_unknown(reading, member->key_span, ow_text_words(&expected),
                           ow_words_nearest(member->key, strlen(member->key), known, count + 2),
                           "unknown key", member->key);
    ow_text_done(&expected);
}

/* What the circuit refuses unless somebody says that it may be. */
static void refuse_usual(ow_layout *layout)
{
    for (size_t i = 0; i < ow_asked_key_count(); i++) {
        const ow_asked_key *key = ow_asked_key_at(i);
        if (key->type == OW_ASKED_UNLESS)
            *(bool *)((char *)&layout->asked + key->offset) = layout->circuit == key->refuses;
    }
}

void ow_reading_asked(ow_reading *reading, const ow_yaml *asked)
{
    ow_layout *layout = reading->layout;
    layout->asked = (ow_limits)OW_LIMITS_INIT;
    if (!asked || ow_yaml_is_null(asked))
        return;
    if (asked->kind != OW_YAML_MAP) {
        ow_reading_fault(reading, asked->span, "a map, such as {bore: 3 mm, flexible: yes}", NULL,
                         "\"asked\" is not a map");
        return;
    }
    refuse_usual(layout);
    for (const ow_yaml *member = asked->first; member && !ow_reading_enough(reading); member = member->next) {
        const ow_asked_key *key = ow_asked_key_find(member->key);
        if (key) {
            layout->has_asked = true;
            ow_reading_note(reading, read_key(reading, key, member, &layout->asked));
        } else if (strcmp(member->key, "to") != 0 && strcmp(member->key, "keep") != 0) {
            unknown_key(reading, member);
        }
    }
}

/* SPDX-License-Identifier: MIT */
/*
 * One case for a rule: a catalogue and a text that pass, one change that raises the rule and no other, and
 * the mend that the finding prints, done. A find must stand in the text just once.
 */
#ifndef OW_TESTS_RULE_CASE_H
#define OW_TESTS_RULE_CASE_H

#include "oilway/context.h"

typedef enum rule_subject {
    SUBJECT_LAYOUT,
    SUBJECT_JOB,
    SUBJECT_LINE,
    SUBJECT_LOOP,
    SUBJECT_DRAIN,
    SUBJECT_OIL
} rule_subject;

typedef struct rule_edit {
    bool catalogue; /* else the text */
    const char *find, *put;
} rule_edit;

typedef struct rule_case {
    const char *rule;
    rule_subject subject;
    const char *text;
    rule_edit change;
    ow_severity severity; /* of the worst finding that it raises */
    const char *message;  /* words that the finding must hold: its figures */
    const char *mend;     /* words that the printed mend must hold */
    rule_edit mended;     /* that mend, done on what was changed */
} rule_case;

#define TEXT(find, put)  \
    {                    \
        false, find, put \
    }
#define PAGE(find, put) \
    {                   \
        true, find, put \
    }

#endif

/* SPDX-License-Identifier: MIT */
/* Designations that mean a thread, and none that is known here: what to say to whoever writes one. */
#include <string.h>

#include "oilway/thread.h"

#define LEFT                                                                                \
    {                                                                                       \
        "left-hand threads are not known, only right-hand ones",                            \
            "its sizes are those of the right-hand thread; nothing right-hand goes onto it" \
    }
#define STARTS                                                                 \
    {                                                                          \
        "threads of several starts are not known, only single ones",           \
            "fittings have one start: see whether one turn advances one pitch" \
    }
#define MOTION                                                                       \
    {                                                                                \
        "trapezoidal and round threads move things: no fitting is screwed with one", \
            "measure it again: oilway caliper"                                       \
    }
#define WHITWORTH                                                                               \
    {                                                                                           \
        "Whitworth bolt threads are not known: of 55 degree threads only the pipe threads are", \
            "for a pipe thread write G (parallel), R (taper male) or Rc (taper female)"         \
    }
#define SERIES                                                                                        \
    {                                                                                                 \
        "a series whose sizes are not in the tables", "oilway caliper tells what it may be taken for" \
    }
#define STRAIGHT_PIPE                                                           \
    {                                                                           \
        "of the other American pipe threads only NPT, NPTF and NPSM are known", \
            "a swivel's straight nut is NPSM, such as 1/4 NPSM female swivel"   \
    }
#define OLD_TAPER                                                                                       \
    {                                                                                                   \
        "PT is the old name of the ISO 7-1 taper thread", "write R (male) or Rc (female), such as R1/8" \
    }
#define OLD_PARALLEL                                                                   \
    {                                                                                  \
        "PF is the old name of the ISO 228-1 parallel thread", "write G, such as G1/8" \
    }
#define OLD_UNIFIED                                                                       \
    {                                                                                     \
        "NC, NF and NEF are the old names of UNC, UNF and UNEF", "write UNC, UNF or UNEF" \
    }
#define ROUND_ROOT                                                                                         \
    {                                                                                                      \
        "UNJ and MJ threads have rounded roots and limits that are not known",                             \
            "their sizes are those of UN and M: a MJ or UNJ male goes into those, not the other way about" \
    }
#define CLASS                                                             \
    {                                                                     \
        "a tolerance class is no part of an end",                         \
            "leave it out; oilway thread prints the limits of each class" \
    }

/* How a word of the designation is known. */
typedef enum match { WHOLE, BEFORE_DIGIT, BEGINNING, ENDING } match;

/* Names: the standards (ISO 2904 Tr, ISO 228-1, JIS B 0203 PT, ASME B1.1 and B1.20.1) and common practice. */
static const struct other {
    match match;
    const char *word;
    ow_thread_other told;
} OTHERS[] = {
    {WHOLE, "lh", LEFT},
    {WHOLE, "left", LEFT},
    {WHOLE, "left-hand", LEFT},
    {WHOLE, "lefthand", LEFT},
    {ENDING, "-lh", LEFT},
    {WHOLE, "start", STARTS},
    {WHOLE, "starts", STARTS},
    {ENDING, "-start", STARTS},
    {BEFORE_DIGIT, "tr", MOTION},
    {WHOLE, "acme", MOTION},
    {BEFORE_DIGIT, "rd", MOTION},
    {WHOLE, "bsw", WHITWORTH},
    {WHOLE, "bsf", WHITWORTH},
    {WHOLE, "whitworth", WHITWORTH},
    {BEFORE_DIGIT, "w", WHITWORTH},
    {WHOLE, "ba", SERIES},
    {BEFORE_DIGIT, "pg", SERIES},
    {BEFORE_DIGIT, "#", SERIES},
    {WHOLE, "nps", STRAIGHT_PIPE},
    {WHOLE, "npsc", STRAIGHT_PIPE},
    {WHOLE, "npsf", STRAIGHT_PIPE},
    {WHOLE, "npsi", STRAIGHT_PIPE},
    {WHOLE, "npsl", STRAIGHT_PIPE},
    {WHOLE, "nptr", STRAIGHT_PIPE},
    {WHOLE, "pt", OLD_TAPER},
    {BEFORE_DIGIT, "pt", OLD_TAPER},
    {WHOLE, "pf", OLD_PARALLEL},
    {BEFORE_DIGIT, "pf", OLD_PARALLEL},
    {WHOLE, "nc", OLD_UNIFIED},
    {WHOLE, "nf", OLD_UNIFIED},
    {WHOLE, "nef", OLD_UNIFIED},
    {BEGINNING, "unj", ROUND_ROOT},
    {BEFORE_DIGIT, "mj", ROUND_ROOT},
    {ENDING, "-6g", CLASS},
    {ENDING, "-6h", CLASS},
    {ENDING, "-2a", CLASS},
    {ENDING, "-2b", CLASS},
    {ENDING, "-3a", CLASS},
    {ENDING, "-3b", CLASS},
};

#define COUNT (sizeof OTHERS / sizeof OTHERS[0])

static char lower(char character)
{
    return (char)(character >= 'A' && character <= 'Z' ? character - 'A' + 'a' : character);
}

static bool is_digit(char character)
{
    return character >= '0' && character <= '9';
}

static bool equals(const char *typed, const char *word, size_t length)
{
    for (size_t i = 0; i < length; i++)
        if (lower(typed[i]) != word[i])
            return false;
    return true;
}

static bool is_one(const char *typed, size_t length, const struct other *other)
{
    size_t size = strlen(other->word);
    switch (other->match) {
    case WHOLE:
        return length == size && equals(typed, other->word, size);
    case BEFORE_DIGIT:
        return length > size && equals(typed, other->word, size) && is_digit(typed[size]);
    case BEGINNING:
        return length >= size && equals(typed, other->word, size);
    case ENDING:
        return length > size && equals(typed + length - size, other->word, size);
    }
    return false;
}

/* "M12xPh3P1.5": lead and pitch, ISO 965-1. */
static bool gives_lead(const char *typed, size_t length)
{
    for (size_t i = 1; i + 2 < length; i++)
        if (equals(typed + i, "ph", 2) && is_digit(typed[i + 2]))
            return true;
    return false;
}

const ow_thread_other *ow_thread_other_of(const char *words, size_t *start, size_t *length)
{
    static const ow_thread_other SEVERAL = STARTS;
    for (const char *at = words; *at != '\0';) {
        size_t blanks = strspn(at, " \t"), size = strcspn(at + blanks, " \t");
        at += blanks;
        *start = (size_t)(at - words);
        *length = size;
        if (gives_lead(at, size))
            return &SEVERAL;
        for (size_t i = 0; i < COUNT; i++)
            if (is_one(at, size, &OTHERS[i]))
                return &OTHERS[i].told;
        at += size;
    }
    return NULL;
}

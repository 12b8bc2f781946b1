/* SPDX-License-Identifier: MIT */
/* Lengths of threaded studs below their shoulder, mm. All from memory, and said so on every card. */
#include "joints/card_internal.h"

#define UNIFIED(inch_64, threads_per_inch)                 \
    {                                                      \
        OW_THREAD_UNIFIED, inch_64, 2 * (threads_per_inch) \
    }
#define METRIC(size_um, pitch_um)           \
    {                                       \
        OW_THREAD_METRIC, size_um, pitch_um \
    }
#define PIPE(inch_64, threads_per_inch)              \
    {                                                \
        OW_THREAD_G, inch_64, 2 * (threads_per_inch) \
    }

#define FACE_METRIC(size_um, pitch_um, length)                                               \
    {                                                                                        \
        METRIC(size_um, pitch_um), OW_SEAT_WASHER, length, "stud of DIN 3852-1, from memory" \
    }
#define FACE_PIPE(inch_64, tpi, length)                                               \
    {                                                                                 \
        PIPE(inch_64, tpi), OW_SEAT_WASHER, length, "stud of DIN 3852-2, from memory" \
    }
#define PORT_INCH(inch_64, tpi, length)                                                   \
    {                                                                                     \
        UNIFIED(inch_64, tpi), OW_SEAT_O_RING, length, "stud of SAE J1926-2, from memory" \
    }
#define PORT_METRIC(size_um, pitch_um, length)                                               \
    {                                                                                        \
        METRIC(size_um, pitch_um), OW_SEAT_O_RING, length, "stud of ISO 6149-2, from memory" \
    }

static const ow_stud_row ROWS[] = {
    FACE_METRIC(8000, 1000, 8),     FACE_METRIC(10000, 1000, 8),  FACE_METRIC(12000, 1500, 12),
    FACE_METRIC(14000, 1500, 12),   FACE_METRIC(16000, 1500, 12), FACE_METRIC(18000, 1500, 12),
    FACE_METRIC(20000, 1500, 14),   FACE_METRIC(22000, 1500, 14), FACE_METRIC(26000, 1500, 16),
    FACE_METRIC(27000, 2000, 16),   FACE_METRIC(33000, 2000, 18), FACE_PIPE(8, 28, 8),
    FACE_PIPE(16, 19, 12),          FACE_PIPE(24, 19, 12),        FACE_PIPE(32, 14, 14),
    FACE_PIPE(48, 14, 16),          FACE_PIPE(64, 11, 18),        PORT_INCH(20, 24, 7.54),
    PORT_INCH(24, 24, 7.54),        PORT_INCH(28, 20, 9.14),      PORT_INCH(32, 20, 9.14),
    PORT_INCH(36, 18, 9.93),        PORT_INCH(48, 16, 11.13),     PORT_INCH(56, 14, 12.70),
    PORT_INCH(68, 12, 15.06),       PORT_INCH(76, 12, 15.06),     PORT_INCH(84, 12, 15.06),
    PORT_INCH(104, 12, 15.06),      PORT_METRIC(8000, 1000, 8.5), PORT_METRIC(10000, 1000, 8.5),
    PORT_METRIC(12000, 1500, 11),   PORT_METRIC(14000, 1500, 11), PORT_METRIC(16000, 1500, 11.5),
    PORT_METRIC(18000, 1500, 12.5), PORT_METRIC(22000, 1500, 13), PORT_METRIC(27000, 2000, 16),
    PORT_METRIC(33000, 2000, 16),
};

const ow_stud_row *ow_stud_find(const ow_thread *thread, ow_seat seat)
{
    /* A stud with its own ring has the length of one with a loose ring: DIN 3852-11. */
    ow_seat wanted = seat == OW_SEAT_WASHER_CAPTIVE ? OW_SEAT_WASHER : seat;
    for (size_t i = 0; i < sizeof ROWS / sizeof ROWS[0]; i++)
        if (ROWS[i].seat == wanted && ow_thread_same(&ROWS[i].thread, thread))
            return &ROWS[i];
    return NULL;
}

/* SPDX-License-Identifier: MIT */
#include "ends/sizes.h"

#define UNIFIED(inch_64, threads_per_inch)                 \
    {                                                      \
        OW_THREAD_UNIFIED, inch_64, 2 * (threads_per_inch) \
    }
#define METRIC(size_um, pitch_um)           \
    {                                       \
        OW_THREAD_METRIC, size_um, pitch_um \
    }

#define FLARE37(dash, thread)                                               \
    {                                                                       \
        OW_SEAT_FLARE37, OW_SIZE_DASH, dash, thread, "SAE J514, ISO 8434-2" \
    }
#define O_RING(dash, thread)                                                   \
    {                                                                          \
        OW_SEAT_O_RING, OW_SIZE_DASH, dash, thread, "SAE J1926-1, ISO 11926-1" \
    }
#define FACE(dash, thread)                                                       \
    {                                                                            \
        OW_SEAT_FACE_O_RING, OW_SIZE_DASH, dash, thread, "SAE J1453, ISO 8434-3" \
    }
#define FLARE45(inch_64, thread)                                      \
    {                                                                 \
        OW_SEAT_FLARE45, OW_SIZE_INCH_64, inch_64, thread, "SAE J512" \
    }
#define INVERTED(inch_64, thread)                                              \
    {                                                                          \
        OW_SEAT_FLARE45_INVERTED, OW_SIZE_INCH_64, inch_64, thread, "SAE J512" \
    }
#define CONVEX(tube_um, thread)                                              \
    {                                                                        \
        OW_SEAT_CONVEX, OW_SIZE_UM, tube_um, thread, "ISO 4038, from memory" \
    }

/* Threads by dash and tube: the named standards; sizes above -20 and the 1/8 inverted flare from
 * memory. The 45 degree and inverted sizes differ from the 37 degree ones from 3/8 tube on. */
static const ow_seat_size SEAT_SIZES[] = {
    FLARE37(2, UNIFIED(20, 24)),       FLARE37(3, UNIFIED(24, 24)),        FLARE37(4, UNIFIED(28, 20)),
    FLARE37(5, UNIFIED(32, 20)),       FLARE37(6, UNIFIED(36, 18)),        FLARE37(8, UNIFIED(48, 16)),
    FLARE37(10, UNIFIED(56, 14)),      FLARE37(12, UNIFIED(68, 12)),       FLARE37(14, UNIFIED(76, 12)),
    FLARE37(16, UNIFIED(84, 12)),      FLARE37(20, UNIFIED(104, 12)),      FLARE37(24, UNIFIED(120, 12)),
    FLARE37(32, UNIFIED(160, 12)),

    O_RING(2, UNIFIED(20, 24)),        O_RING(3, UNIFIED(24, 24)),         O_RING(4, UNIFIED(28, 20)),
    O_RING(5, UNIFIED(32, 20)),        O_RING(6, UNIFIED(36, 18)),         O_RING(8, UNIFIED(48, 16)),
    O_RING(10, UNIFIED(56, 14)),       O_RING(12, UNIFIED(68, 12)),        O_RING(14, UNIFIED(76, 12)),
    O_RING(16, UNIFIED(84, 12)),       O_RING(20, UNIFIED(104, 12)),       O_RING(24, UNIFIED(120, 12)),
    O_RING(32, UNIFIED(160, 12)),

    FACE(4, UNIFIED(36, 18)),          FACE(6, UNIFIED(44, 16)),           FACE(8, UNIFIED(52, 16)),
    FACE(10, UNIFIED(64, 14)),         FACE(12, UNIFIED(76, 12)),          FACE(16, UNIFIED(92, 12)),
    FACE(20, UNIFIED(108, 12)),        FACE(24, UNIFIED(128, 12)),

    FLARE45(8, UNIFIED(20, 24)),       FLARE45(12, UNIFIED(24, 24)),       FLARE45(16, UNIFIED(28, 20)),
    FLARE45(20, UNIFIED(32, 20)),      FLARE45(24, UNIFIED(40, 18)),       FLARE45(28, UNIFIED(44, 16)),
    FLARE45(32, UNIFIED(48, 16)),      FLARE45(40, UNIFIED(56, 14)),       FLARE45(48, UNIFIED(68, 14)),

    INVERTED(8, UNIFIED(20, 28)),      INVERTED(12, UNIFIED(24, 24)),      INVERTED(16, UNIFIED(28, 24)),
    INVERTED(20, UNIFIED(32, 20)),     INVERTED(24, UNIFIED(40, 18)),      INVERTED(28, UNIFIED(44, 18)),
    INVERTED(32, UNIFIED(48, 18)),     INVERTED(40, UNIFIED(56, 18)),      INVERTED(48, UNIFIED(68, 16)),

    CONVEX(4750, METRIC(10000, 1000)), CONVEX(5000, METRIC(10000, 1000)),  CONVEX(6000, METRIC(12000, 1000)),
    CONVEX(8000, METRIC(14000, 1500)), CONVEX(10000, METRIC(16000, 1500)),
};

/* ISO 8434-1, light and heavy series. */
static const ow_cone_series CONE_SERIES[] = {
    {"6L", 6000, METRIC(12000, 1500)},   {"8L", 8000, METRIC(14000, 1500)},
    {"10L", 10000, METRIC(16000, 1500)}, {"12L", 12000, METRIC(18000, 1500)},
    {"15L", 15000, METRIC(22000, 1500)}, {"18L", 18000, METRIC(26000, 1500)},
    {"22L", 22000, METRIC(30000, 2000)}, {"28L", 28000, METRIC(36000, 2000)},
    {"6S", 6000, METRIC(14000, 1500)},   {"8S", 8000, METRIC(16000, 1500)},
    {"10S", 10000, METRIC(18000, 1500)}, {"12S", 12000, METRIC(20000, 1500)},
    {"14S", 14000, METRIC(22000, 1500)}, {"16S", 16000, METRIC(24000, 1500)},
    {"20S", 20000, METRIC(30000, 2000)}, {"25S", 25000, METRIC(36000, 2000)},
};

/* ISO 6149-1; M20x1.5 there for cartridge cavities only; sizes above M33 from memory. */
static const ow_thread O_RING_PORTS[] = {
    METRIC(8000, 1000),  METRIC(10000, 1000), METRIC(12000, 1500), METRIC(14000, 1500), METRIC(16000, 1500),
    METRIC(18000, 1500), METRIC(20000, 1500), METRIC(22000, 1500), METRIC(27000, 2000), METRIC(33000, 2000),
    METRIC(42000, 2000), METRIC(48000, 2000), METRIC(60000, 2000),
};

#define LENGTH(array) (sizeof(array) / sizeof(array)[0])

size_t ow_seat_size_count(void)
{
    return LENGTH(SEAT_SIZES);
}

const ow_seat_size *ow_seat_size_at(size_t index)
{
    return index < LENGTH(SEAT_SIZES) ? &SEAT_SIZES[index] : NULL;
}

size_t ow_cone_series_count(void)
{
    return LENGTH(CONE_SERIES);
}

const ow_cone_series *ow_cone_series_at(size_t index)
{
    return index < LENGTH(CONE_SERIES) ? &CONE_SERIES[index] : NULL;
}

const ow_thread *ow_o_ring_port_at(size_t index)
{
    return index < LENGTH(O_RING_PORTS) ? &O_RING_PORTS[index] : NULL;
}

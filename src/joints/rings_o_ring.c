/* SPDX-License-Identifier: MIT */
/*
 * O-rings by port: SAE J1926-1 ports take the 900 series of AS568, J1453 faces its general series, ISO 6149
 * ports rings of their own. Which ring goes where, and the ring of the -4 port, confirmed by look-up; the
 * other diameters from memory. Inside and section, mm.
 */
#include "joints/rings.h"

#define INCH 25.4

static const ow_o_ring_row ROWS[] = {
    {OW_FORM_DASH, OW_SEAT_O_RING, 2, 0, "-902", 0.239 * INCH, 0.064 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 3, 0, "-903", 0.301 * INCH, 0.064 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 4, 0, "-904", 0.351 * INCH, 0.072 * INCH, "SAE J1926-1, AS568"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 5, 0, "-905", 0.414 * INCH, 0.072 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 6, 0, "-906", 0.468 * INCH, 0.078 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 8, 0, "-908", 0.644 * INCH, 0.087 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 10, 0, "-910", 0.755 * INCH, 0.097 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 12, 0, "-912", 0.924 * INCH, 0.116 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 14, 0, "-914", 1.047 * INCH, 0.116 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 16, 0, "-916", 1.171 * INCH, 0.116 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 20, 0, "-920", 1.475 * INCH, 0.118 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 24, 0, "-924", 1.720 * INCH, 0.118 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_O_RING, 32, 0, "-932", 2.337 * INCH, 0.118 * INCH,
     "SAE J1926-1, AS568; size from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 4, 0, "-011", 0.301 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 6, 0, "-012", 0.364 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 8, 0, "-014", 0.489 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 10, 0, "-016", 0.614 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 12, 0, "-018", 0.739 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 16, 0, "-021", 0.926 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 20, 0, "-025", 1.176 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_DASH, OW_SEAT_FACE_O_RING, 24, 0, "-029", 1.489 * INCH, 0.070 * INCH,
     "SAE J1453, AS568, from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 8000, 1000, "", 6.1, 1.6, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 10000, 1000, "", 8.1, 1.6, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 12000, 1500, "", 9.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 14000, 1500, "", 11.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 16000, 1500, "", 13.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 18000, 1500, "", 15.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 20000, 1500, "", 17.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 22000, 1500, "", 19.3, 2.2, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 27000, 2000, "", 23.6, 2.9, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 33000, 2000, "", 29.6, 2.9, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 42000, 2000, "", 38.6, 2.9, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 48000, 2000, "", 44.6, 2.9, "ISO 6149; size from memory"},
    {OW_FORM_THREAD, OW_SEAT_O_RING, 60000, 2000, "", 56.6, 2.9, "ISO 6149; size from memory"},
};

const ow_o_ring_row *ow_o_ring_at(size_t index)
{
    return index < sizeof ROWS / sizeof ROWS[0] ? &ROWS[index] : NULL;
}

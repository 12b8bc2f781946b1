/* SPDX-License-Identifier: MIT */
/*
 * A shop that has just what one feed, one drain and one coolant loop want, so that a whole plan takes few
 * allocations. Invented throughout; bores and lengths are round figures.
 */
#ifndef OW_TESTS_PLAN_SMALL_SHOP_H
#define OW_TESTS_PLAN_SMALL_SHOP_H

#define SMALL_ALL "rating: 200 bar, temperature: -40..150 C, fluids: [oil, coolant]"

static const char small_shop_machines[] =
    "{kind: engine, id: motor, ports: {"
    "gallery: {end: 1/8-27 NPT female, circuit: feed, bore: 6 mm, pressure: 4.5 bar, holds: sw,"
    " position: [180 mm, 60 mm, -140 mm]}, "
    "boss: {end: 1/8-27 NPT female, circuit: feed, bore: 6 mm, pressure: 4 bar}, "
    "plate: {end: flange p48, circuit: drain, bore: 19 mm, position: [60 mm, 40 mm, -300 mm]}, "
    "sump: {end: weld 30, circuit: drain, bore: 19 mm, position: [-90 mm, 70 mm, -330 mm]}, "
    "bottom: {end: bead 10, circuit: coolant, bore: 8 mm, position: [330 mm, 40 mm, -260 mm]}, "
    "head: {end: bead 10, circuit: coolant, bore: 8 mm, position: [260 mm, 0 mm, 160 mm]}}}\n"
    "---\n{kind: engine, id: dry, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, bore: 6 mm, "
    "pressure: "
    "4 bar}}}\n"
    "---\n{kind: turbo, id: plain, bearing: journal, restrictor: none, size: medium, ports: {"
    "oil-in: {end: -4 flare37 male, circuit: feed, bore: 4.4 mm, position: [0 mm, 0 mm, 95 mm]}, "
    "oil-out: {end: flange f38, circuit: drain, bore: 16 mm, position: [0 mm, 0 mm, 0 mm]}, "
    "water-a: {end: bead 10, circuit: coolant, bore: 8 mm, position: [0 mm, -30 mm, 50 mm]}, "
    "water-b: {end: bead 10, circuit: coolant, bore: 8 mm, position: [0 mm, 30 mm, 50 mm]}}}\n"
    "---\n{kind: turbo, id: ball, bearing: ball, restrictor: none, size: small, ports: {"
    "oil-in: {end: -4 flare37 male, circuit: feed, bore: 4.4 mm}, "
    "oil-out: {end: flange f38, circuit: drain, bore: 16 mm}}}\n"
    "---\n{kind: turbo, id: doubtful, bearing: ball, restrictor: unknown, size: small, ports: {"
    "oil-in: {end: -4 flare37 male, circuit: feed, bore: 4.4 mm}, "
    "oil-out: {end: flange f38, circuit: drain, bore: 16 mm}}}\n"
    "---\n{kind: turbo, id: plain-2, bearing: journal, restrictor: none, size: small, ports: {"
    "oil-in: {end: -4 flare37 male, circuit: feed, bore: 4.4 mm}, "
    "oil-out: {end: flange f99, circuit: drain, bore: 16 mm}}}\n"
    "---\n{kind: heater, id: cab, ports: {in: {end: bead 10, circuit: coolant, bore: 8 mm}, out: {end: bead "
    "10, "
    "circuit: coolant, bore: 8 mm}}}\n"
    "---\n{kind: heater, id: odd, ports: {up: {end: bead 10, circuit: coolant, bore: 8 mm}}}\n"
    "---\n{kind: switch, id: sw, a: 1/8-27 NPT male}\n";

static const char small_shop_parts[] =
    "---\n{page: gauge, kind: gauge-adapter, " SMALL_ALL
    ", columns: [id, a, b, side, bore, length], rows: [[ga, 1/8-27 "
    "NPT male, 1/8-27 NPT female, -4 flare37 male, 4.4 mm, 35 mm]]}\n"
    "---\n{page: adapters, kind: adapter, " SMALL_ALL
    ", columns: [id, a, b, bore, length, price], rows: [[tf, 1/8-27 "
    "NPT male, -4 flare37 male, 4.4 mm, 28 mm, 3.10]]}\n"
    "---\n{page: tees, kind: tee, " SMALL_ALL
    ", columns: [id, run-a, run-b, branch, bore, length], rows: [[tee, -4 "
    "flare37 female swivel, -4 flare37 male, -4 flare37 male, 4.4 mm, 40 mm], [bt, barb 16, barb 16, barb "
    "10, 8 mm, "
    "60 mm]]}\n"
    "---\n{page: ends, kind: hose-end, angle: 0 deg, " SMALL_ALL
    ", columns: [id, nut, tail, bore, length], rows: [[he, "
    "-4 flare37 female swivel, hose -4 ptfe tail, 3.6 mm, 46 mm]]}\n"
    "---\n{page: hoses, kind: hose, " SMALL_ALL
    ", columns: [id, a, b, bore, price], rows: [[h4, hose -4 ptfe, hose -4 "
    "ptfe, 4.8 mm, 9.60], [h19, hose 19 fluoro-silicone, hose 19 fluoro-silicone, 19 mm, 20.00], [h10, hose "
    "10 epdm, "
    "hose 10 epdm, 10 mm, 4.00]]}\n"
    "---\n{page: restrictors, kind: restrictor, " SMALL_ALL
    ", columns: [id, a, b, bore, orifice, length], rows: [[rs-10, "
    "-4 flare37 female swivel, -4 flare37 male, 4.4 mm, 1.0 mm, 29 mm], [rs-12, -4 flare37 female swivel, -4 "
    "flare37 "
    "male, 4.4 mm, 1.2 mm, 29 mm]]}\n"
    "---\n{page: stubs, kind: stub, " SMALL_ALL
    ", columns: [id, face, tail, bore, length, bolt-pattern], rows: [[st-f, "
    "flange f38, bead 19, 17 mm, 30 mm, 2 x M8 at 38 mm], [st-p, flange p48, bead 19, 17 mm, 30 mm, 2 x M8 "
    "at 48 mm], "
    "[st-w, weld 30, bead 19, 17 mm, 20 mm, ~]]}\n"
    "---\n{page: bosses, kind: stub, " SMALL_ALL
    ", columns: [id, face, tail, bore, length], rows: [[st-m, M22x1.5 male "
    "washer, bead 19, 17 mm, 40 mm]]}\n";

/* An engine whose return and head take wider hoses than the turbo's ports, and a joiner for each. */
#define ODD_SHOP                                                                                            \
    "{kind: engine, id: wide, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed, bore: 6 mm, "        \
    "pressure: 4.5 bar, holds: sw}, back: {end: bead 22, circuit: drain, bore: 20 mm, position: "           \
    "[0 mm, 120 mm, -300 mm]}, bottom: {end: bead 10, circuit: coolant, bore: 8 mm}, "                      \
    "top: {end: bead 13, circuit: coolant, bore: 11 mm, position: [0 mm, 0 mm, 200 mm]}}}\n---\n"           \
    "{page: more, kind: hose, " SMALL_ALL ", columns: [id, a, b, bore, price], rows: [[h22, hose 22 "       \
    "fluoro-silicone, hose 22 fluoro-silicone, 22 mm, 24.00], [h13, hose 13 epdm, hose 13 epdm, 13 mm, "    \
    "5.00]]}\n---\n{page: joiners, kind: adapter, " SMALL_ALL ", columns: [id, a, b, bore, length], rows: " \
    "[[j19, barb 19, barb 22, 16 mm, 60 mm], [j10, barb 10, barb 13, 7 mm, 45 mm]]}\n"

static const char *const small_shop_names[] = {"machines.yaml", "parts.yaml"};
static const char *const small_shop[] = {small_shop_machines, small_shop_parts};
#define SMALL_SHOP_PAGES 2

#endif

/* SPDX-License-Identifier: MIT */
/* A list of pieces: `chamber`, or one key with its figures each. */
#include <stdio.h>
#include <string.h>

#include "base/words.h"
#include "physics/reading.h"

static const ow_physics_field bore = {"bore", OW_LENGTH, OW_BORE_LOW_M, OW_BORE_HIGH_M};
static const ow_physics_field length = {"length", OW_LENGTH, 0.0, OW_LENGTH_HIGH_M};
static const ow_physics_field count = {"count", OW_RATIO, 1.0, OW_HOLES_HIGH};
static const ow_physics_field factor = {"k", OW_RATIO, 0.0, OW_LOSS_COEFFICIENT_HIGH};
static const char *const expected =
    "chamber, or one of pipe, elbow-90, elbow-90-long, elbow-45, tee-branch, tee-branch-drilled, tee-run, "
    "holes, "
    "restrictor, fixed with its figures, such as pipe: {bore: 4.4 mm, length: 28 mm}";

static bool find_kind(const char *word, ow_piece_kind *kind)
{
    for (int i = 0; i < OW_PIECE_KIND_COUNT; i++) {
        if (ow_words_equal(word, ow_piece_word((ow_piece_kind)i))) {
            *kind = (ow_piece_kind)i;
            return true;
        }
    }
    return false;
}

/* Marks the key where the piece is a map of one. */
static void report_unknown(ow_physics_reading *reading, const ow_yaml *node, const char *word)
{
    const char *words[OW_PIECE_KIND_COUNT];
    for (int i = 0; i < OW_PIECE_KIND_COUNT; i++)
        words[i] = ow_piece_word((ow_piece_kind)i);
    const char *nearest = ow_words_nearest(word, strlen(word), words, OW_PIECE_KIND_COUNT);
    char mend[64] = "";
    if (nearest != NULL) /* our own words: short */
        snprintf(mend, sizeof mend, "did you mean \"%s\"?", nearest);
    ow_yaml at = *node;
    if (at.key != NULL)
        at.span = at.key_span;
    ow_physics_fault(reading, &at, expected, nearest != NULL ? mend : NULL, "\"%.40s\" is no piece", word);
}

/* The keys of a kind, and its figures. */
static void read_figures(ow_physics_reading *reading, const ow_yaml *map, ow_piece *piece)
{
    static const char *const pipe_keys[] = {"bore", "length", "name"};
    static const char *const hole_keys[] = {"bore", "length", "name", "count"};
    static const char *const fixed_keys[] = {"bore", "k", "name"};
    static const char *const other_keys[] = {"bore", "name"};
    double holes = 1.0;
    bool is_hole = piece->kind == OW_PIECE_HOLES || piece->kind == OW_PIECE_RESTRICTOR;
    bool is_known = piece->kind == OW_PIECE_PIPE    ? ow_physics_map(reading, map, pipe_keys, 3)
                    : is_hole                       ? ow_physics_map(reading, map, hole_keys, 4)
                    : piece->kind == OW_PIECE_FIXED ? ow_physics_map(reading, map, fixed_keys, 3)
                                                    : ow_physics_map(reading, map, other_keys, 2);
    if (!is_known)
        return;
    ow_physics_need(reading, map, &bore, &piece->bore_m);
    if (is_hole || piece->kind == OW_PIECE_PIPE)
        ow_physics_need(reading, map, &length, &piece->length_m);
    if (piece->kind == OW_PIECE_FIXED)
        ow_physics_need(reading, map, &factor, &piece->coefficient);
    if (is_hole && ow_physics_may(reading, map, &count, &holes)) {
        piece->count = (int)holes;
        if (holes != (double)piece->count)
            ow_physics_fault(reading, ow_yaml_member(map, "count"), "a whole number of holes", NULL,
                             "count: \"%.40s\" is no whole number", ow_yaml_member(map, "count")->words);
    }
    piece->name = ow_physics_words(reading, map, "name", "");
}

static void want(ow_physics_reading *reading, const ow_yaml *node, bool may_want, ow_piece *piece)
{
    if (!may_want)
        ow_physics_fault(reading, node, "bore and length of the restrictor", NULL,
                         "no restrictor can be asked for here");
    else if (reading->wanted != NULL)
        ow_physics_fault(reading, node, "one restrictor", NULL, "a second restrictor is asked for");
    reading->wanted = piece;
    reading->wanted_at = node;
    piece->bore_m = 0.001; /* until it is found */
}

static void read_piece(ow_physics_reading *reading, const ow_yaml *item, bool may_want, ow_piece *piece)
{
    const ow_yaml *node = ow_yaml_real(item);
    *piece = (ow_piece){.kind = OW_PIECE_CHAMBER, .name = "", .count = 1};
    if (node->kind == OW_YAML_SCALAR) {
        ow_piece_kind kind;
        if (!find_kind(node->words, &kind))
            report_unknown(reading, node, node->words);
        else if (kind != OW_PIECE_CHAMBER)
            ow_physics_fault(reading, node, "its figures, such as pipe: {bore: 4.4 mm, length: 28 mm}", NULL,
                             "%s has no figures", node->words);
        return;
    }
    if (node->kind != OW_YAML_MAP || node->count != 1) {
        ow_physics_fault(reading, node, expected, NULL, "not one piece");
        return;
    }
    const ow_yaml *figures = ow_yaml_real(node->first);
    if (!find_kind(node->first->key, &piece->kind)) {
        report_unknown(reading, node->first, node->first->key);
    } else if (piece->kind == OW_PIECE_RESTRICTOR && figures->kind == OW_YAML_SCALAR &&
               ow_words_equal(figures->words, "wanted")) {
        want(reading, figures, may_want, piece);
    } else if (piece->kind != OW_PIECE_CHAMBER) {
        read_figures(reading, figures, piece);
    } else if (!ow_yaml_is_null(figures)) {
        ow_physics_fault(reading, figures, "chamber alone", NULL, "a chamber has no figures");
    }
}

void ow_physics_pieces(ow_physics_reading *reading, const ow_yaml *node, bool may_want,
                       const ow_piece **pieces, size_t *piece_count)
{
    node = ow_yaml_real(node);
    if (node->kind != OW_YAML_LIST || node->count > OW_PIECES_MAX) {
        ow_physics_fault(reading, node, "a list of pieces, at most 200", NULL,
                         node->kind == OW_YAML_LIST ? "too many pieces" : "not a list of pieces");
        return;
    }
    ow_piece *made = ow_arena_get_array(reading->arena, node->count, sizeof *made);
    if (made == NULL) {
        ow_physics_note(reading, OW_MEMORY);
        return;
    }
    size_t index = 0;
    for (const ow_yaml *item = node->first; item != NULL; item = item->next)
        read_piece(reading, item, may_want, &made[index++]);
    *pieces = made;
    *piece_count = index;
}

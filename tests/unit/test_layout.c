/* SPDX-License-Identifier: MIT */
/* Layouts read from YAML, written, and read again. */
#include <math.h>
#include <string.h>

#include "oilway/layout.h"
#include "support/diagnostics.h"
#include "support/testing.h"

static const char catalogue[] =
    "{kind: engine, id: brockle-4, ports: {gallery: {end: 1/8-27 NPT female, circuit: feed}, plate: {end: "
    "M12x1.5 female "
    "washer, circuit: drain}}}\n"
    "---\n{kind: turbo, id: plover-41, ports: {oil-in: {end: M12x1.5 female washer, circuit: feed}}}\n"
    "---\n{kind: switch, id: sw-2, a: 1/8-27 NPT male}\n"
    "---\nkind: adapter\npage: adapters\ncolumns: [id, a, b, bore, price]\nrows:\n"
    "  - [tf-2-2m, 1/8-27 NPT male, 1/8-27 NPT male, 5 mm, 2.00]\n"
    "  - [tf-2-4, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 3.10]\n"
    "  - [ft-4-2, -4 flare37 female swivel, 1/8-27 NPT male, 4.2 mm, ~]\n"
    "  - ['1204', 1/8-27 NPT male, 1/8-27 NPT female, 5 mm, 1]\n"
    "---\n{page: tees, kind: tee, columns: [id, run-a, run-b, branch, run-bore, branch-bore, price], rows: "
    "[[tee-2, 1/8-27 NPT "
    "female, 1/8-27 NPT female, 1/8-27 NPT female, 4.8 mm, 3.6 mm, 6]]}\n"
    "---\n{page: bolts, kind: banjo-bolt, columns: [id, thread, stud, bore], rows: [[bb, M12x1.5 male banjo, "
    "banjo 12 stud, 7 mm]]}\n"
    "---\n{page: eyes, kind: banjo-eye, columns: [id, eye, tail, bore], rows: [[be, banjo 12 eye, hose -4 "
    "ptfe tail, 4 mm]]}\n"
    "---\n{page: ends, kind: hose-end, columns: [id, nut, tail, bore, price], rows: [[he-4-s, -4 flare37 "
    "female swivel, hose -4 "
    "ptfe tail, 4 mm, 4]]}\n"
    "---\n{page: hoses, kind: hose, columns: [id, a, b, bore, price], rows: [[hose-4, hose -4 ptfe, hose -4 "
    "ptfe, 4.8 mm, "
    "20.00]]}\n"
    "---\n{page: restrictors, kind: restrictor, columns: [id, a, b, bore, orifice], rows: [[rs, -4 flare37 "
    "female swivel, -4 "
    "flare37 male, 4.4 mm, 1 mm]]}\n"
    "---\n{page: plugs, kind: plug, columns: [id, a, price], rows: [[pl-2, 1/8-27 NPT male, 0.80]]}\n";

typedef struct fixture {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_layout *layouts;
    size_t count;
} fixture;

static int begin(void **state)
{
    static fixture self;
    static const char *const name = "c.yaml", *const text = catalogue;
    self = (fixture){OW_TEST_DIAGNOSTICS_INIT, OW_CONTEXT_INIT, NULL, NULL, 0};
    self.context = ow_test_context(&self.sink);
    ow_status status = ow_catalog_load_texts(&self.context, &name, &text, 1, NULL, &self.catalog);
    for (size_t i = 0; i < self.sink.count; i++)
        print_error("%s\n", self.sink.items[i].told);
    *state = &self;
    return status == OW_OK ? 0 : -1;
}

static int end(void **state)
{
    fixture *self = *state;
    ow_layouts_free(&self->context, self->layouts, self->count);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
    return 0;
}

static const ow_layout *read(fixture *self, const char *text)
{
    ow_layouts_free(&self->context, self->layouts, self->count);
    self->layouts = NULL;
    self->count = 0;
    ow_status status = ow_layouts_read(&self->context, self->catalog, "l.yaml", text, strlen(text),
                                       &self->layouts, &self->count);
    for (size_t i = 0; i < self->sink.count; i++)
        print_error("%s\n", self->sink.items[i].told);
    assert_int_equal(status, OW_OK);
    assert_int_equal(self->sink.count, 0);
    assert_true(self->count > 0);
    return self->layouts;
}

/* "tf-2-2m.a on gallery", node by node: what is joined to what. */
static void assert_tree(fixture *self, const ow_layout *layout, const char *wanted)
{
    ow_text text = ow_text_new(&self->context);
    for (size_t node = 1; node < layout->node_count; node++) {
        const ow_layout_node *at = &layout->nodes[node], *parent = &layout->nodes[at->parent];
        ow_text_add(&text, node > 1 ? ", " : "");
        ow_layout_node_name(&text, layout, node);
        if (at->part)
            ow_text_format(&text, ".%s", at->part->end_names[at->enter]);
        ow_text_add(&text, " on ");
        ow_layout_node_name(&text, layout, at->parent);
        if (parent->part)
            ow_text_format(&text, ".%s", parent->part->end_names[at->parent_end]);
        assert_int_equal(parent->exits[at->parent_end], node);
    }
    assert_string_equal(ow_text_words(&text), wanted);
    ow_text_done(&text);
}

static void assert_near(double value, double wanted)
{
    assert_true(fabs(value - wanted) <= 1e-12 + 1e-9 * fabs(wanted));
}

static const char example[] =
    "layout: feed for a plover-41\n"
    "circuit: feed\n"
    "from: brockle-4:gallery\n"
    "asked: {bore: 3 mm, flexible: yes}\n"
    "parts:\n"
    "  - tf-2-2m\n"
    "  - tee-2: {enter: run-a}\n"
    "    run-b: [sw-2]\n"
    "    branch: [tf-2-4, he-4-s, hose-4: {length: 650 mm}, be, bb, plover-41:oil-in]\n";

static void the_example_reads_as_the_tree_it_draws(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = read(self, example);
    assert_string_equal(layout->title, "feed for a plover-41");
    assert_int_equal(layout->circuit, OW_FEED);
    assert_true(layout->has_asked);
    assert_near(layout->asked.least_bore_m, 3e-3);
    assert_int_equal(layout->asked.flexible, OW_YES);
    assert_false(layout->asked.closing);
    assert_tree(self, layout,
                "tf-2-2m.a on brockle-4:gallery, tee-2.run-a on tf-2-2m.b, sw-2 on tee-2.run-b, tf-2-4.a on "
                "tee-2.branch, "
                "he-4-s.nut on tf-2-4.b, hose-4.a on he-4-s.tail, be.tail on hose-4.b, bb.stud on be.eye, "
                "plover-41:oil-in "
                "on bb.thread");
    assert_int_equal(layout->given_count, 3);
    assert_int_equal(layout->givens[0].role, OW_ROLE_SOURCE);
    assert_string_equal(layout->givens[1].name, "plover-41:oil-in");
    assert_int_equal(layout->givens[1].role, OW_ROLE_TO);
    assert_string_equal(layout->givens[2].name, "sw-2");
    assert_int_equal(layout->givens[2].role, OW_ROLE_KEEP);
    assert_near(layout->nodes[6].length_m, 0.65);
    assert_int_equal(layout->nodes[2].place.line, 7);
    assert_string_equal(layout->nodes[2].place.file, "l.yaml");
}

/* 7 parts, 9 joints: parts and ports served. Price: 2 + 6 + 3.10 + 4 + 0.65 * 20, the eye and bolt have none.
 */
static void what_is_counted_and_summed(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = read(self, example);
    bool complete = true;
    assert_int_equal(ow_layout_part_count(layout), 7);
    assert_int_equal(ow_layout_joint_count(layout), 9);
    assert_int_equal(ow_layout_price_cents(layout, &complete), 2810);
    assert_false(complete);
    assert_near(ow_layout_narrowest_bore_m(layout), 3.6e-3);
}

static void a_path_holds_what_lies_between_source_and_port(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = read(self, example);
    for (size_t node = 0; node < layout->node_count; node++) {
        assert_int_equal(ow_layout_on_path(layout, node, 1), node != 3); /* plover-41:oil-in */
        assert_int_equal(ow_layout_on_path(layout, node, 2), node < 4);  /* sw-2 */
        assert_int_equal(ow_layout_on_path(layout, node, 0), node == 0); /* the source */
        assert_false(ow_layout_on_path(layout, node, 7));                /* no such port */
    }
    char words[OW_END_TEXT_SIZE];
    assert_string_equal(ow_end_name(ow_layout_child_end(layout, 6), words), "hose -4 ptfe");
    assert_string_equal(ow_end_name(ow_layout_parent_end(layout, 6), words), "hose -4 ptfe tail");
}

static void a_restrictors_orifice_does_not_narrow_and_an_unsaid_bore_is_not_guessed(void **state)
{
    fixture *self = *state;
    const ow_layout *layout =
        read(self, "from: '-4 flare37 male'\nparts: [rs, ft-4-2, '1/8-27 NPT female']\n");
    assert_near(ow_layout_narrowest_bore_m(layout), 4.2e-3);
    layout = read(self, "from: '1/8-27 NPT male'\nparts: ['1/8-27 NPT female']\n");
    assert_near(ow_layout_narrowest_bore_m(layout), OW_NOT_SAID);
    assert_int_equal(ow_layout_part_count(layout), 0);
    assert_int_equal(ow_layout_joint_count(layout), 1);
}

static void without_enter_a_part_is_entered_by_its_first_end_that_mates(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = read(
        self, "from: '1/8-27 NPT male'\nparts:\n  - tee-2:\n    branch: pl-2\n    run-b: [tf-2-4, ft-4-2, "
              "'1/8-27 NPT female']\n");
    assert_tree(self, layout,
                "tee-2.run-a on from, tf-2-4.a on tee-2.run-b, ft-4-2.a on tf-2-4.b, to on ft-4-2.b, "
                "pl-2.a on tee-2.branch");
    layout = read(
        self, "from: '1/8-27 NPT female'\nparts: [ft-4-2, '-4 flare37 male']\n"); /* its second end mates */
    assert_tree(self, layout, "ft-4-2.b on from, to on ft-4-2.a");
}

static void an_exit_left_out_stays_open(void **state)
{
    fixture *self = *state;
    const ow_layout *layout =
        read(self, "from: '1/8-27 NPT male'\nparts:\n  - tee-2: {enter: branch}\n    run-b: [tf-2-4]\n");
    assert_tree(self, layout, "tee-2.branch on from, tf-2-4.a on tee-2.run-b");
    assert_int_equal(layout->nodes[1].exits[0], OW_NODE_NONE);
    assert_int_equal(layout->nodes[2].exits[1], OW_NODE_NONE);
}

static void the_same_part_twice_is_numbered_in_walking_order(void **state)
{
    fixture *self = *state;
    const ow_layout *layout = read(self, "from: '1/8-27 NPT male'\nparts:\n  - tee-2: {enter: run-a}\n    "
                                         "branch: [pl-2]\n    run-b: [pl-2]\n");
    assert_tree(self, layout, "tee-2.run-a on from, pl-2.a on tee-2.run-b, pl-2#2.a on tee-2.branch");
}

static void several_documents_are_several_circuits(void **state)
{
    fixture *self = *state;
    (void)read(self, "from: brockle-4:plate\nparts: [bb]\n---\nfrom: brockle-4:gallery\nparts: []\n---\n");
    assert_int_equal(self->count, 2);
    assert_int_equal(self->layouts[0].circuit, OW_DRAIN); /* from the source's port */
    assert_int_equal(self->layouts[1].circuit, OW_FEED);
    assert_false(self->layouts[0].has_asked);
}

static void seals_are_kept_by_end(void **state)
{
    fixture *self = *state;
    const ow_layout *layout =
        read(self, "from: '1/8-27 NPT female'\nparts: [tf-2-4: {seal: {a: tape, b: 'O, ring'}}]\n");
    assert_string_equal(layout->nodes[1].seal[0], "tape");
    assert_string_equal(layout->nodes[1].seal[1], "O, ring");
    assert_null(layout->nodes[1].seal[2]);
}

static void every_limit_is_read(void **state)
{
    fixture *self = *state;
    const ow_limits *asked =
        &read(
             self,
             "circuit: drain\nfrom: '1/8-27 NPT female'\nasked: {bore: 12 mm, bore-warns: yes, flexible: no, "
             "closing: yes, "
             "restrictor: required, orifice: 0.8..1.2 mm, rating: 7 bar, temperature: 120 C, fluid: coolant, "
             "tolerate: yes, remote-switch: on}\nparts: []\n")
             ->asked;
    assert_near(asked->least_bore_m, 12e-3);
    assert_true(asked->bore_warns && asked->closing && asked->tolerate && asked->remote_switch &&
                asked->no_tee);
    assert_int_equal(asked->flexible, OW_NO);
    assert_int_equal(asked->restrictor, OW_RESTRICTOR_REQUIRED);
    assert_near(asked->orifice_low_m, 0.8e-3);
    assert_near(asked->orifice_high_m, 1.2e-3);
    assert_near(asked->rating_pa, 7e5);
    assert_true(asked->has_temperature);
    assert_near(asked->temperature_c, 120);
    assert_int_equal(asked->fluid, OW_FLUID_COOLANT);
    assert_false(read(self, "circuit: drain\nfrom: '1/8-27 NPT female'\nasked: {tee: yes}\nparts: []\n")
                     ->asked.no_tee);
    assert_true(
        read(self, "circuit: feed\nfrom: '1/8-27 NPT female'\nasked: {tee: no}\nparts: []\n")->asked.no_tee);
    assert_true(read(self, "circuit: feed\nfrom: '1/8-27 NPT female'\nasked: {tee: no}\nparts: []\n")
                    ->asked.no_clamp);
    assert_false(read(self, "circuit: feed\nfrom: '1/8-27 NPT female'\nasked: {clamp: yes}\nparts: []\n")
                     ->asked.no_clamp);
    assert_false(read(self, "circuit: drain\nfrom: '1/8-27 NPT female'\nasked: {tee: no}\nparts: []\n")
                     ->asked.no_clamp);
}

/* ---- roles ------------------------------------------------------------------------------------------- */

static void assert_names(const ow_layout *layout, const char *const *names, size_t count)
{
    assert_int_equal(layout->given_count, count);
    for (size_t i = 0; i < count; i++)
        assert_string_equal(layout->givens[i].name, names[i]);
}

#define TEE_TO(run, branch)                                                                                  \
    "from: '1/8-27 NPT male'\nparts:\n  - tee-2: {enter: run-a}\n    run-b: [" run "]\n    branch: [" branch \
    "]\n"

static void a_bare_end_is_kept_beside_a_machine_or_a_hose(void **state)
{
    fixture *self = *state;
    static const char *const with_hose[] = {"from", "to", "keep"}, *const alone[] = {"from", "to", "to#2"};
    static const char *const with_machine[] = {"from", "plover-41:oil-in", "keep"};
    assert_names(
        read(self, TEE_TO("'1/8-27 NPT male'", "tf-2-4, he-4-s, hose-4, be, bb, 'M12x1.5 female washer'")),
        with_hose, 3);
    assert_names(read(self, TEE_TO("'1/8-27 NPT male'", "'1/8-27 NPT male'")), alone, 3);
    assert_names(read(self, TEE_TO("'1/8-27 NPT male'", "tf-2-4, he-4-s, hose-4, be, bb, plover-41:oil-in")),
                 with_machine, 3);
}

static void to_and_keep_say_who_is_who_and_in_which_order(void **state)
{
    fixture *self = *state;
    static const char *const order[] = {"from", "to", "to#2"}, *const kept[] = {"from", "to", "keep"};
    const ow_layout *layout = read(self, "asked: {to: ['1/8-27 NPT male#2', '1/8 NPT male']}\n" TEE_TO(
                                             "'1/8-27 NPT male'", "'1/8-27 NPT male'"));
    assert_names(layout, order, 3);
    assert_int_equal(layout->nodes[2].given, 2);
    assert_int_equal(layout->nodes[3].given, 1);
    assert_false(layout->has_asked);
    layout =
        read(self, "asked: {keep: '1/8-27 NPT male'}\n" TEE_TO("'1/8-27 NPT male'", "'1/8-27 NPT male'"));
    assert_names(layout, kept, 3);
    assert_int_equal(layout->nodes[2].given, 2);
}

/* ---- written and read again ------------------------------------------------------------------------ */

static void assert_same(const ow_layout *a, const ow_layout *b)
{
    assert_string_equal(a->title, b->title);
    assert_int_equal(a->circuit, b->circuit);
    assert_int_equal(a->has_asked, b->has_asked);
    assert_int_equal(a->given_count, b->given_count);
    assert_int_equal(a->node_count, b->node_count);
    for (size_t i = 0; i < a->given_count; i++) {
        assert_string_equal(a->givens[i].name, b->givens[i].name);
        assert_int_equal(a->givens[i].role, b->givens[i].role);
        assert_true(ow_end_same(&a->givens[i].end, &b->givens[i].end));
        assert_ptr_equal(a->givens[i].port, b->givens[i].port);
        assert_ptr_equal(a->givens[i].fixture, b->givens[i].fixture);
    }
    for (size_t i = 0; i < a->node_count; i++) {
        const ow_layout_node *x = &a->nodes[i], *y = &b->nodes[i];
        assert_ptr_equal(x->part, y->part);
        assert_int_equal(x->given, y->given);
        assert_int_equal(x->parent, y->parent);
        assert_int_equal(x->parent_end, y->parent_end);
        assert_int_equal(x->enter, y->enter);
        assert_int_equal(x->occurrence, y->occurrence);
        assert_near(x->length_m, y->length_m);
        for (size_t e = 0; e < OW_PART_ENDS; e++) {
            assert_int_equal(x->exits[e], y->exits[e]);
            assert_string_equal(x->seal[e] ? x->seal[e] : "-", y->seal[e] ? y->seal[e] : "-");
        }
    }
}

static void assert_same_limits(const ow_limits *a, const ow_limits *b)
{
    assert_near(a->least_bore_m, b->least_bore_m);
    assert_near(a->orifice_low_m, b->orifice_low_m);
    assert_near(a->orifice_high_m, b->orifice_high_m);
    assert_near(a->rating_pa, b->rating_pa);
    assert_near(a->temperature_c, b->temperature_c);
    assert_int_equal(a->flexible, b->flexible);
    assert_int_equal(a->closing, b->closing);
    assert_int_equal(a->restrictor, b->restrictor);
    assert_int_equal(a->has_temperature, b->has_temperature);
    assert_int_equal(a->fluid, b->fluid);
    assert_int_equal(a->tolerate, b->tolerate);
    assert_int_equal(a->remote_switch, b->remote_switch);
    assert_int_equal(a->no_tee, b->no_tee);
    assert_int_equal(a->no_clamp, b->no_clamp);
    assert_int_equal(a->bore_warns, b->bore_warns);
}

static void what_is_written_reads_back_as_the_same(void **state)
{
    fixture *self = *state;
    static const char *const texts[] = {
        example,
        "from: '1/8-27 NPT female'\nparts: []\n",
        "layout: 'yes'\nfrom: '1/8-27 NPT female'\nparts: [tf-2-4: {seal: {a: tape, b: \"a \\\"b\\\" \\\\ c: "
        "# d\"}}]\n",
        "layout: \"  two\\tlines\\n\"\ncircuit: coolant\nfrom: '1/8-27 NPT female'\nparts: ['1204', '1204', "
        "tf-2-4]\n",
        "circuit: drain\nfrom: '1/8-27 NPT female'\nasked: {tee: yes}\nparts: [tf-2-4]\n",
        "circuit: drain\nfrom: '1/8-27 NPT female'\nasked: {flexible: any}\nparts: [tf-2-4]\n",
        "circuit: feed\nfrom: '1/8-27 NPT female'\nasked: {clamp: yes}\nparts: [tf-2-4]\n",
        "circuit: coolant\nfrom: '1/8-27 NPT female'\nasked: {clamp: no}\nparts: [tf-2-4]\n",
        "circuit: feed\nfrom: '1/8-27 NPT female'\nasked: {bore: 12.34 mm, bore-warns: yes, flexible: no, "
        "closing: yes, restrictor: "
        "forbidden, orifice: 0.8..1.2 mm, rating: 7.25 bar, temperature: -12.5 C, fluid: oil, tolerate: yes, "
        "remote-switch: yes, "
        "tee: no}\nparts: [ft-4-2]\n",
        "asked: {to: ['1/8-27 NPT male#2', '1/8-27 NPT male']}\n" TEE_TO("'1/8-27 NPT male'",
                                                                         "'1/8-27 NPT male'"),
        "asked: {keep: ['1/8-27 NPT male#2']}\n" TEE_TO("'1/8-27 NPT male'", "'1/8-27 NPT male'"),
        "asked: {to: sw-2, bore: 3 mm}\n" TEE_TO("sw-2", "'1/8-27 NPT male'"),
        "from: '1/8-27 NPT male'\nparts:\n  - tee-2: {enter: branch}\n    run-a:\n      - tf-2-2m: {enter: "
        "b}\n      - tee-2:\n"
        "        branch: [pl-2]\n    run-b: [pl-2]\n",
    };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        const ow_layout *first = read(self, texts[i]);
        ow_layout *again = NULL;
        size_t count = 0;
        ow_text text = ow_text_new(&self->context);
        ow_layout_write(&text, first);
        assert_int_equal(ow_text_status(&text), OW_OK);
        assert_int_equal(ow_layouts_read(&self->context, self->catalog, "again.yaml", ow_text_words(&text),
                                         text.length, &again, &count),
                         OW_OK);
        assert_int_equal(count, 1);
        assert_same(first, again);
        assert_same_limits(&first->asked, &again->asked);
        ow_text_done(&text);
        ow_layouts_free(&self->context, again, count);
    }
}

static void the_example_is_written_as_a_person_would(void **state)
{
    fixture *self = *state;
    ow_text text = ow_text_new(&self->context);
    ow_layout_write(&text, read(self, example));
    assert_string_equal(ow_text_words(&text), example);
    ow_text_done(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(the_example_reads_as_the_tree_it_draws, begin, end),
        cmocka_unit_test_setup_teardown(what_is_counted_and_summed, begin, end),
        cmocka_unit_test_setup_teardown(a_path_holds_what_lies_between_source_and_port, begin, end),
        cmocka_unit_test_setup_teardown(
            a_restrictors_orifice_does_not_narrow_and_an_unsaid_bore_is_not_guessed, begin, end),
        cmocka_unit_test_setup_teardown(without_enter_a_part_is_entered_by_its_first_end_that_mates, begin,
                                        end),
        cmocka_unit_test_setup_teardown(an_exit_left_out_stays_open, begin, end),
        cmocka_unit_test_setup_teardown(the_same_part_twice_is_numbered_in_walking_order, begin, end),
        cmocka_unit_test_setup_teardown(several_documents_are_several_circuits, begin, end),
        cmocka_unit_test_setup_teardown(seals_are_kept_by_end, begin, end),
        cmocka_unit_test_setup_teardown(every_limit_is_read, begin, end),
        cmocka_unit_test_setup_teardown(a_bare_end_is_kept_beside_a_machine_or_a_hose, begin, end),
        cmocka_unit_test_setup_teardown(to_and_keep_say_who_is_who_and_in_which_order, begin, end),
        cmocka_unit_test_setup_teardown(what_is_written_reads_back_as_the_same, begin, end),
        cmocka_unit_test_setup_teardown(the_example_is_written_as_a_person_would, begin, end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

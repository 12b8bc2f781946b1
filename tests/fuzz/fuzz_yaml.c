/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as YAML. Whatever comes: nothing harms; a fault is told with a place; and what was read keeps the
 * promises of yaml.h (spans inside the text and inside their parent's, counts right, keys in maps only and
 * each once, no NUL in words, depth and size within the limits through all aliases).
 */
#include <math.h>
#include <string.h>

#include "base/words.h"
#include "support/fuzzing.h"
#include "yaml/yaml.h"

typedef struct tally {
    const ow_yaml_text *yaml;
    size_t nodes; /* as if aliases were written out */
} tally;

static void count_report(void *user, const ow_diagnostic *told)
{
    size_t *count = user;
    ++*count;
    OW_FUZZ_CHECK(told->message != NULL && told->message[0] != '\0');
    OW_FUZZ_CHECK(told->line_text == NULL || (told->line > 0 && told->column > 0 && told->mark_width > 0));
    ow_text shown = ow_text_new(NULL);
    ow_text_diagnostic(&shown, told);
    OW_FUZZ_CHECK(shown.length > 0 && shown.data[shown.length - 1] == '\n');
    for (size_t i = 0; i < shown.length; i++) /* nothing that steers a terminal */
        OW_FUZZ_CHECK(shown.data[i] == '\n' || (unsigned char)shown.data[i] >= 0x20);
    ow_text_done(&shown);
}

static void check_span(const ow_yaml_text *yaml, ow_span span)
{
    OW_FUZZ_CHECK(span.start <= yaml->source.length && span.length <= yaml->source.length - span.start);
}

static void check_key(const ow_yaml *map, const ow_yaml *member)
{
    OW_FUZZ_CHECK(member->key != NULL);
    for (const ow_yaml *other = map->first; other != member; other = other->next)
        OW_FUZZ_CHECK(strcmp(other->key, member->key) != 0);
}

/* NOLINTNEXTLINE(misc-no-recursion): as deep as OW_YAML_DEPTH_MAX */
static void check_node(tally *seen, const ow_yaml *node, size_t depth)
{
    const ow_yaml *real = ow_yaml_real(node);
    size_t children = 0;
    check_span(seen->yaml, node->span);
    OW_FUZZ_CHECK(real->target == NULL && real->kind == node->kind && real->first == node->first);
    OW_FUZZ_CHECK(strlen(node->words) == node->length);
    OW_FUZZ_CHECK(ow_utf8_valid(node->words, node->length) == node->length);
    OW_FUZZ_CHECK(++seen->nodes <= OW_YAML_NODES_MAX);
    OW_FUZZ_CHECK(real->kind == OW_YAML_SCALAR ? real->first == NULL : depth < OW_YAML_DEPTH_MAX);
    for (const ow_yaml *child = real->first; child != NULL; child = child->next) {
        children++;
        if (real->kind == OW_YAML_MAP) {
            check_key(real, child);
            check_span(seen->yaml, child->key_span);
        } else {
            OW_FUZZ_CHECK(child->key == NULL);
        }
        OW_FUZZ_CHECK(child->span.start >= real->span.start);
        OW_FUZZ_CHECK(child->span.start + child->span.length <= real->span.start + real->span.length);
        if (seen->nodes < 100000) /* enough; an exploding text is looked at in part */
            check_node(seen, child, depth + 1);
    }
    OW_FUZZ_CHECK(children == real->count);
}

/* The readers of values say yes or report, one or the other. */
static void read_values(const ow_context *context, const ow_yaml_text *yaml, const ow_yaml *node,
                        const size_t *reports)
{
    static const char *const words[] = {"adapter", "tee", "hose"};
    double value = 0;
    bool flag = false;
    size_t index = 0, before = *reports;
    size_t faults = 0;
    faults += ow_yaml_quantity(context, &yaml->source, node, OW_LENGTH, 0, 1, &value) != OW_OK;
    faults += ow_yaml_number(context, &yaml->source, node, -HUGE_VAL, HUGE_VAL, &value) != OW_OK;
    faults += ow_yaml_choice(context, &yaml->source, node, words, 3, &index) != OW_OK;
    faults += ow_yaml_bool(context, &yaml->source, node, &flag) != OW_OK;
    faults += ow_yaml_need(context, &yaml->source, node, "kind") == NULL;
    OW_FUZZ_CHECK(*reports - before == faults && index < 3);
    (void)ow_yaml_known_keys(context, &yaml->source, node, words, 3);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    size_t reports = 0;
    ow_context context = OW_CONTEXT_INIT;
    context.report = count_report;
    context.report_user = &reports;
    ow_yaml_text yaml;
    ow_status status = ow_yaml_read(&context, "fuzz.yaml", (const char *)data, size, &yaml);
    if (status != OW_OK) {
        OW_FUZZ_CHECK(status == OW_INPUT || status == OW_LIMIT);
        OW_FUZZ_CHECK(reports > 0);
        return 0;
    }
    OW_FUZZ_CHECK(reports == 0);
    for (size_t i = 0; i < yaml.document_count; i++) {
        tally seen = {&yaml, 0};
        check_node(&seen, yaml.documents[i], 0);
        read_values(&context, &yaml, yaml.documents[i], &reports);
        const ow_yaml *first = yaml.documents[i]->first;
        for (int j = 0; first != NULL && j < 20; j++, first = first->next)
            read_values(&context, &yaml, first, &reports);
    }
    ow_yaml_done(&yaml);
    return 0;
}

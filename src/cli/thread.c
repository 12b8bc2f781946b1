/* SPDX-License-Identifier: MIT */
/* oilway thread NAME. */
#include <stdio.h>

#include "cli/commands.h"
#include "oilway/report_thread.h"

static const cli_option options[] = {
    {"tap", 't', NULL, "the hole to tap: drill, depth, wall, face, and the cautions", false, NULL},
    {"class", 0, "CLASS", "this tolerance class only", false, "6g 6h 6H 2A 3A 2B 3B A B"},
};

static bool read_class(const cli_run *run, ow_thread_class *only)
{
    const char *words = cli_value(run, "class");
    *only = OW_CLASS_USUAL;
    if (words == NULL || ow_thread_class_read(words, only))
        return true;
    cli_complain("class", "\"%s\" is none of 6g 6h 6H 2A 3A 2B 3B A B", words);
    return false;
}

/* The whole argument must be a designation, with a class that counts where --class says none, or an end. */
static bool read_name(const char *words, ow_thread *thread, ow_thread_class *only)
{
    size_t start, length;
    ow_thread_class said;
    if (ow_thread_read_class(words, thread, &said) == OW_OK) {
        if (*only == OW_CLASS_USUAL)
            *only = said;
        return true;
    }
    ow_end end;
    if (ow_end_read(words, &end, NULL) == OW_OK && ow_end_thread(&end, thread))
        return true;
    const ow_thread_other *other = ow_thread_other_of(words, &start, &length);
    if (other)
        fprintf(stderr, "oilway thread: \"%s\": %s\n    mend: %s\n", words, other->what, other->mend);
    else
        fprintf(stderr,
                "oilway thread: \"%s\" is no thread of the tables: expected one such as M12x1.5, M10, "
                "\"7/16-20 UNF\", \"1/8-27 NPT\", R1/8, Rc1/8, Rp1/8, G1/4, \"M10x1 taper\"\n",
                words);
    return false;
}

static cli_exit run_thread(cli_run *run)
{
    ow_thread thread;
    ow_thread_class only;
    if (!read_class(run, &only) || !read_name(run->arguments[0], &thread, &only))
        return CLI_COULD_NOT;
    ow_text text = ow_text_new(&run->context);
    bool tap = cli_has(run, "tap");
    ow_status status = OW_OK;
    if (cli_is_format(run, "json"))
        status = ow_report_thread_json(&text, &thread, only, tap);
    else if (!ow_report_thread_text(&text, &thread, only, tap, &run->style))
        status = OW_NONE;
    if (status == OW_OK)
        return cli_print(run, &text, CLI_YES);
    ow_text_done(&text);
    if (status != OW_NONE)
        return cli_fail(run, status);
    fprintf(stderr, "oilway thread: %s has no limits of size%s\n", run->arguments[0],
            only != OW_CLASS_USUAL ? " in that class" : " in any standard known here");
    return CLI_COULD_NOT;
}

const cli_command cli_thread = {
    .name = "thread",
    .arguments = "NAME",
    .summary = "dimensions and limits of a thread, and the hole to tap",
    .detail = "NAME is a designation: M12x1.5, \"7/16-20 UNF\", \"1/8-27 NPT\", R1/8, G1/4. Without a pitch "
              "(M10, \"7/16 UN\")\n"
              "every pitch of the tables is printed. A class may stand behind it: \"7/16-20 UNF-2A\".",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 1,
    .uses = CLI_USES_PRINT,
    .formats = "text json",
    .run = run_thread,
};

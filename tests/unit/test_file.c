/* SPDX-License-Identifier: MIT */
#define _XOPEN_SOURCE 700 /* mkdtemp, symlink */
#include <dirent.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "oilway/file.h"
#include "support/diagnostics.h"
#include "support/failing.h"
#include "support/testing.h"

/* A folder of this test's own, gone afterwards; names in it are made by path_of. */
static char folder[64];

static const char *path_of(char path[128], const char *name)
{
    snprintf(path, 128, "%s/%s", folder, name);
    return path;
}

static int make_folder(void **state)
{
    (void)state;
    snprintf(folder, sizeof folder, "/tmp/oilway-test-XXXXXX");
    return mkdtemp(folder) == NULL;
}

static int remove_folder(void **state)
{
    (void)state;
    char path[400];
    DIR *open_folder = opendir(folder);
    if (open_folder == NULL)
        return 1;
    for (const struct dirent *entry = readdir(open_folder); entry != NULL; entry = readdir(open_folder)) {
        snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
        (void)remove(path);
    }
    closedir(open_folder);
    return rmdir(folder);
}

static size_t entries(void)
{
    size_t count = 0;
    DIR *open_folder = opendir(folder);
    assert_non_null(open_folder);
    while (readdir(open_folder) != NULL)
        count++;
    closedir(open_folder);
    return count - 2; /* . and .. */
}

static void put(const char *name, const char *words)
{
    char path[128];
    FILE *file = fopen(path_of(path, name), "wb");
    assert_non_null(file);
    assert_true(fputs(words, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void what_is_written_is_read_back_whole(void **state)
{
    (void)state;
    static const size_t lengths[] = {0, 1, 16383, 16384, 16385, 300000};
    char path[128];
    path_of(path, "whole");
    for (size_t i = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
        char *bytes = malloc(lengths[i] + 1), *again = NULL;
        assert_non_null(bytes);
        for (size_t j = 0; j < lengths[i]; j++)
            bytes[j] = (char)(j * 31 % 256);
        size_t length = 99;
        assert_int_equal(ow_file_write(NULL, path, bytes, lengths[i]), OW_OK);
        assert_int_equal(ow_file_read(NULL, path, &again, &length), OW_OK);
        assert_int_equal(length, lengths[i]);
        assert_memory_equal(again, bytes, length);
        assert_int_equal(again[length], '\0');
        ow_release(NULL, again);
        free(bytes);
    }
    assert_int_equal(entries(), 1); /* nothing is left beside it */
}

static void assert_unreadable(const char *path, ow_status expected, const char *told)
{
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    char *bytes = NULL;
    size_t length = 77;
    assert_int_equal(ow_file_read(&context, path, &bytes, &length), expected);
    assert_null(bytes);
    assert_int_equal(length, 77);
    assert_int_equal(sink.items[0].status, expected);
    ow_test_assert_told(&sink, told);
}

static void what_cannot_be_read_is_told(void **state)
{
    (void)state;
    char path[128], told[256];
    snprintf(told, sizeof told, "%s: error: cannot be opened: No such file or directory",
             path_of(path, "none"));
    assert_unreadable(path, OW_IO, told);
    snprintf(told, sizeof told, "%s: error: this is a folder", folder);
    assert_unreadable(folder, OW_IO, told);
    assert_unreadable("/dev/zero", OW_IO, "/dev/zero: error: this is a device or a socket");
}

static void a_file_past_the_limit_is_refused_and_one_at_it_is_read(void **state)
{
    (void)state;
    char path[128], told[256];
    path_of(path, "large");
    int descriptor = open(path, O_WRONLY | O_CREAT, 0600);
    assert_true(descriptor >= 0);
    assert_int_equal(ftruncate(descriptor, (off_t)OW_FILE_BYTES_MAX + 1), 0); /* a hole: takes no room */
    snprintf(told, sizeof told, "%s: error: this file is larger than 64 MiB", path);
    assert_unreadable(path, OW_LIMIT, told);
    assert_int_equal(ftruncate(descriptor, (off_t)OW_FILE_BYTES_MAX), 0);
    char *bytes = NULL;
    size_t length = 0;
    assert_int_equal(ow_file_read(NULL, path, &bytes, &length), OW_OK);
    assert_int_equal(length, OW_FILE_BYTES_MAX);
    ow_release(NULL, bytes);
    assert_int_equal(close(descriptor), 0);
    assert_int_equal(unlink(path), 0);
}

static void a_pipe_is_read_and_one_without_a_writer_never_waits(void **state)
{
    (void)state;
    char path[128], *bytes = NULL;
    size_t length = 0;
    assert_int_equal(mkfifo(path_of(path, "pipe"), 0600), 0);
    assert_int_equal(ow_file_read(NULL, path, &bytes, &length), OW_OK);
    assert_int_equal(length, 0);
    ow_release(NULL, bytes);
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    assert_int_equal(write(ends[1], "page: x\n", 8), 8);
    assert_int_equal(close(ends[1]), 0);
    snprintf(path, sizeof path, "/dev/fd/%d", ends[0]);
    assert_int_equal(ow_file_read(NULL, path, &bytes, &length), OW_OK);
    assert_string_equal(bytes, "page: x\n");
    ow_release(NULL, bytes);
    assert_int_equal(close(ends[0]), 0);
    assert_int_equal(unlink(path_of(path, "pipe")), 0);
}

static void a_dash_is_standard_input(void **state)
{
    (void)state;
    int ends[2], kept = dup(STDIN_FILENO);
    assert_true(kept >= 0);
    assert_int_equal(pipe(ends), 0);
    assert_int_equal(write(ends[1], "job: x", 6), 6);
    assert_int_equal(close(ends[1]), 0);
    assert_int_equal(dup2(ends[0], STDIN_FILENO), STDIN_FILENO);
    char *bytes = NULL;
    size_t length = 0;
    assert_int_equal(ow_file_read(NULL, "-", &bytes, &length), OW_OK);
    assert_string_equal(bytes, "job: x");
    ow_release(NULL, bytes);
    assert_int_equal(dup2(kept, STDIN_FILENO), STDIN_FILENO);
    assert_int_equal(close(kept), 0);
    assert_int_equal(close(ends[0]), 0);
}

static void writing_keeps_the_mode_and_follows_a_link(void **state)
{
    (void)state;
    char path[128], link_path[128];
    struct stat about;
    put("kept", "old");
    assert_int_equal(chmod(path_of(path, "kept"), 0640), 0);
    assert_int_equal(symlink("kept", path_of(link_path, "link")), 0);
    assert_int_equal(ow_file_write(NULL, link_path, "new", 3), OW_OK);
    assert_int_equal(lstat(link_path, &about), 0);
    assert_true(S_ISLNK(about.st_mode));
    assert_int_equal(stat(path, &about), 0);
    assert_int_equal(about.st_mode & 0777, 0640);
    assert_int_equal(about.st_size, 3);
    assert_int_equal(unlink(link_path), 0);
    assert_int_equal(unlink(path), 0);
}

static void a_new_file_has_the_mode_that_the_umask_leaves(void **state)
{
    (void)state;
    char path[128];
    struct stat about;
    mode_t before = umask(027);
    assert_int_equal(ow_file_write(NULL, path_of(path, "fresh"), "x", 1), OW_OK);
    umask(before);
    assert_int_equal(stat(path, &about), 0);
    assert_int_equal(about.st_mode & 0777, 0640);
    assert_int_equal(unlink(path), 0);
}

static void a_failed_write_is_told_and_leaves_nothing(void **state)
{
    (void)state;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    char path[128], told[256];
    size_t before = entries();
    snprintf(told, sizeof told, "%s: error: no file can be made beside it: No such file or directory",
             path_of(path, "none/x.svg"));
    assert_int_equal(ow_file_write(&context, path, "x", 1), OW_IO);
    ow_test_assert_told(&sink, told);
    snprintf(told, sizeof told, "%s: error: this is a folder", folder);
    assert_int_equal(ow_file_write(&context, folder, "x", 1), OW_IO);
    ow_test_assert_told(&sink, told);
    assert_int_equal(ow_file_write(&context, "/dev/full", "x", 1), OW_IO);
    ow_test_assert_told(&sink, "/dev/full: error: cannot be written: No space left on device");
    assert_int_equal(entries(), before);
}

static void what_is_no_regular_file_is_written_into(void **state)
{
    (void)state;
    struct stat about;
    assert_int_equal(ow_file_write(NULL, "/dev/null", "x", 1), OW_OK);
    assert_int_equal(stat("/dev/null", &about), 0);
    assert_true(S_ISCHR(about.st_mode));
}

static void only_pages_are_listed_sorted_by_bytes(void **state)
{
    (void)state;
    static const char *const names[] = {"tees.yaml", "Tees.yaml", "banjo.yaml", ".hidden.yaml",
                                        "notes.txt", ".yaml",     "x.yaml~",    "y.yml"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        put(names[i], "");
    char **found = NULL;
    size_t count = 0;
    assert_int_equal(ow_folder_pages(NULL, folder, &found, &count), OW_OK);
    assert_int_equal(count, 3);
    assert_string_equal(found[0], "Tees.yaml");
    assert_string_equal(found[1], "banjo.yaml");
    assert_string_equal(found[2], "tees.yaml");
    ow_release(NULL, found);
}

static void an_empty_folder_has_no_pages_and_a_missing_one_is_told(void **state)
{
    (void)state;
    char path[128], told[256], **found = NULL;
    size_t count = 5;
    assert_int_equal(mkdir(path_of(path, "empty"), 0700), 0);
    assert_int_equal(ow_folder_pages(NULL, path, &found, &count), OW_OK);
    assert_int_equal(count, 0);
    ow_release(NULL, found);
    assert_int_equal(rmdir(path), 0);
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    count = 5;
    assert_int_equal(ow_folder_pages(&context, path, &found, &count), OW_IO);
    assert_int_equal(count, 5);
    snprintf(told, sizeof told, "%s: error: the folder cannot be read: No such file or directory", path);
    ow_test_assert_told(&sink, told);
}

static ow_status write_list_and_read(const ow_context *context, void *data)
{
    (void)data;
    char path[128], *bytes = NULL, **names = NULL;
    size_t length = 0;
    ow_status status = ow_file_write(context, path_of(path, "job.yaml"), "job: x\n", 7);
    if (status == OW_OK)
        status = ow_folder_pages(context, folder, &names, &length);
    if (status == OW_OK)
        status = ow_file_read(context, path, &bytes, &length);
    ow_release(context, bytes);
    ow_release(context, names);
    return status;
}

static void each_failing_allocation_is_told_and_leaves_no_file_behind(void **state)
{
    (void)state;
    put("job.yaml", "");
    size_t before = entries();
    assert_true(ow_test_fail_each(write_list_and_read, NULL) > 3);
    assert_int_equal(entries(), before);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_written_is_read_back_whole),
        cmocka_unit_test(what_cannot_be_read_is_told),
        cmocka_unit_test(a_file_past_the_limit_is_refused_and_one_at_it_is_read),
        cmocka_unit_test(a_pipe_is_read_and_one_without_a_writer_never_waits),
        cmocka_unit_test(a_dash_is_standard_input),
        cmocka_unit_test(writing_keeps_the_mode_and_follows_a_link),
        cmocka_unit_test(a_new_file_has_the_mode_that_the_umask_leaves),
        cmocka_unit_test(a_failed_write_is_told_and_leaves_nothing),
        cmocka_unit_test(what_is_no_regular_file_is_written_into),
        cmocka_unit_test(only_pages_are_listed_sorted_by_bytes),
        cmocka_unit_test(an_empty_folder_has_no_pages_and_a_missing_one_is_told),
        cmocka_unit_test(each_failing_allocation_is_told_and_leaves_no_file_behind),
    };
    return cmocka_run_group_tests(tests, make_folder, remove_folder);
}

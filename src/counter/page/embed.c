/* SPDX-License-Identifier: MIT */
/*
 * embed FILE...: writes a C source with each file as an array of bytes, and the table of
 * src/counter/assets.h. Run by the Makefile while building; not part of the command.
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const types[][2] = {
    {".html", "text/html; charset=utf-8"},
    {".css", "text/css; charset=utf-8"},
    {".js", "text/javascript; charset=utf-8"},
    {".svg", "image/svg+xml; charset=utf-8"},
};

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash != NULL ? slash + 1 : path;
}

static const char *type_of(const char *name)
{
    const char *dot = strrchr(name, '.');
    for (size_t index = 0; dot != NULL && index < sizeof types / sizeof types[0]; index++) {
        if (strcmp(dot, types[index][0]) == 0)
            return types[index][1];
    }
    fprintf(stderr, "embed: %s: what is this?\n", name);
    exit(1);
}

/* Writes the array and returns a hash (FNV-1a) of the bytes. */
static uint64_t write_array(const char *path, size_t number)
{
    uint64_t hash = UINT64_C(0xcbf29ce484222325);
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        perror(path);
        exit(1);
    }
    printf("\nstatic const unsigned char asset_%zu[] = {", number);
    size_t column = 0;
    for (int byte; (byte = getc(file)) != EOF; column++) {
        printf("%s%d,", column % 24 == 0 ? "\n    " : "", byte);
        hash = (hash ^ (unsigned)byte) * UINT64_C(0x100000001b3);
    }
    printf("\n};\n");
    if (ferror(file) || fclose(file) != 0) {
        perror(path);
        exit(1);
    }
    return hash;
}

int main(int count, char **paths)
{
    uint64_t *hashes = calloc((size_t)count + 1, sizeof *hashes);
    if (hashes == NULL)
        return 1;
    printf("/* Written by src/counter/page/embed.c. */\n#include \"counter/assets.h\"\n");
    for (int index = 1; index < count; index++)
        hashes[index] = write_array(paths[index], (size_t)index);
    printf("\nconst counter_asset counter_assets[] = {\n");
    for (int index = 1; index < count; index++) {
        const char *name = base_name(paths[index]);
        printf("    {\"/%s\", \"%s\", \"\\\"%016" PRIx64 "\\\"\", asset_%d, sizeof asset_%d},\n",
               strcmp(name, "index.html") == 0 ? "" : name, type_of(name), hashes[index], index, index);
    }
    printf("};\nconst size_t counter_asset_count = sizeof counter_assets / sizeof counter_assets[0];\n");
    free(hashes);
    return fflush(stdout) == 0 ? 0 : 1;
}

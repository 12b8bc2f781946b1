/* SPDX-License-Identifier: MIT */
/* The page's own files, inside the binary. The table is written at build time from src/counter/page/ by
 * src/counter/page/embed.c. */
#ifndef OW_COUNTER_ASSETS_H
#define OW_COUNTER_ASSETS_H

#include <stddef.h>

typedef struct counter_asset {
    const char *path; /* "/page.css"; that of index.html is "/" */
    const char *type; /* Content-Type */
    const char *tag;  /* ETag, with its quotes: changes with the content */
    const unsigned char *bytes;
    size_t length;
} counter_asset;

extern const counter_asset counter_assets[];
extern const size_t counter_asset_count;

#endif

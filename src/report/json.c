/* SPDX-License-Identifier: MIT */
#include "report/json.h"

#include <math.h>

ow_json ow_json_new(bool is_list)
{
    ow_json json = {is_list ? cJSON_CreateArray() : cJSON_CreateObject(), false};
    json.failed = json.root == NULL;
    return json;
}

/* Hangs an item on its parent; on any failure the item is freed and the builder marked. */
static cJSON *hang(ow_json *json, cJSON *parent, const char *name, cJSON *item)
{
    cJSON_bool hung = 0;
    if (item != NULL && parent != NULL && !json->failed)
        hung = name != NULL ? cJSON_AddItemToObject(parent, name, item) : cJSON_AddItemToArray(parent, item);
    if (hung)
        return item;
    cJSON_Delete(item);
    json->failed = true;
    return NULL;
}

cJSON *ow_json_object(ow_json *json, cJSON *parent, const char *name)
{
    return hang(json, parent, name, cJSON_CreateObject());
}

cJSON *ow_json_list(ow_json *json, cJSON *parent, const char *name)
{
    return hang(json, parent, name, cJSON_CreateArray());
}

void ow_json_words(ow_json *json, cJSON *parent, const char *name, const char *words)
{
    hang(json, parent, name, words != NULL ? cJSON_CreateString(words) : cJSON_CreateNull());
}

void ow_json_text(ow_json *json, cJSON *parent, const char *name, ow_text *text)
{
    json->failed = json->failed || text->failed;
    ow_json_words(json, parent, name, ow_text_words(text));
    ow_text_done(text);
}

void ow_json_number(ow_json *json, cJSON *parent, const char *name, double number)
{
    hang(json, parent, name, isfinite(number) ? cJSON_CreateNumber(number) : cJSON_CreateNull());
}

void ow_json_bool(ow_json *json, cJSON *parent, const char *name, bool value)
{
    hang(json, parent, name, cJSON_CreateBool(value));
}

void ow_json_null(ow_json *json, cJSON *parent, const char *name)
{
    hang(json, parent, name, cJSON_CreateNull());
}

void ow_json_rounded(ow_json *json, cJSON *parent, const char *name, double value, int decimals)
{
    double scale = pow(10.0, decimals);
    ow_json_number(json, parent, name, round(value * scale) / scale);
}

void ow_json_scaled(ow_json *json, cJSON *parent, const char *name, double value, double factor, int decimals)
{
    if (value < 0.0)
        ow_json_null(json, parent, name);
    else
        ow_json_rounded(json, parent, name, value * factor, decimals);
}

void ow_json_cents(ow_json *json, cJSON *parent, const char *name, bool known, int64_t cents)
{
    if (known)
        ow_json_rounded(json, parent, name, (double)cents / 100.0, 2);
    else
        ow_json_null(json, parent, name);
}

ow_status ow_json_done(ow_json *json, ow_text *text)
{
    char *words = json->failed ? NULL : cJSON_Print(json->root);
    if (words != NULL) {
        ow_text_add(text, words);
        ow_text_char(text, '\n');
    }
    cJSON_free(words);
    cJSON_Delete(json->root);
    ow_status status = words != NULL ? ow_text_status(text) : OW_MEMORY;
    *json = (ow_json){NULL, true};
    return status;
}

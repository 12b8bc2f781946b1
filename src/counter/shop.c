/* SPDX-License-Identifier: MIT */
#include "counter/shop.h"

#include <stdlib.h>

#include "counter/faults.h"
#include "counter/signature.h"

static void free_shop(counter_shop *shop)
{
    if (shop == NULL)
        return;
    ow_net_free(shop->net);
    ow_catalog_free(shop->catalog);
    free(shop);
}

/* Loads what lies there now. Faults are told to the keeper's context and kept in `faults`. */
static ow_status load(const counter_keeper *keeper, counter_faults *faults, counter_shop **loaded)
{
    *faults = (counter_faults){NULL, 0, keeper->context};
    counter_shop *shop = calloc(1, sizeof *shop);
    if (shop == NULL)
        return OW_MEMORY;
    shop->context.report = counter_faults_add;
    shop->context.report_user = faults;
    ow_status status = ow_catalog_load(&shop->context, &keeper->options, &shop->catalog);
    if (status == OW_OK)
        status = ow_net_build(&shop->context, shop->catalog, &shop->net);
    /* The shop outlives its faults. */
    shop->context.report = NULL;
    shop->context.report_user = NULL;
    if (status == OW_OK)
        *loaded = shop;
    else
        free_shop(shop);
    return status;
}

ow_status counter_keeper_open(counter_keeper *keeper, const ow_context *context,
                              const ow_catalog_options *options)
{
    *keeper = (counter_keeper){.context = context, .options = *options, .newest = 1};
    counter_faults faults;
    keeper->loaded = keeper->seen = counter_signature(options);
    ow_status status = load(keeper, &faults, &keeper->shop);
    counter_faults_done(&faults);
    if (status != OW_OK)
        return status;
    if (pthread_mutex_init(&keeper->lock, NULL) != 0) {
        free_shop(keeper->shop);
        return OW_MEMORY;
    }
    keeper->shop->holders = 1;
    keeper->shop->generation = 1;
    return OW_OK;
}

void counter_keeper_close(counter_keeper *keeper)
{
    counter_shop_release(keeper, keeper->shop);
    pthread_mutex_destroy(&keeper->lock);
    cJSON_free(keeper->faults);
}

counter_shop *counter_shop_hold(counter_keeper *keeper)
{
    pthread_mutex_lock(&keeper->lock);
    counter_shop *shop = keeper->shop;
    shop->holders++;
    pthread_mutex_unlock(&keeper->lock);
    return shop;
}

void counter_shop_release(counter_keeper *keeper, counter_shop *shop)
{
    pthread_mutex_lock(&keeper->lock);
    bool last = --shop->holders == 0;
    pthread_mutex_unlock(&keeper->lock);
    if (last)
        free_shop(shop);
}

static counter_change take_in(counter_keeper *keeper)
{
    counter_faults faults;
    counter_shop *shop = NULL;
    ow_status status = load(keeper, &faults, &shop);
    char *told = NULL;
    if (status != OW_OK) {
        if (faults.errors == 0)
            counter_faults_add(
                &faults,
                &(ow_diagnostic){.severity = OW_ERROR, .status = status, .message = ow_status_text(status)});
        told = counter_faults_print(&faults);
    }
    counter_faults_done(&faults);
    pthread_mutex_lock(&keeper->lock);
    counter_shop *old = keeper->shop;
    char *before = keeper->faults;
    keeper->faults = told;
    if (shop != NULL) {
        shop->holders = 1;
        shop->generation = ++keeper->newest;
        keeper->shop = shop;
    }
    pthread_mutex_unlock(&keeper->lock);
    cJSON_free(before);
    if (shop == NULL)
        return COUNTER_BAD_SHOP;
    counter_shop_release(keeper, old);
    return COUNTER_NEW_SHOP;
}

counter_change counter_keeper_look(counter_keeper *keeper)
{
    uint64_t now = counter_signature(&keeper->options);
    bool settled = now == keeper->seen;
    keeper->seen = now;
    if (!settled || now == keeper->loaded)
        return COUNTER_SAME;
    keeper->loaded = now;
    return take_in(keeper);
}

ow_status counter_keeper_state(counter_keeper *keeper, const counter_shop *shop, ow_text *text)
{
    ow_text_format(text,
                   "{\"generation\": %lu, \"parts\": %zu, \"machines\": %zu, \"fixtures\": %zu, \"pages\": "
                   "%zu, \"kinds\": %zu, ",
                   shop->generation, ow_catalog_part_count(shop->catalog),
                   ow_catalog_machine_count(shop->catalog), ow_catalog_fixture_count(shop->catalog),
                   ow_catalog_page_count(shop->catalog), ow_net_kind_count(shop->net));
    pthread_mutex_lock(&keeper->lock);
    ow_text_format(text, "\"stale\": %s, \"faults\": ", keeper->faults != NULL ? "true" : "false");
    ow_text_add(text, keeper->faults != NULL ? keeper->faults : "[]");
    pthread_mutex_unlock(&keeper->lock);
    ow_text_add(text, "}\n");
    return ow_text_status(text);
}

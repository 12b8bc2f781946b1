/* SPDX-License-Identifier: MIT */
/* Ways through the shapes of a net whose shapes are in place: entries, carries, forks, crosses. */
#ifndef OW_NET_WAYS_H
#define OW_NET_WAYS_H

#include "net/net.h"

ow_status ow_net_build_ways(ow_net_index *net);

#endif

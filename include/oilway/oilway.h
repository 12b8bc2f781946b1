/* SPDX-License-Identifier: MIT */
/* All of the library's headers. */
#ifndef OILWAY_OILWAY_H
#define OILWAY_OILWAY_H

#include "oilway/answer.h"
#include "oilway/ask.h"
#include "oilway/assumption.h"
#include "oilway/bill.h"
#include "oilway/caliper.h"
#include "oilway/card.h"
#include "oilway/catalog.h"
#include "oilway/check.h"
#include "oilway/context.h"
#include "oilway/coolant.h"
#include "oilway/drain.h"
#include "oilway/end.h"
#include "oilway/feed.h"
#include "oilway/file.h"
#include "oilway/finding.h"
#include "oilway/hose_material.h"
#include "oilway/hydraulics.h"
#include "oilway/joint.h"
#include "oilway/layout.h"
#include "oilway/mates.h"
#include "oilway/oil.h"
#include "oilway/pairing.h"
#include "oilway/quantity.h"
#include "oilway/report.h"
#include "oilway/report_joint.h"
#include "oilway/report_thread.h"
#include "oilway/stack.h"
#include "oilway/status.h"
#include "oilway/text.h"
#include "oilway/thread.h"
#include "oilway/thread_size.h"

#endif

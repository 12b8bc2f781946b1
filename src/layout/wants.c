/* SPDX-License-Identifier: MIT */
/* What a unit wants before its inlet, from its bearing and what is built in. */
#include "oilway/layout.h"

ow_restrictor_ask ow_given_wants(const ow_given *to, ow_bearing said)
{
    ow_bearing bearing = said;
    ow_built_in built_in = OW_BUILT_IN_UNKNOWN;
    if (to->machine != NULL) {
        built_in = to->machine->restrictor;
        if (said == OW_BEARING_UNKNOWN)
            bearing = to->machine->bearing;
    }
    if (bearing == OW_BEARING_JOURNAL || built_in == OW_BUILT_IN_YES)
        return OW_RESTRICTOR_FORBIDDEN;
    if (bearing == OW_BEARING_BALL && built_in == OW_BUILT_IN_NONE)
        return OW_RESTRICTOR_REQUIRED;
    return OW_RESTRICTOR_ANY;
}

/* SPDX-License-Identifier: MIT */
/* The rules that a whole job is judged by, beside those of its layouts and of the physics. */
#include "rules/table.h"

const ow_rule ow_plan_rules[] = {
    {"no-stack", OW_ERROR, "feed drain coolant", "Nothing in the catalogue joins the two ports.",
     "Buy or have made the part that is named, or choose another port.", "the search: a proven answer"},
    {"not-reckoned", OW_WARNING, "feed drain coolant", "Flows and pressures are not reckoned.",
     "Give the bore of every part, and figures within the stated ranges.", "limits of the formulas"},
    /* ---- feed ---- */
    {"turbo-pressure", OW_ERROR, "feed", "The pressure at the turbo is above what the job allows.",
     "Measure it; mend the relief valve, use another take-off, or fit the restrictor that the unit wants.",
     "the job"},
    {"restrictor-size", OW_WARNING, "feed",
     "The restrictor does not hold the pressure that a ball bearing wants.",
     "Fit the drill size that is named, and measure behind it.",
     "common practice: 2.8 to 3.1 bar at full speed, hot"},
    /* ---- drain ---- */
    {"no-return", OW_ERROR, "drain", "The engine offers no return for the oil.",
     "Have a stub plated to the block or a bung welded into the sump above its oil level; wash out the "
     "swarf.",
     "common practice"},
    {"outlet-unknown", OW_WARNING, "drain", "The turbo's record names no oil outlet.",
     "Write the outlet into its record, a port with circuit: drain; without a way home the oil goes past "
     "the seals.",
     "common practice"},
    {"oil-level-unknown", OW_NOTE, "drain", "The oil level of the sump is not given.",
     "Measure it from the turbo's outlet, engine off, and write it as oil-level.", "common practice"},
    /* ---- coolant ---- */
    {"coolant-left-out", OW_WARNING, "coolant", "A water-cooled unit is run without its water.",
     "Lead it water if it can be done; else idle a minute before shutdown and expect a shorter life.",
     "common practice; after a hot stop a bearing housing rose 60 K to 220 C with the plain circuit "
     "(Alaviyoun and "
     "Ziabasharhagh, Modares Mech. Eng. 17(12), 2018)"},
    {"no-coolant-port", OW_ERROR, "coolant", "A port that the loop needs is not there.",
     "Name the two ports in the job, or tee into a heater hose.", "common practice"},
    {"coolant-port-shared", OW_ERROR, "coolant", "Two coolant hoses are to go to one port of the engine.",
     "Name another port in the job, or join the two hoses by a hose tee before the port and check the loops "
     "together.",
     "one hole takes one fitting"},
    {"coolant-flat", OW_WARNING, "coolant", "The coolant ports stand nearly level.",
     "Clock the housing about 15 degrees off level, cold water in at the low port.", "common practice"},
    {"coolant-falls", OW_WARNING, "coolant", "The hot return falls on its way home.",
     "Lead it so that it rises all the way, or bleed it at its highest place.", "common practice"},
    {"heater-valve", OW_WARNING, "coolant", "The loop runs through the heater, whose valve can shut it.",
     "Lead it past the valve, or take the valve out.", "common practice"},
};

const size_t ow_plan_rules_count = sizeof ow_plan_rules / sizeof ow_plan_rules[0];

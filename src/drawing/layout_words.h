/* SPDX-License-Identifier: MIT */
/* A layout in words, for the lists below a drawing, for sheets, and for those who listen. */
#ifndef OW_DRAWING_LAYOUT_WORDS_H
#define OW_DRAWING_LAYOUT_WORDS_H

#include "oilway/finding.h"
#include "oilway/layout.h"

/* Its title, or "feed from X to Y, keeping Z". */
void ow_words_of_layout(const ow_layout *layout, ow_text *text);
/* Name, title, bore and length of a part. */
void ow_words_of_part(const ow_layout *layout, size_t node, ow_text cells[4]);
/* "a to b: END x END", and what seals it. */
void ow_words_of_joint(const ow_layout *layout, size_t child, ow_text *between, ow_text *seal);
/* "error at WHERE: message. Mend: … (source)" */
void ow_words_of_finding(const ow_finding *finding, ow_text *text);
/* The whole chain, joint by joint, then the findings. */
void ow_words_along_layout(const ow_layout *layout, const ow_findings *findings, ow_text *text);

#endif

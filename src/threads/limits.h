/* SPDX-License-Identifier: MIT */
/* Limits of size of one side of a thread, by standard. */
#ifndef OW_THREADS_LIMITS_H
#define OW_THREADS_LIMITS_H

#include "oilway/thread_size.h"
#include "threads/sizes.h"

#define OW_MM 1e-3
#define OW_INCH 0.0254
#define OW_PIPE_TAPER (1.0 / 16) /* on the diameter */

/* Sharp-V height and depth of the basic profile, in pitches. */
#define OW_TRIANGLE_60 0.86602540378443865 /* ISO 68-1, ASME B1.1: H = sqrt(3)/2 P */
#define OW_TRIANGLE_55 0.960491            /* ISO 7-1, ISO 228-1 */
#define OW_DEPTH_55 0.640327               /* ISO 7-1, ISO 228-1 */
#define OW_DEPTH_NPT 0.8                   /* ASME B1.20.1 */
#define OW_TRUNCATION_NPT 0.033            /* ASME B1.20.1: least truncation of crest or root */

/* Each fills class_name, source, bases, diameters and, for a taper, lengths; thread, male, pitch_m,
 * flank_angle_rad and triangle_m are filled already. */
void ow_limits_metric(ow_thread_size *size, ow_thread_class class_wanted);
void ow_limits_unified(ow_thread_size *size, ow_thread_class class_wanted);
void ow_limits_npt(ow_thread_size *size, const ow_npt_size *base);
void ow_limits_npsm(ow_thread_size *size);
void ow_limits_iso_7(ow_thread_size *size, const ow_whitworth_size *base);
void ow_limits_iso_228(ow_thread_size *size, const ow_whitworth_size *base, ow_thread_class class_wanted);
void ow_limits_metric_taper(ow_thread_size *size, const ow_metric_taper_size *base);

/* Basic diameters of a 60 degree parallel profile on its major diameter. */
void ow_basic_60(ow_thread_size *size, double major_m);

ow_size_limits ow_limits_between(double basic_m, double least_m, double most_m);
ow_size_limits ow_limits_least(double basic_m, double least_m);
ow_size_limits ow_limits_most(double basic_m, double most_m);

#endif

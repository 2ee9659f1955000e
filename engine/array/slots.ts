/**
 * Where each prepared value of a step stands in `PreparedGroup.perStep`. They lie side by side because the step loop
 * visits many groups in turn: one stretch of memory for each instead of ten takes a third off its time.
 */

/** Share of the step during which the group is set out. */
export const OUT_SHARE = 0;
/** Cosine of the sun's angle on the plane, 0 when the sun is behind it or down. */
export const COS_INCIDENCE = 1;
/** Share of level light that the ground throws onto the plane. */
export const GROUND_SHARE = 2;
/** Share of beam light that gets through the glass. */
export const INCIDENCE_SHARE = 3;
/** Cells above air, K m²/W. */
export const HEAT_K_PER_WM2 = 4;
/** 1 where the whole of the beam reaches all sections: then nobody need look at the shares from `MEAN_SHARE` on; else 0. */
export const BEAM_IS_FREE = 5;
/** Share of even sky light that falls on the plane, obstacles taken off. From here on, crowns have a say. */
export const SKY_SHARE = 6;
/** Mean share of the beam that reaches the modules. */
export const MEAN_SHARE = 7;
/** Share of the beam on the brightest section, mean of the strings; the k-th brightest stands k − 1 further on. */
export const SECTION_SHARE = 8;

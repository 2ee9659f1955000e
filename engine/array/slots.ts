/**
 * Where each prepared value of a step stands in `PreparedGroup.perStep`. They lie side by side because the step loop
 * visits many groups in turn: one stretch of memory for each instead of ten takes a third off its time.
 */

/** Share of the step during which the group is set out. */
export const OUT_SHARE = 0;
/** Cosine of the sun's angle on the plane, 0 when the sun is behind it or down. */
export const COS_INCIDENCE = 1;
/** What light from beside the sun becomes on the plane, as a share of that on the level. */
export const BEAM_RATIO = 2;
/** 1000 ÷ the light above the air, m²/kW: turns beam into Hay and Davies's anisotropy. */
export const PER_EXTRATERRESTRIAL = 3;
/** Share of level light that the ground throws onto the plane. */
export const GROUND_SHARE = 4;
/** Share of beam light that gets through the glass. */
export const INCIDENCE_SHARE = 5;
/** Cells above air, K m²/W. */
export const HEAT_K_PER_WM2 = 6;
/** Share of even sky light that falls on the plane, obstacles taken off. From here on, crowns have a say. */
export const SKY_SHARE = 7;
/** Mean share of the beam that reaches the modules. */
export const MEAN_SHARE = 8;
/** Share of the beam on the brightest section, mean of the strings; the k-th brightest stands k − 1 further on. */
export const SECTION_SHARE = 9;

/** Where each value of a step stands in `PreparedGroup.perez`, which is empty for other transpositions. */
/** Sine of the tilt, obstacles taken off: what the horizon's band adds. */
export const HORIZON_SHARE = 0;
/** Sun's angle from the zenith, radians. */
export const ZENITH_RAD = 1;
/** Perez's κ z³. */
export const KAPPA_Z3 = 2;
/** 1000 × air mass ÷ the light above the air, m²/kW. */
export const AIR_PER_EXTRATERRESTRIAL = 3;
export const PEREZ_SLOTS = 4;

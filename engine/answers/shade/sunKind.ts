/** The sun is down. */
export const NIGHT = 0;
/** The sun is up but behind the panel's back, or the panel is packed away. */
export const AWAY = 1;
/** The sun is up and something keeps nearly all of it off. */
export const DARK = 2;
/** Some of it comes through leaves or past an edge. */
export const PART = 3;
/** Hardly anything stands in the way. */
export const OPEN = 4;

/** From this share of the beam on it counts as open sun, and below the other as none: our own round numbers. */
export const OPEN_FROM_SHARE = 0.9;
export const DARK_BELOW_SHARE = 0.05;

/** Names a share of the beam, 0…1. */
export function sunKind(share: number): typeof DARK | typeof PART | typeof OPEN {
  if (share >= OPEN_FROM_SHARE) return OPEN;
  return share < DARK_BELOW_SHARE ? DARK : PART;
}

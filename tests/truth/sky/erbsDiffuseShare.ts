/**
 * The share of the light on the level that comes from the sky and not from the sun, by how clear the hour is.
 * One of the models that the engine's split is held against. The published branches leave steps of 0.0003 at 0.22 and 0.8.
 * @param clearnessIndex GHI over extraterrestrial light on the level, 0…1 (more is taken as clear)
 * @returns 0.165…1
 * @see D. G. Erbs, S. A. Klein, J. A. Duffie, Solar Energy 28 (1982) 293–302, eq. 1
 */
export function erbsDiffuseShare(clearnessIndex: number): number {
  const kt = clearnessIndex;
  if (kt <= 0.22) return 1 - 0.09 * kt;
  if (kt > 0.8) return 0.165;
  return 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + kt * 12.336)));
}

import type { PanelGroup } from "./panelGroup.ts";

/** One named loss between the light and the module's terminals. */
export interface NamedLoss {
  readonly name: string;
  readonly share: number;
}

/**
 * What modules lose with each year: the median of some two thousand published rates lies at 0.5 to 0.6 % (Jordan, Kurtz, VanSant & Newmiller,
 * Progress in Photovoltaics 24 (2016) 978–989; from memory).
 */
export const AGE_LOSS_PER_YEAR = 0.006;

/** All losses of a group that multiply: those of its list, dirt and snow where stated, the age of its modules. Stated dirt stands for “soiling”. */
export function lossesOf(group: PanelGroup): NamedLoss[] {
  const { losses, dirtShare, snowShare, module } = group;
  const listed = dirtShare === undefined ? losses : losses.filter(({ name }) => name !== "soiling");
  let left = 1;
  for (let year = 0; year < module.ageYears; year++) left *= 1 - AGE_LOSS_PER_YEAR;
  return [
    ...listed,
    ...(dirtShare === undefined ? [] : [{ name: "dirt", share: dirtShare }]),
    ...(snowShare > 0 ? [{ name: "snow", share: snowShare }] : []),
    ...(module.ageYears > 0 ? [{ name: "age", share: 1 - left }] : []),
  ];
}

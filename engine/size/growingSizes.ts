import type { Prepared } from "../run/prepare.ts";

/** Fields of which more only helps: the bank's ampere-hours, and modules of a group. */
const BANK_SIZE = /^bank\.(blockAh|inParallel)$/;
/** A bank that starts lower than this above its reserve may be cut off before the sun comes, and a larger one for longer. */
const START_OVER_RESERVE = 0.25;
const PANELS_SIZE = /^panels\.[^.]+\.count$/;

/**
 * Whether a member that holds in a cell of a map holds in every larger one, and one that stays lit stays lit: then only the cells along each member's
 * frontier have to be run. True of sizes alone, under panels whose power does not fall when the bank's volts rise; an engine starts and stops by
 * the charge, a selector shuts one input out for another, a box keeps a larger bank at another temperature.
 * @param axes fields of the map's directions
 */
export function growsWithSize(
  { scenario: { bank, sources, panels }, selector }: Prepared,
  axes: readonly string[],
): boolean {
  const areSizes = axes.every((at) => BANK_SIZE.test(at) || PANELS_SIZE.test(at));
  const startsHigh = bank.startShare >= bank.reserveShare + START_OVER_RESERVE;
  const isPlain = startsHigh && sources.length === 0 && selector.inputs === 0 && bank.box === undefined;
  return areSizes && isPlain && panels.every(({ controller }) => controller.kind !== "pwm");
}

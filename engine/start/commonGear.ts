import { GENERIC_GEAR, type GenericGear } from "../gear/gearTable.ts";

/** Kinds on the gear shelf that one ticks in the six questions, and how many come along unless somebody says otherwise. */
const ASKED = {
  laptop: 1,
  router: 1,
  lamp: 2,
  phone: 2,
  fridge: 0,
  fan: 0,
  "peg-light": 0,
  "board-computer": 0,
  satellite: 0,
  standing: 0,
  breathing: 0,
} as const;

export const WHEN: Readonly<Record<GenericGear["use"], string>> = {
  always: "always",
  afterDark: "after dark",
  whenStaffed: "while somebody operates",
  evenings: "evenings",
  nights: "at night",
};

/** A common load that one ticks. */
export interface CommonGear {
  readonly gear: GenericGear;
  readonly usual: number;
}

export const COMMON_GEAR: readonly CommonGear[] = Object.entries(ASKED).map(([id, usual]) => {
  return { gear: GENERIC_GEAR.find((each) => each.id === id)!, usual };
});

/** What one of a kind takes and when, in a few words: "4 A, always, 35 % of it". */
export function gearSays({ working, unit, use, share }: GenericGear, measured = working.usual): string {
  return `${measured} ${unit}, ${WHEN[use]}${share === 1 ? "" : `, ${Math.round(100 * share)} % of it`}`;
}

import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";
import type { PackedSet } from "../../../engine/packing/packingReport.ts";

/** What goes along with panels and is no choice of its own. */
const goesAlong = ({ kind }: OwnedThing) => kind === "lead" || kind === "controller";

/**
 * The set that takes so many of one thing, and of all others what another set takes; leads and controllers follow the panels. Null where there is no
 * such set, as without any battery.
 */
export function setOfTicks(
  sets: readonly PackedSet[],
  things: readonly OwnedThing[],
  from: PackedSet,
  thing: number,
  count: number,
): PackedSet | null {
  const fits = sets.filter(({ take }) =>
    things.every((each, t) => (t === thing ? take[t] === count : goesAlong(each) || take[t] === from.take[t])),
  );
  return fits.reduce<PackedSet | null>(
    (best, set) => (best === null || set.totals.mass.sum < best.totals.mass.sum ? set : best),
    null,
  );
}

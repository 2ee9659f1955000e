import { MINUTES_A_TURN } from "../../versus/turns.ts";
import { energy, figure, hours, THIN } from "../../words/numbers.ts";
import type { Words } from "../../words/said.ts";
import type { PlanColumn } from "./planColumns.ts";

/** Less than this on average is no gain that anybody notices, Wh. */
const WORTH_NAMING_WH = 1;
/** Less than this is no hour that anybody misses, h. */
const WORTH_NAMING_H = 0.05;

const named = ({ name, look }: PlanColumn): Words => ({ text: name, as: look });

/** Who gains from which, and who pays for it: two sentences. */
export function gainsWords(columns: readonly PlanColumn[]): Words[] {
  const [first, ...others] = columns;
  if (first === undefined) return [];
  return [...gainSentence(first, others), { text: " " }, ...paySentence(first, others)];
}

interface Unserved {
  readonly other: PlanColumn;
  readonly id: string;
  readonly name: string;
  readonly beforeWh: number;
  readonly afterWh: number;
}

/** What each device goes without in the first and in another, where both have it. */
function unservedIn(first: PlanColumn, other: PlanColumn): Unserved[] {
  return first.side.unservedByDevice.flatMap(({ id, name, meanWh }) => {
    const there = other.side.unservedByDevice.find((each) => each.id === id);
    return there === undefined ? [] : [{ other, id, name, beforeWh: meanWh, afterWh: there.meanWh }];
  });
}

/** Which device gains most, and from which. */
function gainSentence(first: PlanColumn, others: readonly PlanColumn[]): Words[] {
  const all = others.flatMap((other) => unservedIn(first, other));
  const gain = ({ beforeWh, afterWh }: Unserved) => beforeWh - afterWh;
  const most = all.reduce<Unserved | null>(
    (best, each) => (best === null || gain(each) > gain(best) ? each : best),
    null,
  );
  if (most === null || gain(most) < WORTH_NAMING_WH) {
    return [{ text: "No device goes without less than with " }, named(first), { text: "." }];
  }
  const after = most.afterWh < WORTH_NAMING_WH ? "next to nothing" : energy(most.afterWh);
  return [
    { text: `${most.name} gains most: with ` },
    named(most.other),
    { text: ` it goes without ${after} on average, not ${energy(most.beforeWh)}.` },
  ];
}

/** Who gives up hours, turns panels by hand, or goes without more. */
function paySentence(first: PlanColumn, others: readonly PlanColumn[]): Words[] {
  const parts = others.flatMap((other): Words[][] => {
    const lost = first.side.onAir.flatMap((station) => {
      const left = other.side.onAir.find(({ id }) => id === station.id)?.hours ?? 0;
      return station.hours - left < WORTH_NAMING_H ? [] : [`${station.name} gives up ${hours(station.hours - left)}`];
    });
    const turns = other.side.burden.turns - first.side.burden.turns;
    const turned = turns <= 0 ? [] : [`somebody re-aims panels ${times(turns)}, ${MINUTES_A_TURN}${THIN}min each`];
    const worst = unservedIn(first, other).reduce<Unserved | null>(
      (most, each) =>
        each.afterWh - each.beforeWh > (most === null ? WORTH_NAMING_WH : most.afterWh - most.beforeWh) ? each : most,
      null,
    );
    const without = worst === null ? [] : [`${worst.name} goes without ${energy(worst.afterWh - worst.beforeWh)} more`];
    const said = [...lost, ...turned, ...without];
    return said.length === 0 ? [] : [[{ text: "with " }, named(other), { text: ` ${said.join(" and ")}` }]];
  });
  if (parts.length === 0) return [{ text: "Nobody gives up hours on the air, and nobody turns more panels by hand." }];
  const words = parts.flatMap((part, k): Words[] => [...(k === 0 ? [] : [{ text: "; " }]), ...part]);
  const [start, ...rest] = words;
  return [{ ...start!, text: "With " }, ...rest, { text: "." }];
}

const times = (count: number) => (count === 1 ? "once" : `${figure(count)} times`);

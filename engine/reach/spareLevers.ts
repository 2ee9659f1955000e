import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { turnsIn } from "../versus/turns.ts";
import { blockStepAh, blockWords } from "./bankLevers.ts";
import { bringPrice } from "./bringPrice.ts";
import type { Amount, Lever } from "./lever.ts";
import { inside, proppedUp } from "./openPanels.ts";
import { turnsPrice } from "./placeLevers.ts";

/** What can stay at home, or be left undone: each lever goes from a little less to nothing of it. */
export function spareLevers(scenario: Scenario, grid: TimeGrid): Lever[] {
  return [
    smallerBlock(scenario.bank),
    ...scenario.panels.map(fewerPanels),
    ...scenario.panels.map((group) => setOnce(group, scenario.place.latitudeDeg, grid)),
    ...scenario.sources.map(withoutSource),
  ].filter(({ amounts }) => amounts.length > 0);
}

function smallerBlock(bank: Scenario["bank"]): Lever {
  const { blockAh } = bank;
  const step = blockStepAh(blockAh);
  const amounts: Amount[] = [];
  for (let ah = step * (Math.ceil(blockAh / step) - 1); ah >= step; ah -= step) {
    amounts.push({
      words: blockWords(bank, ah),
      changes: [{ at: "bank.blockAh", to: ah }],
      price: bringPrice(bank.bring, (bank.inSeries * bank.inParallel * (ah - blockAh)) / blockAh, 0),
    });
  }
  return { id: "spare-bank", kind: "bank", name: "A smaller bank", amounts, isMonotone: true, touches: ["bank.size"] };
}

function fewerPanels({ id, name, count, inSeries, module, bring }: Scenario["panels"][number]): Lever {
  const amounts: Amount[] = [];
  for (let left = count - inSeries; left >= 0; left -= inSeries) {
    amounts.push({
      words: left === 0 ? "at home" : `${left} of ${module.ratedW} W, was ${count}`,
      changes: [{ at: `panels.${id}.count`, to: left }],
      price: bringPrice(bring, left - count),
    });
  }
  const spare = `Fewer panels, ${inside(name)}`;
  return { id: `spare-${id}`, kind: "panels", name: spare, amounts, isMonotone: true, touches: [`panels.${id}.count`] };
}

function setOnce({ id, name, count, mount }: Scenario["panels"][number], latitudeDeg: number, grid: TimeGrid): Lever {
  const to = proppedUp(latitudeDeg);
  const amounts: Amount[] =
    mount.kind !== "aimed" || count === 0
      ? []
      : [
          {
            words: `set once, facing ${to.azimuthDeg === 180 ? "south" : "north"} at ${to.tiltDeg}°`,
            changes: [{ at: `panels.${id}.mount`, to }],
            price: turnsPrice(-turnsIn(mount.kind === "aimed" ? mount.aims.map(({ at }) => at) : [], grid)),
          },
        ];
  const spare = `Turning ${inside(name)}`;
  return {
    id: `spare-aim-${id}`,
    kind: "aim",
    name: spare,
    amounts,
    isMonotone: true,
    touches: [`panels.${id}.mount`],
  };
}

function withoutSource({ id, name, bring }: Scenario["sources"][number]): Lever {
  const amounts: Amount[] = [
    { words: "at home", changes: [{ at: `sources.${id}`, remove: true }], price: bringPrice(bring, -1) },
  ];
  return { id: `spare-${id}`, kind: "source", name, amounts, isMonotone: true, touches: [`sources.${id}`] };
}

import type { Change } from "../scenario/change.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { bringPrice } from "./bringPrice.ts";
import { type Amount, type Lever, NOTHING } from "./lever.ts";

/** A bank is looked at up to so many times as large. */
const MOST_TIMES = 3;
const MOST_BLOCK_AH = 3000;
const MOST_BLOCKS = 16;
const MOST_MORE_BLOCKS = 4;
/** Least reserve that is looked at, and the steps towards it. */
const LEAST_RESERVE = 0.05;
const RESERVE_STEP = 0.05;

/** A larger block, more blocks beside it, a smaller reserve. */
export function bankLevers({ bank }: Scenario): Lever[] {
  return [largerBlock(bank), moreBlocks(bank), smallerReserve(bank)].filter(({ amounts }) => amounts.length > 0);
}

/** Between two sizes of a block, Ah. */
export const blockStepAh = (blockAh: number) => (blockAh >= 100 ? 5 : 1);

function largerBlock(bank: Scenario["bank"]): Lever {
  const { blockAh } = bank;
  const step = blockStepAh(blockAh);
  const most = Math.min(MOST_BLOCK_AH, MOST_TIMES * blockAh);
  const amounts: Amount[] = [];
  for (let ah = step * (Math.floor(blockAh / step) + 1); ah <= most; ah += step) {
    amounts.push({
      words: blockWords(bank, ah),
      changes: [{ at: "bank.blockAh", to: ah }],
      price: bringPrice(bank.bring, (bank.inSeries * bank.inParallel * (ah - blockAh)) / blockAh, 0),
      why: storesMore(bank, bank.inParallel * (ah - blockAh)),
    });
  }
  return { id: "bank", kind: "bank", name: "A bigger bank", amounts, isMonotone: true, touches: ["bank.size"] };
}

const storesMore = ({ nominalV, healthShare }: Scenario["bank"], ah: number) =>
  `it stores ${((ah * nominalV * healthShare) / 1000).toFixed(1)} kWh more`;

/** "415 Ah, was 280", "2 × 120 Ah, was 100 each" */
export function blockWords({ blockAh, inSeries, inParallel }: Scenario["bank"], ah: number): string {
  const blocks = inSeries * inParallel;
  return blocks === 1 ? `${ah} Ah, was ${blockAh}` : `${blocks} × ${ah} Ah, was ${blockAh} each`;
}

/** Beside one another they share the current: what is stated of the whole bank goes with their number. */
function moreBlocks(bank: Scenario["bank"]): Lever {
  const { inParallel: now, inSeries } = bank;
  const amounts: Amount[] = [];
  for (let count = now + 1; count <= Math.min(MOST_BLOCKS, now + MOST_MORE_BLOCKS); count++) {
    const times = count / now;
    const scaled = (field: keyof typeof bank, by: number): Change[] => {
      const value = bank[field];
      return typeof value === "number" ? [{ at: `bank.${field}`, to: Number((value * by).toPrecision(6)) }] : [];
    };
    const more = (count - now) * inSeries;
    amounts.push({
      words: `${count * inSeries} of ${bank.blockAh} Ah, was ${now * inSeries}`,
      changes: [
        { at: "bank.inParallel", to: count },
        ...(["internalResistanceOhm", "chargingResistanceOhm"] as const).flatMap((field) => scaled(field, 1 / times)),
        ...(["maxChargeA", "maxDischargeA", "peakDischargeA", "shortCircuitA"] as const).flatMap((field) =>
          scaled(field, times),
        ),
      ],
      price: bringPrice(bank.bring, more),
      why: storesMore(bank, (count - now) * bank.blockAh),
    });
  }
  return { id: "blocks", kind: "bank", name: "More blocks like it", amounts, isMonotone: true, touches: ["bank.size"] };
}

function smallerReserve({ reserveShare }: Scenario["bank"]): Lever {
  const amounts: Amount[] = [];
  const percent = (share: number) => Number((100 * share).toFixed(1));
  for (let k = Math.ceil(reserveShare / RESERVE_STEP - 1e-9) - 1; k * RESERVE_STEP >= LEAST_RESERVE - 1e-9; k--) {
    const share = Number((k * RESERVE_STEP).toFixed(2));
    amounts.push({
      words: `${percent(share)} %, was ${percent(reserveShare)} %`,
      changes: [{ at: "bank.reserveShare", to: share }],
      price: NOTHING,
      why: "a choice, not a cure: what was kept back for what nobody foresaw is counted in",
    });
  }
  return {
    id: "reserve",
    kind: "reserve",
    name: "A smaller reserve",
    amounts,
    isMonotone: true,
    touches: ["bank.reserveShare"],
  };
}

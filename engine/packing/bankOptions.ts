import type { Bank } from "../scenario/bank.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import type { LeftOut } from "./leftOut.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { packedBank, readBank, type Strings, USUAL_BLOCK_V } from "./packedBank.ts";

/** Banks made up of batteries, at most. */
export const MOST_BANKS = 20_000;

/** One way to make up the bank: how many of each battery of the list. */
export interface BankOption {
  readonly written: Record<string, unknown>;
  readonly bank: Bank;
  readonly pieces: ReadonlyMap<number, number>;
}

/** Every bank that the batteries make up; as the plan has it where there is none on the list. Null where they are too many. */
export function bankOptions(
  document: ScenarioInput,
  { bank }: Scenario,
  things: readonly OwnedThing[],
  leftOut: LeftOut[],
): BankOption[] | null {
  const written = document.bank as unknown as Record<string, unknown>;
  const batteries = things.flatMap((thing, t) => (thing.kind === "battery" && thing.count > 0 ? [{ thing, t }] : []));
  const usable = batteries.filter(({ thing, t }) => {
    const why = whyNoBank(bank, written, thing);
    if (why !== null) leftOut.push({ thing: t, why });
    return why === null;
  });
  if (usable.length === 0) return [{ written, bank, pieces: new Map() }];
  const inSeries = ({ blockV }: OwnedThing) => bank.nominalV / (blockV ?? USUAL_BLOCK_V);
  let combinations: { readonly strings: readonly Strings[]; readonly pieces: ReadonlyMap<number, number> }[] = [
    { strings: [], pieces: new Map() },
  ];
  for (const { thing, t } of usable) {
    combinations = combinations.flatMap(({ strings, pieces }) =>
      Array.from({ length: Math.floor(thing.count / inSeries(thing)) + 1 }, (_, n) =>
        n === 0
          ? { strings, pieces }
          : {
              strings: [...strings, { thing, strings: n }],
              pieces: new Map([...pieces, [t, n * inSeries(thing)] as const]),
            },
      ).filter((each) => each.strings.every((one) => goesBeside(one.thing, each.strings[0]!.thing))),
    );
    if (combinations.length > MOST_BANKS) return null;
  }
  const options = combinations.flatMap(({ strings, pieces }): BankOption[] => {
    if (strings.length === 0) return [];
    const made = packedBank(bank, written, strings);
    const read = made === written ? bank : readBank(made);
    return read === null ? [] : [{ written: made, bank: read, pieces }];
  });
  return options.length > 0 ? options : [{ written, bank, pieces: new Map() }];
}

/** Batteries of different chemistry or volts do not go side by side. */
const goesBeside = (one: OwnedThing, other: OwnedThing) =>
  one.chemistry === other.chemistry && (one.blockV ?? USUAL_BLOCK_V) === (other.blockV ?? USUAL_BLOCK_V);

function whyNoBank(bank: Bank, written: Record<string, unknown>, thing: OwnedThing): string | null {
  const volts = thing.blockV ?? USUAL_BLOCK_V;
  const inSeries = bank.nominalV / volts;
  if (!Number.isInteger(inSeries)) return `${volts} V does not make up the plan's ${bank.nominalV} V`;
  if (thing.count < inSeries) return `it takes ${inSeries} of them in series for the plan's ${bank.nominalV} V`;
  return readBank(packedBank(bank, written, [{ thing, strings: 1 }])) === null
    ? `no ${thing.chemistry} battery of ${volts} V makes a bank that a plan can have`
    : null;
}

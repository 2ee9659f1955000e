import { writeSync } from "node:fs";
import type { Kind, Work } from "../answers/kind.ts";
import { makeShop, NEVER, type ShopKeeper } from "../answers/makeShop.ts";
import { Refused, valueOrRefused } from "../answers/refused.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { percent } from "./figures.ts";
import { type Opened, type OpenedDocument, surroundingsOf } from "./openScenario.ts";
import { poolOf } from "./pool.ts";
import { stoppable } from "./stoppable.ts";

/** Files that documents were read from. */
const paths = new WeakMap<ScenarioInput, string>();
const pathOf = (document: ScenarioInput) => paths.get(document)!;

/** What was prepared and run serves the next question of the same call. */
let kept: ShopKeeper | null = null;

function keeper(): ShopKeeper {
  kept ??= makeShop({
    pool: poolOf(),
    turn: () => new Promise((resolve) => setImmediate(resolve)),
    workersHaveClimate: false,
    surroundings: async (scenario, _axes, document) => valueOrRefused(await surroundingsOf(pathOf(document), scenario)),
    folderOf: pathOf,
  });
  return kept;
}

/** What is drawn for a question; nothing where left out. */
interface Drawn {
  readonly seed: string;
  readonly from?: number;
  /** Not included. */
  readonly to: number;
}

/** Works a kind's question out, as the page does. @returns the kind's picture, or what is wrong with a scenario */
export async function answerTo<Doc, Choices, Picture>(
  kind: Kind<Doc, Choices, Picture>,
  opened: readonly OpenedDocument[],
  choices: Choices,
  drawn?: Drawn,
): Promise<Opened<Picture>> {
  return answerBy(await kind.question!.work(), opened, choices, drawn);
}

/**
 * Works something out by a kind's own `work`, on all cores. Says on a terminal how far it is; Ctrl-C ends it at once.
 * @returns what the work makes, or what is wrong with a scenario
 */
export async function answerBy<Choices, Made>(
  work: Work<Choices, Made>,
  opened: readonly OpenedDocument[],
  choices: Choices,
  { seed, from = 0, to }: Drawn = { seed: "", to: 0 },
): Promise<Opened<Made>> {
  for (const { document, path } of opened) paths.set(document, path);
  const want = { key: "", kind: "", documents: opened.map(({ document }) => document), choices, seed, members: to };
  const tick = sayer(opened.length * (to - from));
  const shop = keeper().visit({ upTo: to, from, signal: NEVER, cut: {}, tick, early: () => {} });
  try {
    return { ok: true, value: await stoppable(work(want, shop)) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problems: error.problems };
    throw error;
  } finally {
    if (process.stderr.isTTY) writeSync(2, "\r\u001b[K");
  }
}

/** Says in a terminal's last line, and nowhere else, how far the sides of a question are together. */
function sayer(of: number): (side: number, done: number) => void {
  if (!process.stderr.isTTY || of === 0) return () => {};
  const dones: number[] = [];
  return (side, done) => {
    dones[side] = done;
    const sum = dones.reduce((before, each) => before + (each ?? 0), 0);
    process.stderr.write(`\r${percent(Math.min(1, sum / of))}  `);
  };
}

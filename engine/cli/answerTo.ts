import type { Kind, Work } from "../answers/kind.ts";
import { makeShop, NEVER, type ShopKeeper } from "../answers/makeShop.ts";
import { Refused, valueOrRefused } from "../answers/refused.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import type { CallContext } from "./callContext.ts";
import { type Opened, type OpenedDocument, surroundingsOf } from "./openScenario.ts";
import { poolOf } from "./pool.ts";

/** Files that documents were read from. */
const paths = new WeakMap<ScenarioInput, string>();
const pathOf = (document: ScenarioInput) => paths.get(document)!;

/** What was prepared and run serves the next question of the same call. */
const keepers = new WeakMap<CallContext, ShopKeeper>();

function keeperOf(context: CallContext): ShopKeeper {
  const keeper =
    keepers.get(context) ??
    makeShop({
      pool: poolOf(),
      turn: () => new Promise((resolve) => setImmediate(resolve)),
      workersHaveClimate: false,
      surroundings: async (scenario, _axes, document) =>
        valueOrRefused(await surroundingsOf(pathOf(document), scenario, context)),
      folderOf: pathOf,
    });
  keepers.set(context, keeper);
  return keeper;
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
 * Works something out by a kind's own `work`, on all cores.
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
  const { context } = opened[0]!;
  const tick = sayer(opened.length * (to - from), context.progress);
  const shop = keeperOf(context).visit({ upTo: to, from, signal: NEVER, cut: {}, tick, early: () => {} });
  try {
    return { ok: true, value: await work(want, shop) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problems: error.problems };
    throw error;
  }
}

/** Says how far the sides of a question are together. */
function sayer(of: number, progress: CallContext["progress"]): (side: number, done: number) => void {
  if (of === 0) return () => {};
  const dones: number[] = [];
  return (side, done) => {
    dones[side] = done;
    progress(Math.min(1, dones.reduce((before, each) => before + (each ?? 0), 0) / of));
  };
}

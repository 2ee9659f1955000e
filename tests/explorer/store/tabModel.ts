import fc from "fast-check";
import { expect } from "vitest";

/** What somebody does in one of several tabs; `tab` picks among those that are open. */
export type Act =
  | { readonly kind: "edit" | "undo" | "kill" | "open" | "remove" | "recreate"; readonly tab: number }
  | { readonly kind: "full"; readonly isFull: boolean };

/** Courses of acts, most of them edits; each begins with two tabs on one notebook. */
export function acts(most: number): fc.Arbitrary<Act[]> {
  const tab = fc.nat(9);
  const of = (kind: Exclude<Act["kind"], "full">) => tab.map((tab): Act => ({ kind, tab }));
  return fc.array(
    fc.oneof(
      { weight: 8, arbitrary: of("edit") },
      { weight: 3, arbitrary: of("undo") },
      { weight: 2, arbitrary: of("open") },
      { weight: 1, arbitrary: of("kill") },
      { weight: 1, arbitrary: of("remove") },
      { weight: 1, arbitrary: of("recreate") },
      { weight: 1, arbitrary: fc.boolean().map((isFull): Act => ({ kind: "full", isFull })) },
    ),
    { minLength: 1, maxLength: most },
  );
}

/** How many courses are tried, and which: few with the other tests; DUSKLINE_RUNS and DUSKLINE_SEED make a long run of others. */
export const keptRuns = (usual: number) => ({
  numRuns: Number(process.env.DUSKLINE_RUNS ?? usual),
  seed: Number(process.env.DUSKLINE_SEED ?? 4127),
});

/** A tab as the model sees it: the text that it shows, and what it says of it. */
export interface TextTab {
  text(): Promise<string>;
  state(): Promise<"kept" | "saving" | "unkept">;
  edit(text: string): Promise<void>;
  undo(): Promise<void>;
  kill(): Promise<void>;
}

export interface World {
  open(id: string): Promise<TextTab>;
  texts(): Promise<readonly { readonly id: string; readonly text: string }[]>;
  /** @returns the text that was taken off the shelf */
  remove(id: string): Promise<string | null>;
  create(id: string, text: string): Promise<void>;
  full(isFull: boolean): Promise<void>;
  /** Lets some of what is under way come to its end. */
  pause(k: number): Promise<void>;
  /** Lets all of it. */
  settle(): Promise<void>;
}

const MOST_TABS = 5;

/**
 * Plays a course and holds what came of it against what people were told. Each text is written once, so that where a text came from can
 * be told: by an edit or an undo in a tab that showed the one before.
 */
export class TabLog {
  private readonly after = new Map<string, Set<string>>();
  private readonly saidKept = new Set<string>();
  private readonly thrownAway = new Set<string>();
  /** What was written in each tab that was not killed since. */
  private readonly written = new Map<TextTab, string[]>();
  private count = 0;

  async run(all: readonly Act[], world: World): Promise<void> {
    const tabs = [await world.open("shared")];
    await world.settle();
    tabs.push(await world.open("shared"));
    for (const [k, act] of all.entries()) {
      await this.act(act, tabs, world);
      await world.pause(k);
      await this.hear(tabs);
    }
    await world.full(false);
    // A tab that had no room tries again when somebody does something in it.
    for (const tab of tabs) if ((await tab.state()) === "unkept") await this.step(tab, () => tab.edit(this.fresh()));
    await world.settle();
    await this.hear(tabs);
    await this.check(tabs, world);
  }

  private fresh = () => `text ${++this.count}`;

  private async step(tab: TextTab, deed: () => Promise<void>): Promise<void> {
    const before = await tab.text();
    await deed();
    const after = await tab.text();
    this.after.set(before, (this.after.get(before) ?? new Set()).add(after));
    this.written.set(tab, [...(this.written.get(tab) ?? []), after]);
  }

  private async act(act: Act, tabs: TextTab[], world: World): Promise<void> {
    if (act.kind === "full") return world.full(act.isFull);
    const at = act.tab % tabs.length;
    const tab = tabs[at]!;
    const lying = await world.texts();
    const picked = lying[act.tab % Math.max(1, lying.length)];
    if (act.kind === "edit") await this.step(tab, () => tab.edit(this.fresh()));
    else if (act.kind === "undo") await this.step(tab, () => tab.undo());
    else if (act.kind === "open" && tabs.length < MOST_TABS && picked !== undefined)
      tabs.push(await world.open(picked.id));
    else if (act.kind === "kill" && tabs.length > 1) {
      tabs.splice(at, 1);
      this.written.delete(tab);
      await tab.kill();
    } else if ((act.kind === "remove" || act.kind === "recreate") && picked !== undefined) {
      const gone = await world.remove(picked.id);
      if (gone !== null) this.thrownAway.add(gone);
      if (act.kind === "recreate") await world.create(picked.id, this.fresh());
    }
  }

  /** Writes down what tabs say is kept. */
  private async hear(tabs: readonly TextTab[]): Promise<void> {
    for (const tab of tabs) {
      // Said first and looked at then: what a tab shows while it says so is what it says it of.
      const [before, state, after] = [await tab.text(), await tab.state(), await tab.text()];
      if (state === "kept" && before === after) this.saidKept.add(before);
    }
  }

  private async check(tabs: readonly TextTab[], world: World): Promise<void> {
    const lying = new Set((await world.texts()).map(({ text }) => text));
    for (const tab of tabs) {
      const [state, text] = [await tab.state(), await tab.text()];
      expect(["a tab that came to rest is", state]).not.toEqual(["a tab that came to rest is", "saving"]);
      if (state === "kept") expect([...lying], `a tab says that this is kept: ${text}`).toContain(text);
    }
    const isThere = (text: string) => lying.has(text) || this.thrownAway.has(text);
    const shown = new Set(await Promise.all(tabs.map((tab) => tab.text())));
    for (const text of [...this.written.values()].flat()) {
      const isSomewhere = this.reaches(text, (each) => isThere(each) || shown.has(each));
      expect([text, isSomewhere], "written, and neither kept nor shown").toEqual([text, true]);
    }
    for (const text of this.saidKept) {
      expect([text, this.reaches(text, isThere)], "said to be kept, and neither there nor gone on from").toEqual([
        text,
        true,
      ]);
    }
  }

  private reaches(from: string, is: (text: string) => boolean): boolean {
    const seen = new Set([from]);
    for (const open = [from]; open.length > 0; ) {
      const text = open.pop()!;
      if (is(text)) return true;
      for (const next of this.after.get(text) ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        open.push(next);
      }
    }
    return false;
  }
}

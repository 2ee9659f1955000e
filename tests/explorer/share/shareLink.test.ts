import { describe, expect, test } from "vitest";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { readNotebook } from "../../../engine/notebook/readNotebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { LONGEST_FRAGMENT, shareFragment, textOfFragment } from "../../../explorer/share/shareLink.ts";
import { MOST_STEPS_UNASKED, workSteps } from "../../../explorer/share/workSteps.ts";

const example = exampleNotebook("example");

/** Packs any text as a link does. */
async function packed(text: string): Promise<string> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  const bytes = Buffer.from(await new Response(stream).arrayBuffer());
  return `#share=1.${bytes.toString("base64url")}`;
}
const opened = async (fragment: string) => {
  const unpacked = await textOfFragment(fragment);
  return unpacked.ok ? readNotebook(unpacked.text) : unpacked;
};
const sentence = async (fragment: string) => {
  const read = await opened(fragment);
  return read.ok ? "opened" : read.sentences.join(" ");
};

describe("a link that carries a notebook", () => {
  test("brings back what was put in, and is short enough to be sent", async () => {
    const made = await shareFragment(example);
    if (!made.ok) throw new Error(made.sentence);
    expect(made.fragment).toMatch(/^#share=1\.[A-Za-z0-9_-]+$/);
    expect(made.fragment.length).toBeLessThan(9000);
    const read = await opened(made.fragment);
    expect(read.ok && read.notebook).toEqual(JSON.parse(JSON.stringify(example)));
  });

  test("a notebook that does not fit says so and names the file", async () => {
    const text = Array.from({ length: 9000 }, (_, i) => ((i * 2654435761) % 4294967296).toString(36)).join(" ");
    const entries = [{ id: "long", kind: "note", title: "Long", doc: { text: text.slice(0, 50_000) } }];
    const made = await shareFragment({ ...example, entries } as Notebook);
    expect(made).toMatchObject({ ok: false, sentence: expect.stringMatching(/too large for a link.*file/) });
  });

  test("a link bomb is given up on long before it has swollen", async () => {
    const bomb = await packed(" ".repeat(20_000_000));
    expect(bomb.length).toBeLessThan(LONGEST_FRAGMENT);
    expect(await sentence(bomb)).toMatch(/swells to more than 6 MB/);
  });

  test.each([
    ["#share=", /does not say how it is packed/],
    ["#share=2.abcd", /newer duskline/],
    ["#share=1.", /letters that no such link has/],
    ["#share=1.ab+/", /letters that no such link has/],
    ["#share=1.abcde", /letters that no such link has/],
    ["#share=1.AAAA", /damaged or was cut/],
    [`#share=1.${"A".repeat(LONGEST_FRAGMENT)}`, /at most 30 kB/],
    ["#other", /carries no notebook/],
  ])("%s is refused", async (fragment, why) => {
    expect(await sentence(fragment.slice(0, 40_000))).toMatch(why);
  });

  test("what was cut on its way, and what is no notebook, is refused", async () => {
    const made = await shareFragment(example);
    if (!made.ok) throw new Error(made.sentence);
    expect(await sentence(made.fragment.slice(0, -400))).toMatch(/damaged or was cut/);
    expect(await sentence(await packed("[]"))).toMatch(/no notebook/);
    expect(await sentence(await packed("{"))).toMatch(/not JSON/);
    expect(await sentence(await packed(`{"__proto__":{"x":1},"format":"duskline-notebook"}`))).toMatch(/__proto__/);
    expect(await sentence(await packed(`${"[".repeat(60)}${"]".repeat(60)}`))).toMatch(/nests deeper/);
    expect(await sentence(await packed(JSON.stringify({ ...example, version: 9 })))).toMatch(/newer duskline/);
    expect(await sentence(await packed(JSON.stringify({ ...example, evil: 1 })))).toMatch(/evil/);
  });
});

describe("the work that a notebook asks for", () => {
  test("the example's stays under what is done unasked, and grows with skies, scenarios and steps", () => {
    const usual = workSteps(example);
    expect(usual).toBeLessThan(MOST_STEPS_UNASKED);
    expect(usual).toBeGreaterThan(1_000_000);
    expect(workSteps({ ...example, members: 10_000 })).toBeGreaterThan(MOST_STEPS_UNASKED);
    // One run and 1000 members of two scenarios: 78 hours in steps of 10 minutes are 468.
    const forecast = { id: "f", kind: "forecast", title: "F", doc: { scenarios: ["roof", "meadow"] } } as const;
    const small = { ...example, entries: [forecast] } as unknown as Notebook;
    expect(workSteps(small)).toBe(2 * 468 + 2 * 1000 * 468);
  });

  test("a document that does not say its times counts as endless", () => {
    const [roof] = example.scenarios;
    if (roof === undefined || !("document" in roof)) throw new Error("the first scenario has a document");
    const entries = [{ id: "run", kind: "run", title: "Run", doc: { scenario: roof.id } }];
    const asked = (time: object) => {
      const scenarios = [{ ...roof, document: { ...roof.document, time } }];
      return workSteps({ ...example, scenarios, entries } as Notebook);
    };
    expect(asked({ start: "soon", end: "later" })).toBe(Number.POSITIVE_INFINITY);
    expect(asked({})).toBe(Number.POSITIVE_INFINITY);
  });
});

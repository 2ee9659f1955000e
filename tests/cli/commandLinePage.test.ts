import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as z from "zod";
import { optionsOf } from "../../engine/cli/optionsOf.ts";
import { VERBS } from "../../engine/cli/verbs.ts";
import { Check, Explanation, Ledger, Problem, Trace } from "./printedJson.ts";

const PAGE = readFileSync("docs/command-line.md", "utf8");

test("the page names every field of the JSON that is printed", () => {
  const names = [Trace(1), Ledger, Explanation, Check, Problem].flatMap((shape) =>
    [...JSON.stringify(z.toJSONSchema(shape)).matchAll(/"required":\[([^\]]*)\]/g)].flatMap(([, list]) =>
      [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
    ),
  );
  expect(new Set(names).size).toBeGreaterThan(80);
  for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
});

test("the page names every verb and option that the help names, and every exit code", () => {
  expect(VERBS.length).toBeGreaterThan(3);
  for (const verb of VERBS) {
    expect(PAGE).toContain(`| \`${verb.name}\` |`);
    for (const option of Object.keys(optionsOf(verb))) expect(PAGE, verb.name).toContain(`\`--${option}`);
  }
  for (const code of ["0", "1", "2", "3", "4", "130"]) expect(PAGE).toContain(`\n| ${code} | `);
});

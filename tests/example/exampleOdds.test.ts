import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { exampleOdds } from "../../docs/exampleOdds.ts";
import { replaceBetween } from "../../docs/replaceBetween.ts";

test("the odds of the examples in docs/model.md are the engine's; else run npm run docs", async () => {
  const page = readFileSync("docs/model.md", "utf8");
  expect(page).toBe(replaceBetween(page, "example odds", await exampleOdds()));
});

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { exampleOdds } from "../../docs/exampleOdds.ts";
import { replaceBetween } from "../../docs/replaceBetween.ts";

test("the odds of the examples in docs/odds.md are the engine's; else run npm run docs", async () => {
  const page = readFileSync("docs/odds.md", "utf8");
  expect(page).toBe(replaceBetween(page, "example odds", await exampleOdds()));
});

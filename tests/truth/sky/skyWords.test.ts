import { expect, test } from "vitest";
import { clearIndexShareOfOkta, SKY_WORDS } from "../../../engine/sky/skyWords.ts";
import { record } from "../record.ts";

// Kasten & Czeplak 1980, from memory: under a fully covered sky a quarter of the clear day's light is left, G(8)/G(0) =
// 0.25; half covered takes 7 %, and six eighths 28 %. Worked by hand: (1/2)^3.4 = 0.09473, (3/4)^3.4 = 0.37601,
// (7/8)^3.4 = 0.63509.
const published = [
  { okta: 0, share: 1 },
  { okta: 4, share: 0.929 },
  { okta: 6, share: 0.718 },
  { okta: 7, share: 0.5237 },
  { okta: 8, share: 0.25 },
];

test("a sky in words dims the light as the Hamburg years did", () => {
  const worst = Math.max(...published.map(({ okta, share }) => Math.abs(clearIndexShareOfOkta(okta) - share)));
  record({
    what: "light under 0, 4, 6, 7, 8 eighths of cloud, share of clear",
    source: "Kasten & Czeplak, Solar Energy 24 (1980) 177–189 (formula; values by hand, overcast quarter from memory)",
    tolerance: 0.0005,
    why: "three decimals by hand; single hours stray far more",
    worst,
    unit: "",
    n: published.length,
  });
  expect(worst).toBeLessThan(0.0005);
  expect(SKY_WORDS.map(({ okta, clearIndexShare }) => [okta, clearIndexShare])).toEqual(
    published.map(({ okta }) => [okta, clearIndexShareOfOkta(okta)]),
  );
});

import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

export const LIGHTS = ["day", "dusk", "red"] as const;
export type Light = (typeof LIGHTS)[number];

/** Rules of axe that look at colours. What all others find is the same in every light, so they run once. */
const COLOUR_RULES = ["color-contrast", "link-in-text-block"];

/** Rows of long tables are made by one loop; contrast alone takes a millisecond for each cell of them, in each light. */
const FURTHER_ROWS = "tbody tr:nth-child(n + 13)";

/** Shows the page in a light; the button for it is tested elsewhere and stands in other places on a phone. */
export async function turnLight(page: Page, light: Light): Promise<void> {
  await page.evaluate(async (name) => {
    document.documentElement.dataset.light = name;
    // A colour on its way from one light to the next is neither's.
    const passing = document
      .getAnimations()
      .filter(({ effect }) => Number.isFinite(effect?.getComputedTiming().endTime));
    await Promise.allSettled(passing.map(({ finished }) => finished));
  }, light);
}

/**
 * What axe finds on a page, or in a part of it; it is left in the last of the lights.
 * @param lights all three, if left out; the first runs all rules
 */
export async function axeFaults(page: Page, part?: string, lights: readonly Light[] = LIGHTS): Promise<string[]> {
  const faults: string[] = [];
  for (const light of lights) {
    await turnLight(page, light);
    // "Legacy" looks at the page itself and opens no other page to put frames together: ours have none.
    const whole = new AxeBuilder({ page }).setLegacyMode().exclude(FURTHER_ROWS);
    const builder = part === undefined ? whole : whole.include(part);
    const { violations } = await (light === lights[0] ? builder : builder.withRules(COLOUR_RULES)).analyze();
    faults.push(
      ...violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${light}, ${id}: ${html.slice(0, 160)}`)),
    );
  }
  return faults;
}

/** Whatever can be read, or typed in, and is smaller than 16 px. */
export function smallTexts(page: Page, part = "body"): Promise<string[]> {
  return page.locator(part).evaluateAll((roots) =>
    roots
      .flatMap((root) => [...root.querySelectorAll("*:not(script, style, noscript, option)")])
      .filter(
        (element) =>
          element.matches("input, textarea, select") ||
          [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent!.trim() !== ""),
      )
      .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 16)
      .map((element) => element.outerHTML.slice(0, 80)),
  );
}

import type { WhyOf } from "../notebook/notebookPage.ts";

const LINKED = /^([a-z0-9-]{1,60})\.([a-z0-9-]{1,60})\.(\d{4}-\d\d-\d\dT\d\d:\d\dZ)$/;

type Instant = Extract<WhyOf, { readonly ms: number }>;

/** This page's address with a question in it: entry, scenario and instant. */
export function whyLink(
  { pathname, search }: Pick<Location, "pathname" | "search">,
  { entry, scenario, ms }: Instant,
): string {
  const asked = new URLSearchParams(search);
  asked.set("why", `${entry}.${scenario}.${new Date(ms).toISOString().slice(0, 16)}Z`);
  return `${pathname}?${asked}`;
}

/** The question in an address; null where there is none, or none that can be read. */
export function whyLinked(search: string): Instant | null {
  const [, entry, scenario, at] = LINKED.exec(new URLSearchParams(search).get("why") ?? "") ?? [];
  const ms = Date.parse(at ?? "");
  return entry === undefined || scenario === undefined || Number.isNaN(ms) ? null : { entry, scenario, ms };
}

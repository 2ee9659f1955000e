import type { SizeMap } from "./sizeMap.ts";

/** What a bigger bank or more modules would change in the trade, and the map leaves as stated, in sentences. */
export function sizeFixedWords({ x, y, base }: SizeMap): string[] {
  const { bank, panels } = base.scenario;
  const fields = [x.at, y?.at ?? ""];
  const said: string[] = [];
  if (fields.some((at) => /^bank\.(blockAh|inParallel)$/.test(at))) {
    const stated = (["maxChargeA", "maxDischargeA", "internalResistanceOhm", "chargingResistanceOhm"] as const).filter(
      (field) => bank[field] !== undefined,
    );
    if (stated.length > 0) said.push(`The bank's ${stated.join(", ")} stay as stated, whatever its size.`);
  }
  for (const group of panels) {
    if (!fields.some((at) => at.startsWith(`panels.${group.id}.`))) continue;
    const limit = group.controller.maxChargeA;
    said.push(
      `${group.name}: controller${limit === null ? "" : ` (${limit} A)`}, cable and place stay as stated; a longer row reaches into other shade.`,
    );
  }
  return said;
}

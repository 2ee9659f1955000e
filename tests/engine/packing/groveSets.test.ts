import { test } from "vitest";
import { readFileSync } from "node:fs";
import { poolOr } from "../../../engine/library/poolOr.ts";
import { packingPlan } from "../../../engine/packing/packingPlan.ts";
import { makePackingMemory, runPacking } from "../../../engine/packing/runPacking.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
test("scratch", async () => {
  const doc = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8"));
  const things: any[] = [
    { id: "b280", kind: "battery", name: "Block, 280 Ah", count: 1, chemistry: "lfp", blockAh: 280, healthShare: 0.96, massKg: 23, setupMinutes: 0, who: "club" },
    { id: "b100", kind: "battery", name: "Block, 100 Ah", count: 2, chemistry: "lfp", blockAh: 100, massKg: 11, setupMinutes: 3, who: "Ilse, Tibor" },
    { id: "fold", kind: "panel", name: "Folding panel, 120 W", count: 2, ratedW: 120, massKg: 7, setupMinutes: 12, who: "club" },
    { id: "lead", kind: "lead", name: "Lead on a reel, 25 m", count: 1, lengthM: 25, awg: "10", massKg: 3, setupMinutes: 4, who: "Mara" },
    { id: "gen", kind: "generator", name: "Generator and can", count: 1, chargerA: 20, fuelL: 5, massKg: 27, setupMinutes: 15, get: "borrow", cost: 30 },
  ];
  const ready = packingPlan(doc, [], things);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { plan } = ready;
  console.log(plan.sizes, plan.keys.length, plan.leftOut);
  const t = performance.now();
  const report = await runPacking(plan, { targetShare: 0.9, order: "mass", limits: { mass: 60, minutes: 45, money: 50 } }, { pool: poolOr(undefined), surroundings: { climate: await loadClimateTables() }, seed: "4127", members: 1000, memory: makePackingMemory(), early: () => console.log("early", performance.now() - t) });
  console.log(performance.now() - t);
  for (const s of report.sets!) console.log(s.take.join(" "), s.holds!.share, s.totals.mass.sum, s.totals.minutes.sum, s.totals.money.sum, s.outcome, s.isWithin);
  console.log(report.frontier.map((f) => [f.take.join(" "), f.holds!.share]), report.without, report.beaten?.take);
}, 200000);

/** What a document can be spoiled with: the place in the example's document, and what stands there instead; undefined takes it out. */
export type Spoiled = readonly [at: string, instead: unknown];

const bomb = { toString: 1, valueOf: 1 };

/** No document has this frame: the page would stumble over each. */
export const MISSHAPEN: readonly Spoiled[] = [
  ["place", undefined],
  ["place", null],
  ["place", "a grove"],
  ["place.name", bomb],
  ["place.zone", []],
  ["place.latitudeDeg", null],
  ["time", []],
  ["time.start", undefined],
  ["time.start", 20261009],
  ["time.end", null],
  ["weather", undefined],
  ["weather.kind", "toString"],
  ["weather.kind", undefined],
  ["weather.kind", "words"],
  ["weather.kind", "file"],
  ["gear", null],
  ["gear", { length: 3 }],
  ["gear.0", null],
  ["gear.0.use", 5],
  ["gear.0.working", undefined],
  ["gear.0.name", bomb],
  ["gear.4.use.windows", "12:00"],
  ["gear.4.use.windows.0", null],
  ["stations", 7],
  ["stations.0.radio", undefined],
  ["stations.0.radio.receive", []],
  ["stations.0.modes", null],
  ["stations.0.companions.0.working", "much"],
  ["panels", "two"],
  ["panels.0.module", undefined],
  ["panels.0.mount", null],
  ["panels.0.mount.kind", "__proto__"],
  ["panels.0.at", undefined],
  ["panels.0.controller", []],
  ["obstacles", {}],
  ["obstacles.0.kind", 3],
  ["obstacles.0.eastM", undefined],
  ["obstacles.5.points", null],
  ["bank", undefined],
  ["bank", [1]],
  ["bank.blockAh", { Ah: 280 }],
  ["bank.chemistry", bomb],
  ["sources", "mains"],
  ["selector", []],
  ["models", "all"],
  ["shedding", [null]],
  ["knownDays", [{}]],
  ["mainFeed.cable", 2],
];

/** The frame stands, and a value makes no sense: what somebody may have typed, or a program written. */
export const SENSELESS: readonly Spoiled[] = [
  ["place.name", ""],
  ["place.latitudeDeg", "north"],
  ["place.latitudeDeg", 1e308],
  ["place.zone", "Nowhere/At all"],
  ["time.start", "soon"],
  ["time.end", "2026-10-08T10:00"],
  ["time.end", "9999-12-31T23:59"],
  ["time.stepMinutes", 7],
  ["gear.0.id", "phantom"],
  ["gear.0.id", "../../x"],
  ["gear.0.count", -1],
  ["gear.0.use.when", "never ever"],
  ["gear.0.use.station", "nobody"],
  ["gear.4.use.windows.0.from", "25:99"],
  ["stations.0.modes.0.mode", "semaphore"],
  ["stations.0.modes", []],
  ["stations.0.activityByHour", [1]],
  ["stations.0.feed.cable.awg", "a rope"],
  ["panels.0.count", 1e15],
  ["panels.0.module.ratedW", "200 W or so"],
  ["panels.0.module.cells", 0],
  ["panels.0.cooling", "a fan"],
  ["obstacles.0.crownRadiusM", -5],
  ["obstacles.0.heightM", "tall"],
  ["obstacles.5.points", []],
  ["bank.chemistry", "potato"],
  ["bank.blockAh", "abc"],
  ["bank.reserveShare", 20],
  ["bank.openCircuitCurve", []],
  ["shedding", ["nobody"]],
  ["selector.inputs", ["nobody"]],
  ["surprise", { deep: [1, 2] }],
];

/** A document with one thing spoiled. */
export function spoiled(document: unknown, [at, instead]: Spoiled): Record<string, unknown> {
  const copy = structuredClone(document) as Record<string, unknown>;
  const parts = at.split(".");
  const last = parts.pop()!;
  let inside: Record<string, unknown> = copy;
  for (const part of parts) {
    inside[part] ??= {};
    inside = inside[part] as Record<string, unknown>;
  }
  if (instead === undefined) delete inside[last];
  else inside[last] = instead;
  return copy;
}

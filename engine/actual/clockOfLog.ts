import { wrapLongitudeDeg } from "../angle.ts";
import type { MeterFinding, MeterLog } from "../meter/meterLog.ts";
import { span } from "../meter/span.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { sunTrack } from "../sky/sunTrack.ts";
import { isZone, zoneOffsetMs } from "../zoneTime.ts";

/** Sun higher than this lights any panel that a little; lower, hills and trees have a say. */
const LIT_ABOVE_DEG = 4;
const DARK_BELOW_DEG = -1;
/** A panel counts as lit from this share of its brightest row on. */
const LIT_FROM_SHARE = 0.01;
const STEP_MS = 300_000;
export const FARTHEST_SHIFT_MS = 14 * 3_600_000;
/** Shifts under this are a hill, a tree or a clock that nobody minds. */
export const LEAST_SHIFT_MS = 2_400_000;
/** A log may be years long; its first month is judged. */
const JUDGED_MS = 30 * 86_400_000;
/** Rows that must be judged, and share of them that must agree with the sun at the best shift. */
const FEWEST_ROWS = 60;
const AGREEING_SHARE = 0.9;

/**
 * Holds the panels' watts against the sun over the plan's place: rows with light while the sun is down, and dark rows while it is
 * well up, tell how far the log's clock is off. Which way the panels face does not matter.
 * @returns a finding with the mapping that would fix it; null where the clock is right, or the log does not tell
 */
export function clockOfLog(scenario: Scenario, log: MeterLog): MeterFinding | null {
  const { pvW, timeMs } = log;
  if (pvW === null) return null;
  const brightestW = pvW.filter(Number.isFinite).reduce((most, watts) => Math.max(most, watts), 0);
  if (brightestW <= 0) return null;
  const untilMs = Math.min(timeMs.at(-1)!, timeMs[0]! + JUDGED_MS);
  const { fromMs, elevationDeg } = sunAbout(scenario, timeMs[0]!, untilMs);
  const spanMs = Math.max(log.usualMs, 120_000);
  const rows: { place: number; lit: boolean }[] = [];
  let lastMs = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < timeMs.length; k++) {
    if (!Number.isFinite(pvW[k]!) || timeMs[k]! - lastMs < spanMs || timeMs[k]! > untilMs) continue;
    lastMs = timeMs[k]!;
    rows.push({ place: (timeMs[k]! - fromMs) / STEP_MS, lit: pvW[k]! > LIT_FROM_SHARE * brightestW });
  }
  if (rows.length < FEWEST_ROWS || !rows.some(({ lit }) => !lit)) return null;
  const agreeing = (shift: number) => {
    let [agree, judged] = [0, 0];
    for (const { place, lit } of rows) {
      const deg = elevationDeg[Math.round(place) + shift]!;
      if (deg > DARK_BELOW_DEG && deg < LIT_ABOVE_DEG) continue;
      judged++;
      if (lit === deg >= LIT_ABOVE_DEG) agree++;
    }
    return judged === 0 ? 0 : agree / judged;
  };
  const most = FARTHEST_SHIFT_MS / STEP_MS;
  const shifts = Array.from({ length: 2 * most + 1 }, (_, k) => k - most);
  const shares = shifts.map(agreeing);
  const best = Math.max(...shares);
  // Shifts that agree as well, from the first to the last: the clock lies in their middle.
  const alike = shifts.filter((_, k) => shares[k]! >= best - 0.002);
  const shiftMs = ((alike[0]! + alike.at(-1)!) / 2) * STEP_MS;
  const missed = 1 - shares[most]!;
  if (best < AGREEING_SHARE || Math.abs(shiftMs) < LEAST_SHIFT_MS || missed < 2 * (1 - best) + 0.02) return null;
  return finding(scenario, log, shiftMs);
}

function sunAbout(scenario: Scenario, firstMs: number, lastMs: number) {
  const fromMs = firstMs - FARTHEST_SHIFT_MS - STEP_MS;
  const toMs = lastMs + FARTHEST_SHIFT_MS + 2 * STEP_MS;
  const instants = Float64Array.from({ length: Math.ceil((toMs - fromMs) / STEP_MS) }, (_, k) => fromMs + k * STEP_MS);
  const { latitudeDeg, longitudeDeg } = scenario.place;
  return { fromMs, elevationDeg: sunTrack(latitudeDeg, wrapLongitudeDeg(longitudeDeg), instants).elevationDeg };
}

/** Clocks that a log may keep by mistake, tried in this order; a shift within 25 minutes of one is taken for it. */
function finding(scenario: Scenario, log: MeterLog, shiftMs: number): MeterFinding {
  const atMs = log.timeMs[Math.floor(log.timeMs.length / 2)]!;
  const local = zoneOf(scenario.place);
  const readOffsetMs = isZone(log.zone) ? zoneOffsetMs(log.zone, atMs) : 0;
  const januaryMs = Date.UTC(new Date(atMs).getUTCFullYear(), 0, 15);
  const standardMs = Math.min(zoneOffsetMs(local, januaryMs), zoneOffsetMs(local, januaryMs + 181 * 86_400_000));
  const clocks = [
    { words: "UTC", zone: "UTC", offsetMs: 0 },
    { words: `the local clock of ${local}`, zone: local, offsetMs: zoneOffsetMs(local, atMs) },
    { words: "standard time without summer time", zone: offsetName(standardMs), offsetMs: standardMs },
  ];
  // A clock that stands at another offset than the one it was read with puts every instant off by the difference.
  const likely = clocks.find(({ offsetMs }) => Math.abs(readOffsetMs - offsetMs - shiftMs) <= 1_500_000);
  const fits = likely !== undefined && Math.abs(readOffsetMs - likely.offsetMs) > 0;
  const offMs = fits ? readOffsetMs - likely.offsetMs : Math.round(shiftMs / 900_000) * 900_000;
  const behind = offMs > 0 ? "behind" : "ahead of";
  const size = span(Math.abs(offMs));
  const start = `By the sun on the panels, the log's clock is about ${size} ${behind} the time it was read as`;
  return {
    code: "clock-off",
    message: fits
      ? `${start}: it probably keeps ${likely.words}; set zone to ${likely.zone} if that is so.`
      : `${start}; set shiftMinutes to ${Math.round(shiftMs / 900_000) * 15} if that is so.`,
    rows: log.timeMs.length,
    line: null,
    proposal: fits ? { zone: likely.zone } : { shiftMinutes: Math.round(shiftMs / 900_000) * 15 },
  };
}

function offsetName(offsetMs: number): string {
  const minutes = Math.round(Math.abs(offsetMs) / 60_000);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${offsetMs < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

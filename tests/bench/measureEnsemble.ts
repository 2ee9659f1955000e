/**
 * How long an ensemble takes: whole, beside the bare step loop and bare multiply-adds in the same run, and where the time goes;
 * then what it leaves in memory. One thread, except for one line: the same members through the pool of workers that `odds` uses.
 */
import { availableParallelism, loadavg } from "node:os";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { runOdds } from "../../engine/cli/pool.ts";
import { makeMemberRoom } from "../../engine/ensemble/makeMemberRoom.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import {
  drawMemberFigures,
  drawMemberLoads,
  drawMemberSky,
  lanesFor,
  stepMembers,
} from "../../engine/ensemble/stepMember.ts";
import { countingOf, runMembers } from "../../engine/odds/odds.ts";
import { makeOddsPart, type OddsPart } from "../../engine/odds/oddsPart.ts";
import { stepCount } from "../../engine/odds/stepCount.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { FIGURES } from "../../engine/run/memberFigures.ts";
import {
  stepLaneFigures,
  stepLaneLight,
  stepLanes,
  stepLaneWanted,
  stepPanels,
  stepPower,
} from "../../engine/run/stepRun.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { bareLoop } from "./bareLoop.ts";
import { benchScenario } from "./benchScenario.ts";

const MEMBERS = 1000;
const ROUNDS = 7;
const POOL_ROUNDS = 3;

const read = readScenario({ ...benchScenario, weather: { kind: "typical" } });
if (!read.ok) throw new Error(read.problems[0]!.message);
const { scenario } = read;
const surroundings = { climate: await loadClimateTables() };
const startMs = performance.now();
const ready = prepareEnsemble(scenario, surroundings, "bench");
const preparedMs = performance.now() - startMs;
if (!ready.ok) throw new Error(ready.problems[0]!.message);
const { ensemble } = ready;
const { prepared } = ensemble;
const { grid, groups } = prepared;
const memberSteps = MEMBERS * grid.steps;

const LANES = lanesFor(grid.steps);
const room = makeMemberRoom(ensemble, LANES);
const { inputs, run } = room;
stepMembers(ensemble, 0, LANES, room); // else the bare step loop would step empty banks through the dark
const figures = Array.from({ length: LANES }, (_, lane) => run.figures.slice(lane * FIGURES, (lane + 1) * FIGURES));
const counting = countingOf(ensemble);
const part = makeOddsPart(prepared, ensemble.seed, 0, MEMBERS);

const bare = bareLoop([
  run.rows.length,
  run.wantedW.length,
  run.light.rows.length,
  inputs.rows.length,
  ...groups.map((group) => group.perStep.length),
]);
const bareMs = bestMs(() => {
  for (let m = 0; m < MEMBERS; m += LANES) bare();
});
const wholeMs = bestMs(() => void runMembers(ensemble, 0, MEMBERS));
const stepMs = bestMs(() => {
  for (let m = 0; m < MEMBERS; m += LANES) {
    for (let lane = 0; lane < LANES; lane++) stepLaneFigures(prepared, figures[lane]!, run, lane);
    stepLanes(prepared, run, LANES);
  }
});

console.log(
  `\n${MEMBERS} members × ${grid.steps} steps of ${grid.stepMs / 60_000} min, ${groups.length} panel groups, ${scenario.obstacles.length} trees, ${scenario.stations.length} stations, one thread, processor time`,
);
line("bare multiply-adds", bareMs);
line("bare step loop", stepMs);
line("whole ensemble", wholeMs);
console.log(
  `whole ensemble: ${(memberSteps / wholeMs / 1000).toFixed(1)} million member-steps a second, ${(wholeMs / stepMs).toFixed(2)} times the bare step loop; preparing it once: ${preparedMs.toFixed(0)} ms, cold`,
);

await onAllCores();

const shares = timeByPart();
const sum = Object.values(shares).reduce((total, ms) => total + ms, 0);
for (const [name, ms] of Object.entries(shares)) {
  console.log(
    `  ${name}: ${((100 * ms) / sum).toFixed(0)} %, ${((ms * 1e6) / memberSteps).toFixed(1)} ns a member-step`,
  );
}

setFlagsFromString("--expose-gc");
const collectGarbage = runInNewContext("gc") as () => void;
const held = [MEMBERS, 4 * MEMBERS].map((members) => heldBytes(members));
const perMember = (held[1]! - held[0]!) / (3 * MEMBERS);
const outcomes = Object.keys(part.outcomes).length;
console.log(
  `held after ${MEMBERS} members ${(held[0]! / 1e6).toFixed(1)} MB, after ${4 * MEMBERS} ${(held[1]! / 1e6).toFixed(1)} MB: ${perMember.toFixed(0)} bytes a member (its ${outcomes} outcomes take ${8 * outcomes})`,
);

/** Least processor time of several rounds: what else the machine does only ever adds, and waiting for it does not count. */
function bestMs(work: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}

/**
 * The same ensemble, twenty times as long, shared out among one worker per core; time on the clock, since that is what somebody waits for, and with
 * what each worker prepares.
 */
async function onAllCores(): Promise<void> {
  const members = 20 * MEMBERS;
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < POOL_ROUNDS; round++) {
    const from = performance.now();
    const run = await runOdds(scenario, surroundings, "bench", 0, members);
    best = Math.min(best, performance.now() - from);
    if (!run.ok) throw new Error(run.problems[0]!.message);
  }
  const perStep = (best * 1e6) / (members * grid.steps);
  console.log(
    `whole ensemble on ${availableParallelism()} cores (load ${loadavg()[0]!.toFixed(1)}): ${members} members in ${best.toFixed(0)} ms on the clock, ${perStep.toFixed(1)} ns a member-step`,
  );
}

function line(name: string, ms: number): void {
  console.log(
    `${name}: ${ms.toFixed(0)} ms, ${((ms * 1e6) / memberSteps).toFixed(1)} ns a member-step, ${(ms / bareMs).toFixed(1)} times the bare loop`,
  );
}

/** The same members with a look at the clock between the parts. */
function timeByPart(): Record<string, number> {
  const best = {
    sky: 0,
    operators: 0,
    "light by where it comes from": 0,
    panels: 0,
    "bank, sources, radios": 0,
    counting: 0,
  };
  let leastMs = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const spent = [0, 0, 0, 0, 0, 0];
    let since = performance.now();
    const from = since;
    const lap = (part: number) => {
      const now = performance.now();
      spent[part]! += now - since;
      since = now;
    };
    for (let first = 0; first < MEMBERS; first += LANES) {
      for (let lane = 0; lane < LANES; lane++) {
        drawMemberSky(ensemble, first + lane, room);
        lap(0);
        drawMemberFigures(ensemble, first + lane, inputs);
        drawMemberLoads(ensemble, first + lane, room);
        stepLaneFigures(prepared, inputs.figures, run, lane);
        stepLaneWanted(inputs.wantedW, run, lane);
        lap(1);
        stepLaneLight(prepared, room.light, room.airTempC, run, lane);
        lap(2);
      }
      stepPanels(prepared, run, LANES);
      lap(3);
      stepPower(prepared, run, LANES, 0);
      lap(4);
      for (let lane = 0; lane < LANES; lane++) stepCount(prepared, run, lane, first + lane, counting, part);
      lap(5);
    }
    const tookMs = since - from;
    if (tookMs >= leastMs) continue;
    leastMs = tookMs;
    Object.keys(best).forEach((name, k) => {
      best[name as keyof typeof best] = spent[k]!;
    });
  }
  return best;
}

/** Memory that an ensemble's part keeps, with what V8 needs to have run it. */
function heldBytes(members: number): number {
  const kept: OddsPart[] = [runMembers(ensemble, 0, members)];
  collectGarbage();
  collectGarbage(); // array buffers are given back at the second
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  kept.pop();
  return heapUsed + arrayBuffers;
}

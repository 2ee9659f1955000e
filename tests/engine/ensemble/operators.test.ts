import { describe, expect, test } from "vitest";
import { seedWords } from "../../../engine/chance/stream.ts";
import { drawOperators, prepareOperators } from "../../../engine/ensemble/operators.ts";
import { FIGURE_IDLE_SHARE } from "../../../engine/run/memberFigures.ts";
import { prepare } from "../../../engine/run/prepare.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { plainInput, readPlain } from "../../truth/run/plainScenario.ts";

type StationInput = NonNullable<ScenarioInput["stations"]>[number];

/** A station whose sending takes 100 W on top of receiving, or nothing, so that another's share can be read off the sum. */
function station(id: string, sendingShare: number, parts: Partial<StationInput> = {}, extraW = 100): StationInput {
  return {
    id,
    name: id,
    radio: { ratedW: 100, receive: { drawW: 10 }, fullPower: { drawW: 10 + extraW }, bias: { drawW: 10 } },
    staffed: [{ from: "00:00", to: "24:00" }],
    modes: [{ mode: "fm", share: 1 }],
    transmitW: 100,
    sendingShare,
    ...parts,
  };
}
const silent = (id: string, sendingShare: number, parts: Partial<StationInput> = {}) =>
  station(id, sendingShare, parts, 0);

const STILL = { betweenEventsShare: 0, betweenDaysShare: 0, byHourShare: 0 };

function operatorsOf(stations: StationInput[], parts: Partial<ScenarioInput> = {}, seed = "operators") {
  const input = plainInput({
    time: { start: "2026-06-12T06:00", end: "2026-06-15T06:00", stepMinutes: 60 },
    stations,
    ...parts,
  });
  const ready = prepare(readPlain(input));
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { prepared } = ready;
  const words = seedWords(seed);
  const operators = prepareOperators(prepared, words);
  const figures = new Float64Array(prepared.inputs.figures);
  const inputs = { ...prepared.inputs, wantedW: prepared.inputs.wantedW.slice(), figures };
  const { quietW } = prepared.loads;
  const wattsPerShare = prepared.loads.stations.reduce((most, { sendingExtraW }) => Math.max(most, sendingExtraW), 0);
  /** Share of each hour in which the stations with a draw of their own send, together. */
  const drawn = (member: number, idleShare = 1) => {
    figures[FIGURE_IDLE_SHARE] = idleShare;
    drawOperators(prepared, operators, words, member, inputs);
    return Array.from(quietW, (quiet, i) => (inputs.wantedW[i]! - idleShare * quiet) / wattsPerShare);
  };
  return { prepared, drawn, planned: prepared.loads.stations.map(({ sendingShare }) => Array.from(sendingShare)) };
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const centred = (values: readonly number[]) => {
  const middle = mean(values);
  return values.map((value) => value - middle);
};
const sd = (values: readonly number[]) => Math.sqrt(mean(centred(values).map((value) => value * value)));

const MEMBERS = 2000;
function everyMember(drawn: (member: number) => number[]): number[][] {
  return Array.from({ length: MEMBERS }, (_, member) => drawn(member));
}

describe("the mean over members is the plan, hour by hour", () => {
  /** Worst hour's mean against its plan, in standard errors and as a share. */
  function worst(drawn: (member: number) => number[], planned: readonly number[]) {
    const members = everyMember(drawn);
    const hours = planned.map((plan, hour) => {
      const shares = members.map((member) => member[hour]!);
      return { plan, off: mean(shares) - plan, error: Math.max(1e-9, sd(shares) / Math.sqrt(MEMBERS)) };
    });
    return {
      errors: Math.max(...hours.map(({ off, error }) => Math.abs(off) / error)),
      off: Math.max(...hours.map(({ off }) => Math.abs(off))),
    };
  }
  // The largest of 72 hours' errors, which lean on one another, stays below 4 standard errors; the tables add up to 0.0005.
  const close = ({ off, errors }: { off: number; errors: number }) => {
    expect(errors < 4 || off < 0.001, `${errors} standard errors, ${off}`).toBe(true);
  };

  test.each([0.02, 0.15, 0.4, 0.7, 0.9, 0.97])("for one station that sends %s of the time", (share) => {
    const { drawn, planned } = operatorsOf([station("a", share)]);
    expect(planned[0]![5]).toBeCloseTo(share, 9);
    close(worst(drawn, planned[0]!));
  });

  test("where the activity changes by the hour, and only while somebody is there", () => {
    const activityByHour = Array.from({ length: 24 }, (_, hour) => (hour % 5) / 4);
    const staffed = [{ from: "08:00", to: "20:30" }];
    const { drawn, planned } = operatorsOf([station("a", 0.5, { activityByHour, staffed })]);
    close(worst(drawn, planned[0]!));
    drawn(7).forEach((share, hour) => {
      if (planned[0]![hour] === 0) expect(Math.abs(share)).toBeLessThan(1e-12);
    });
  });

  test("with widely differing operators", () => {
    const operators = { betweenEventsShare: 0.6, betweenDaysShare: 0.5, byHourShare: 1 };
    const { drawn, planned } = operatorsOf([station("a", 0.3)], { operators });
    close(worst(drawn, planned[0]!));
  });

  test.each([
    [0.2, 0.3],
    [0.5, 0.4],
    [0.5, 0.5],
    [0.7, 0.6],
  ])("for a station that sends %s behind an interlock with one of %s", (own, other) => {
    const locked = { interlock: "one-signal" };
    const { drawn, planned } = operatorsOf([station("a", own, locked), silent("b", other, locked)]);
    close(worst(drawn, planned[0]!));
  });
});

test("never below receiving, never above staffing, never more than one signal behind an interlock", () => {
  const locked = { interlock: "one-signal" };
  const staffed = [{ from: "08:00", to: "20:30" }];
  const operators = { betweenEventsShare: 0.8, betweenDaysShare: 0.8, byHourShare: 1 };
  const { drawn, prepared } = operatorsOf(
    [station("a", 0.6, { ...locked, staffed }), station("b", 0.7, { ...locked, staffed }), silent("c", 0.9)],
    { operators },
  );
  const staffedShare = prepared.loads.stations[0]!.staffedShare;
  let most = 0;
  for (const shares of everyMember(drawn).slice(0, 500)) {
    shares.forEach((share, hour) => {
      expect(share).toBeGreaterThan(-1e-9);
      // Both stations draw 100 W, so the sum is the part of the clock in which either sends.
      expect(share).toBeLessThan(Math.min(1, 2 * staffedShare[hour]!) + 1e-9);
      most = Math.max(most, share);
    });
  }
  expect(most).toBeGreaterThan(0.99);
});

describe("spreads are the stated ones", () => {
  // Shares small enough that nothing is capped. The spread of a log-normal draw from 2000 is good to some percent.
  const PLAN = 0.02;
  const factors = (operators: object) =>
    everyMember(operatorsOf([station("a", PLAN)], { operators: { ...STILL, ...operators } }).drawn).map((member) =>
      member.map((share) => share / PLAN),
    );

  test("between events: all hours of a member alike", () => {
    const members = factors({ betweenEventsShare: 0.3 });
    expect(Math.abs(sd(members.map((member) => member[0]!)) - 0.3)).toBeLessThan(0.02);
    for (const member of members.slice(0, 50)) expect(sd(member)).toBeLessThan(1e-9);
  });

  test("between days: all hours of a local day alike, days apart", () => {
    const members = factors({ betweenDaysShare: 0.3 });
    // From 06:00: 18 hours of the first day, then 24 of the next.
    for (const member of members.slice(0, 50)) {
      expect(sd(member.slice(0, 18))).toBeLessThan(1e-9);
      expect(sd(member.slice(18, 42))).toBeLessThan(1e-9);
      expect(member[17]).not.toBe(member[18]);
    }
    expect(Math.abs(sd(members.map((member) => member[20]!)) - 0.3)).toBeLessThan(0.02);
  });

  test("by the hour: each for itself", () => {
    const members = factors({ byHourShare: 0.5 });
    const one = members.map((member) => member[10]!);
    const next = members.map((member) => member[11]!);
    expect(Math.abs(sd(one) - 0.5)).toBeLessThan(0.04);
    const [a, b] = [centred(one), centred(next)];
    const together = mean(a.map((value, m) => value * b[m]!)) / (sd(one) * sd(next));
    expect(Math.abs(together)).toBeLessThan(4 / Math.sqrt(MEMBERS));
  });

  test("all at once: 1 + variance multiplies", () => {
    const members = factors({ betweenEventsShare: 0.2, betweenDaysShare: 0.15, byHourShare: 0.5 });
    const all = Math.sqrt(1.04 * 1.0225 * 1.25 - 1);
    expect(Math.abs(sd(members.map((member) => member[30]!)) / all - 1)).toBeLessThan(0.06);
  });

  test("none at all: the plan itself", () => {
    const members = factors({});
    for (const factor of members[17]!) expect(Math.abs(factor - 1)).toBeLessThan(1e-4); // shares lie on a grid of 2^-20
  });
});

test("taking a station away moves nobody else's draws, nor does another order", () => {
  const alone = operatorsOf([station("a", 0.2)]);
  const both = operatorsOf([station("a", 0.2), silent("b", 0.3)]);
  const turned = operatorsOf([silent("b", 0.3), station("a", 0.2)]);
  for (const member of [0, 1, 77]) {
    const shares = alone.drawn(member);
    both.drawn(member).forEach((share, hour) => {
      expect(share).toBeCloseTo(shares[hour]!, 12);
    });
    turned.drawn(member).forEach((share, hour) => {
      expect(share).toBeCloseTo(shares[hour]!, 12);
    });
  }
});

test("who starts an hour later meets the same people in the hours both have", () => {
  const early = operatorsOf([station("a", 0.2)]);
  const late = operatorsOf([station("a", 0.2)], {
    time: { start: "2026-06-12T07:00", end: "2026-06-15T06:00", stepMinutes: 60 },
  });
  for (const member of [0, 5]) expect(late.drawn(member)).toEqual(early.drawn(member).slice(1));
});

test("the idle draw scales with the member's own figure, and sending does not", () => {
  const { drawn, prepared } = operatorsOf([station("a", 0.2)]);
  const plain = drawn(3);
  drawn(3, 1.3).forEach((share, hour) => {
    expect(share).toBeCloseTo(plain[hour]!, 9);
  });
  expect(prepared.loads.quietW[0]).toBeGreaterThan(0);
});

test("the same seed gives the same bits, whatever text it is and whatever was drawn before", () => {
  for (const seed of ["", "4127", "ein Wochenende, ∿ 73", "\n\t ", "a".repeat(5000)]) {
    const one = operatorsOf([station("a", 0.2), station("b", 0.1)], {}, seed);
    const two = operatorsOf([station("a", 0.2), station("b", 0.1)], {}, seed);
    const wanted = one.drawn(9);
    for (const other of [4_294_967_295, 0, 12]) two.drawn(other);
    expect(two.drawn(9)).toEqual(wanted);
    expect(one.drawn(10)).not.toEqual(wanted);
  }
});

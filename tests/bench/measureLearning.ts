/** `npx tsx tests/bench/measureLearning.ts`: runs all random events and keeps what became of them; a minute or two. */
import { writeFileSync } from "node:fs";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { EVENT_MEMBERS, type EventResult, randomEvent } from "../truth/learn/randomEvent.ts";

const EVENTS = 200;

async function write(): Promise<void> {
  const climate = await loadClimateTables();
  const events: EventResult[] = [];
  for (let number = 0; number < EVENTS; number++) {
    const event = await randomEvent(number, climate);
    events.push(
      JSON.parse(
        JSON.stringify(event, (_, value) => (typeof value === "number" ? Math.round(value * 1e6) / 1e6 : value)),
      ),
    );
  }
  const header = {
    what: `What became of ${EVENTS} random events: charge at the end of a member that no filter ran, and the middle eight in ten of ${EVENT_MEMBERS} members before and after a day of five readings with their meters' errors`,
    source:
      "Simulated by this project with tests/bench/measureLearning.ts; the truth is drawn, so that coverage is known by definition",
    licence: "Made for this project; under its licence.",
    convention: "shares of a full bank; idle: draw between transmissions over plan, truth first",
  };
  const lines = events.map((event) => `    ${JSON.stringify(event)}`).join(",\n");
  writeFileSync(
    "tests/truth/data/learned-events.json",
    `{\n  "header": ${JSON.stringify(header)},\n  "events": [\n${lines}\n  ]\n}\n`,
  );
  const share = (test: (event: EventResult) => boolean) => events.filter(test).length / EVENTS;
  const within = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
  const width = ([low, high]: readonly [number, number]) => high - low;
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  console.log({
    before: share(({ truth, before }) => within(truth, before)),
    after: share(({ truth, after }) => within(truth, after)),
    idle: share(({ idle: [truth, low, high] }) => within(truth, [low, high])),
    widthOfMeans: mean(events.map(({ after }) => width(after))) / mean(events.map(({ before }) => width(before))),
    meanOfWidths: mean(events.map(({ before, after }) => width(after) / width(before))),
    narrowest: Math.min(...events.map(({ before }) => width(before))),
    fewestEffective: Math.min(...events.map(({ fewestEffective }) => fewestEffective)),
    unexplained: events.filter(({ unexplained }) => unexplained > 0).length,
  });
}

void write();

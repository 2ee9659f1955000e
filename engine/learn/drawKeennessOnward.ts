import { nextNormal, openStream } from "../chance/stream.ts";
import { keennessAt } from "../ensemble/keenness.ts";
import { writeWanted } from "../ensemble/operators.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import { TRAIT_KEENNESS, TRAITS } from "./particles.ts";
import type { Onward } from "./prepareOnward.ts";

/**
 * Draws what a particle's operators do and writes what the site wants: how keen the event and the passing day are is kept,
 * hours and days ahead come from its own streams. Particles at the first step have the operators of the member of their number.
 */
export function drawKeennessOnward(onward: Onward, p: number, room: MemberRoom): void {
  const { ensemble, particles, stationWords } = onward;
  const { operators, prepared } = ensemble;
  const { state, dayNormal, hourFactor, hours, days } = operators;
  openStream(state, particles.words, p, "activity");
  nextNormal(state); // the event's, which is a trait
  for (let day = 0; day < days; day++) dayNormal[day] = nextNormal(state);
  if (particles.step > 0) {
    const passing = prepared.grid.localDay[particles.step - 1]!;
    for (let day = 0; day <= passing; day++) dayNormal[day] = particles.dayKeenness[p * days + day]!;
  }
  const eventPart = operators.eventWeight * particles.traits[p * TRAITS + TRAIT_KEENNESS]!;
  for (let s = 0; s < stationWords.length; s++) {
    openStream(state, stationWords[s]!, p, "activity");
    for (let hour = 0; hour < hours; hour++) {
      const common = eventPart + operators.dayWeight * dayNormal[operators.dayOfHour[hour]!]!;
      const normal = common + operators.hourWeight * nextNormal(state);
      hourFactor[s * hours + hour] = keennessAt(operators.keenness, normal);
    }
  }
  writeWanted(prepared, operators, room.inputs);
}

import type { MemberRoom } from "../ensemble/stepMember.ts";
import { FIGURES } from "../run/memberFigures.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import { stepLaneFigures, stepLaneLight, stepLaneWanted, stepPanels, stepPower } from "../run/stepRun.ts";
import { CONNECTED, DROPOUT_H, LAST_A, STORED_AH } from "../run/stepState.ts";
import { drawKeennessOnward } from "./drawKeennessOnward.ts";
import { drawSkyOnward } from "./drawSkyOnward.ts";
import { TRAIT_CHARGE, TRAITS } from "./particles.ts";
import type { Onward } from "./prepareOnward.ts";

/**
 * Draws the future of one particle and carries it from where it stands to the end. Rows of the past are left alone; at the first
 * step it is the ensemble's member of its number, to the last bit.
 * @param room written over
 */
export function stepParticle(onward: Onward, p: number, room: MemberRoom): void {
  const { ensemble, particles } = onward;
  const { prepared } = ensemble;
  const { sources, bank } = prepared;
  const { figures } = room.inputs;
  const { state, runs, fuelLeftL } = room.run;
  const row = p * TRAITS;
  drawSkyOnward(onward, p, room);
  requireFedSky(ensemble.seed, p, room.light, room.airTempC);
  for (let f = 0; f < FIGURES; f++) figures[f] = particles.traits[row + f]!;
  drawKeennessOnward(onward, p, room);
  requireFedLoads(ensemble.seed, p, room.inputs);
  stepLaneFigures(prepared, figures, room.run, 0);
  stepLaneWanted(room.inputs.wantedW, room.run, 0);
  stepLaneLight(prepared, room.light, room.airTempC, room.run, 0);
  state[STORED_AH] = bank.fullAh * particles.traits[row + TRAIT_CHARGE]!;
  state[LAST_A] = particles.lastA[p]!;
  state[CONNECTED] = particles.connected[p]!;
  state[DROPOUT_H] = 0;
  for (let s = 0; s < sources.length; s++) {
    runs[s] = particles.running[p * sources.length + s]!;
    fuelLeftL[s] = particles.fuelL[p * sources.length + s]!;
  }
  stepPanels(prepared, room.run, 1);
  stepPower(prepared, room.run, 1, particles.step);
}

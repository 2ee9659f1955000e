import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import { type ActualPicture, actualPicture } from "./actualPicture.ts";
import type { KeptLog } from "./doc.ts";

export const workActual: Work<KeptLog, ActualPicture> = async ({ documents, choices, seed }, shop) => {
  const { scenario, surroundings } = await shop.open(documents[0]!);
  const found = actualPicture(scenario, choices, surroundings, seed);
  if (!found.ok) throw new Refused(found.problems);
  return found.picture;
};

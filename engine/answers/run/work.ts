import { tracePrepared } from "../../run/trace.ts";
import type { Work } from "../kind.ts";
import { valueOrRefused } from "../refused.ts";
import { type RunPicture, runPicture } from "./runPicture.ts";

export const workRun: Work<object, RunPicture> = async ({ documents }, shop) =>
  runPicture(tracePrepared(valueOrRefused(shop.store.prepared(await shop.open(documents[0]!)))));

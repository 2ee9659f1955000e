/** Where the page begins that is one file: this one script is the page, and each of its workers. */
import "./noEval.ts";
import { startInside } from "./single/startInside.ts";

const WORKERS: Readonly<Record<string, () => Promise<unknown>>> = {
  deskWorker: () => import("./results/deskWorker.ts"),
  poolWorker: () => import("./pool/poolWorker.ts"),
  sunlightWorker: () => import("./entries/shade/sunlightWorker.ts"),
  logWorker: () => import("./entries/actual/logWorker.ts"),
};

// Whatever starts a worker is made to ask for it here (oneFile).
Object.assign(self, { startInside });

if (typeof document === "object") void import("./main.tsx");
else void WORKERS[self.name]!();

import "./noEval.ts";
import { render } from "solid-js/web";
import type { ScenarioInput } from "../engine/index.ts";
import example from "../scenarios/walnut-grove.json";
import { Explorer } from "./page/Explorer.tsx";
import { makePagePool } from "./pool/makePagePool.ts";
import "@fontsource-variable/radio-canada/standard.css";
import "./palette.css";
import "./sheet.css";
import "./phone.css";
import "./charts/strata.css";

const workshop = new Worker(new URL("./picture/traceWorker.ts", import.meta.url), { type: "module" });

// The worker reads the document with the schema before anything is made of it.
render(
  () => <Explorer document={example as unknown as ScenarioInput} workshop={workshop} pool={makePagePool()} />,
  document.querySelector("#root")!,
);

import { valueOrRefused } from "../answers/refused.ts";
import { CallError } from "./callError.ts";
import { inputsOf, type Opened, surroundingsOf, textOf } from "./openScenario.ts";
import { poolOf } from "./pool.ts";
import { stoppable } from "./stoppable.ts";
import type { Verb } from "./verb.ts";
import { FORCE_OPTION, writeText } from "./writeFile.ts";

export const reportVerb: Verb = {
  name: "report",
  takes: "NOTEBOOK",
  usage: "report NOTEBOOK -o FILE.html [--force]",
  purpose: "Works a notebook out and writes it as one HTML file that needs no script and no network.",
  options: { output: { type: "string", short: "o", help: "the file to write" }, ...FORCE_OPTION },
  run: async ({ scenario: path, variant, values, print }) => {
    if (variant !== undefined) throw new CallError("report takes a whole notebook, and no --variant of it.");
    if (typeof values.output !== "string")
      throw new CallError(`report needs the name of the file to write: duskline ${reportVerb.usage}.`);
    const text = await textOf(path);
    const inputs = [path];
    const { reportOfText } = await import("../report/reportOfText.ts");
    const made = await stoppable(
      reportOfText(text, {
        pool: poolOf(),
        turn: () => new Promise((resolve) => setImmediate(resolve)),
        surroundings: async (scenario) => {
          inputs.push(...inputsOf(path, scenario));
          return valueOrRefused(await surroundingsOf(path, scenario));
        },
      }),
    );
    if (!made.ok) return { ok: false, problems: problems(made.sentences) };
    await writeText(values.output, made.html, { force: values.force === true, inputs });
    const { entries, members, seed } = made.notebook;
    print(
      `${values.output} is written: ${entries.length} ${entries.length === 1 ? "entry" : "entries"}, ${members} members, seed ${seed}.`,
    );
    return made.wrong.length === 0 ? { ok: true } : { ok: false, problems: problems(made.wrong) };
  },
};

function problems(sentences: readonly string[]): Extract<Opened<never>, { ok: false }>["problems"] {
  return sentences.map((message) => ({ code: "notebook", path: [], message }));
}

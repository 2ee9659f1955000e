import { valueOrRefused } from "../answers/refused.ts";
import { CallError } from "./callError.ts";
import { type Opened, surroundingsOf } from "./openScenario.ts";
import { poolOf } from "./pool.ts";
import type { Verb } from "./verb.ts";

export const reportVerb: Verb = {
  name: "report",
  takes: "NOTEBOOK",
  writesItself: true,
  usage: "report NOTEBOOK -o FILE.html",
  purpose: "Works a notebook out and writes it as one HTML file that needs no script and no network.",
  options: { output: { type: "string", takes: "FILE", short: "o", help: "the file to write" } },
  run: async ({ scenario: path, values, context, print, write, requireRoom }) => {
    if (typeof values.output !== "string")
      throw new CallError(`report needs the name of the file to write: duskline ${reportVerb.usage}.`);
    await requireRoom(values.output);
    const text = await context.textOf(path);
    const { reportOfText } = await import("../report/reportOfText.ts");
    const made = await reportOfText(text, {
      pool: poolOf(),
      turn: () => new Promise((resolve) => setImmediate(resolve)),
      progress: context.progress,
      surroundings: async (scenario) => valueOrRefused(await surroundingsOf(path, scenario, context)),
    });
    if (!made.ok) return { ok: false, problems: problems(made.sentences) };
    await write(values.output, made.html);
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

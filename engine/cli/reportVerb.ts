import { CallError } from "./callError.ts";
import { type Opened, surroundingsOf, textOf } from "./openScenario.ts";
import { runOnAllCores } from "./runOnAllCores.ts";
import type { Verb } from "./verb.ts";
import { writeText } from "./writeFile.ts";

export const reportVerb: Verb = {
  name: "report",
  takes: "NOTEBOOK",
  usage: "report NOTEBOOK -o FILE.html",
  purpose: "Works a notebook out and writes it as one HTML file that needs no script and no network.",
  options: { output: { type: "string", short: "o", help: "the file to write" } },
  run: async ({ scenario: path, variant, values, print }) => {
    if (variant !== undefined) throw new CallError("report takes a whole notebook, and no --variant of it.");
    if (typeof values.output !== "string")
      throw new CallError(`report needs the name of the file to write: duskline ${reportVerb.usage}`);
    const text = await textOf(path);
    // The words and pictures are the explorer's; this is the one door to them, opened only when a report is asked for.
    const { reportOfText } = await import("../../explorer/report/reportOfText.ts");
    const made = await reportOfText(text, {
      surroundings: (scenario) => surroundingsOf(path, scenario),
      run: (ensemble, members) => runOnAllCores(ensemble, String(members)),
    });
    if (!made.ok) return { ok: false, problems: problems(made.sentences) };
    await writeText(values.output, made.html);
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

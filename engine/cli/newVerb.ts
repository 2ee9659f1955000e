import { loadClimateTables } from "../place/loadClimateTables.ts";
import { prepare } from "../run/prepare.ts";
import { readScenario } from "../scenario/readScenario.ts";
import { withZone } from "../scenario/withZone.ts";
import { defaultAnswers, type StartAnswers, startScenario } from "../start/startScenario.ts";
import { STANDARD_INPUT } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { NEW_QUESTIONS, type NewQuestion } from "./newQuestions.ts";
import type { Verb, VerbCall, VerbOption } from "./verb.ts";

const options: Readonly<Record<string, VerbOption>> = Object.fromEntries(
  NEW_QUESTIONS.map(({ option, help, takes }) => [
    option,
    {
      type: "string" as const,
      help: takes === undefined ? help : `${help}: ${takes.join(", ")}`,
      ...(takes === undefined ? {} : { takes }),
    },
  ]),
);

export const newVerb: Verb = {
  name: "new",
  usage: "new [FILE] [--at LAT,LON --from TIME --to TIME …]",
  purpose:
    "Writes a scenario to start from. At a terminal it asks what decides most; what an option says is not asked. - prints it.",
  takes: "FILE",
  writesItself: true,
  options,
  run: async ({ scenario, values, ask, print, write, requireRoom }) => {
    if (scenario !== "" && typeof values.output === "string")
      throw new CallError(`new writes one file; leave "${scenario}" out, or -o.`);
    const named = scenario !== "" ? scenario : typeof values.output === "string" ? values.output : null;
    if (named !== null && named !== STANDARD_INPUT) await requireRoom(named);
    const { answers, assumed } = await answersOf(values, ask);
    const document = withZone(startScenario(answers));
    const checked = await check(document);
    if (!checked.ok) return checked;
    const text = `${JSON.stringify(document, null, 2)}\n`;
    if (named === STANDARD_INPUT) {
      print(text.trimEnd());
      return { ok: true };
    }
    const path = named ?? `${slug(answers.placeName)}.json`;
    await write(path, text);
    print(
      [
        `${path} is written, and it reads: ${answers.placeName}, ${answers.start.replace("T", " ")} to ${answers.end.replace("T", " ")} (${document.place.zone}).`,
        ...(assumed.length > 0
          ? [`Taken as usual: ${assumed.join(", ")}. Say otherwise with these options, or in the file.`]
          : []),
        `Next: duskline trace ${path}`,
      ].join("\n"),
    );
    return { ok: true };
  },
};

async function check(document: unknown): Promise<ReturnType<typeof prepare> | ReturnType<typeof readScenario>> {
  const read = readScenario(document);
  return read.ok ? prepare(read.scenario, { climate: await loadClimateTables() }) : read;
}

/** Answers from the options, from whoever can be asked, and, where that decides less, what is usual. */
async function answersOf(values: VerbCall["values"], ask: VerbCall["ask"]) {
  const lacking = NEW_QUESTIONS.filter(({ option, isNeeded }) => isNeeded === true && values[option] === undefined);
  if (ask === null && lacking.length > 0)
    throw new CallError(
      `new needs ${lacking.map(({ option }) => `--${option}`).join(", ")} where nobody can be asked, such as --at 46.93,15.62 --from 2026-10-09T14:00 --to 2026-10-11T14:00.`,
    );
  const today = new Date();
  const two = (value: number) => String(value).padStart(2, "0");
  let answers = defaultAnswers(`${today.getFullYear()}-${two(today.getMonth() + 1)}-${two(today.getDate())}`);
  const assumed: string[] = [];
  for (const question of NEW_QUESTIONS) {
    const said = values[question.option];
    if (typeof said === "string") answers = { ...answers, ...saidAnswer(question, said, answers) };
    else if (question.isIdle?.(answers) === true) continue;
    else if (ask !== null && question.asked !== null)
      answers = { ...answers, ...(await askUntil(question, ask, answers)) };
    else assumed.push(`--${question.option} ${question.now(answers)}`);
  }
  return { answers, assumed };
}

function saidAnswer(question: NewQuestion, said: string, answers: StartAnswers): Partial<StartAnswers> {
  const read = question.read(said, answers);
  if (!read.ok) throw new CallError(`--${question.option} is "${said}" but must be ${sentence(read.must)}`);
  return read.answers;
}

/** Asks until the answer is one; the return key alone takes what is usual. */
async function askUntil(
  question: NewQuestion,
  ask: NonNullable<VerbCall["ask"]>,
  answers: StartAnswers,
): Promise<Partial<StartAnswers>> {
  const usual = question.now(answers);
  const among = question.takes === undefined ? "" : ` (${question.takes.join(", ")})`;
  let wrong = "";
  for (;;) {
    const said = await ask(`${wrong}${question.asked}${among} [${usual}] `);
    const read = question.read(said.trim() === "" ? usual : said, answers);
    if (read.ok) return read.answers;
    wrong = `That must be ${sentence(read.must)}\n`;
  }
}

const sentence = (words: string) => (words.endsWith("?") ? words : `${words}.`);

/** A name as a file's: small letters, figures and dashes. */
function slug(name: string): string {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return (
    plain
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 60) || "plan"
  );
}

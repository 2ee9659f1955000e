import { STANDARD_INPUT } from "./callContext.ts";
import { CallError } from "./callError.ts";
import type { Verb, VerbCall } from "./verb.ts";

/** What a file's ending says of how an answer is to be written. */
const FORMS = { json: "JSON", csv: "CSV", svg: "a picture" } as const;
type Form = keyof typeof FORMS;

/** How an answer is to be written by the ending of `-o FILE`; null where that says nothing. */
export function formOf(output: string | boolean | undefined): Form | null {
  const ending = /\.([a-z]+)$/i.exec(typeof output === "string" ? output : "")?.[1]?.toLowerCase();
  return ending !== undefined && ending in FORMS ? (ending as Form) : null;
}

/** Lets a verb print into the file that `-o` names, where it names one: as JSON or CSV where its ending says so. */
export async function printInto(verb: Verb, call: VerbCall): ReturnType<Verb["run"]> {
  const { output } = call.values;
  if (typeof output !== "string" || output === STANDARD_INPUT) return verb.run(call);
  const form = formOf(output);
  const isSaid = call.values.json === true || call.values.csv === true;
  if (form !== null && !isSaid && verb.options[form] === undefined) {
    const others = (Object.keys(FORMS) as Form[]).filter((each) => verb.options[each] !== undefined);
    throw new CallError(
      `-o is "${output}", but ${verb.name} does not write ${FORMS[form]}; let the name end with ${[".txt", ...others.map((each) => `.${each}`)].join(" or ")}.`,
    );
  }
  await call.requireRoom(output);
  const isFlag = form !== null && !isSaid && verb.options[form]?.type === "boolean";
  const texts: string[] = [];
  const outcome = await verb.run({
    ...call,
    values: isFlag ? { ...call.values, [form]: true } : call.values,
    print: (text) => texts.push(text),
  });
  if (texts.length > 0) {
    await call.write(output, texts.map((text) => (text.endsWith("\n") ? text : `${text}\n`)).join(""));
    call.print(`${output} is written.`);
  }
  return outcome;
}

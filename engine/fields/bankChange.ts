import { THIN } from "../words/numbers.ts";
import { choiceLabel } from "./fieldWords.ts";
import { formSchema } from "./formSchema.ts";
import { plainFigure } from "./shownValue.ts";

type Bank = Record<string, unknown>;

const ampereHours = (bank: Bank) => Number(bank.blockAh) * Number(bank.inParallel ?? 1);

/** Fields that `bankChange` tells of. */
export const BANK_SIZE: readonly string[] = ["blockAh", "inParallel", "chemistry"];

/** What a bank is now and was: "bank 280 → 560 Ah", "bank LFP, was AGM"; null where size and chemistry stay. */
export function bankChange(before: unknown, after: unknown): string | null {
  const [from, to] = [before as Bank | undefined, after as Bank | undefined];
  if (from === undefined || to === undefined) return null;
  const chemistry = formSchema().properties!.bank!.properties!.chemistry;
  const [was, now] = [from, to].map((bank) => choiceLabel(bank.chemistry, chemistry));
  const kind = from.chemistry === to.chemistry ? null : `${now}, was`;
  const [wasAh, nowAh] = [ampereHours(from), ampereHours(to)];
  const size = (ah: number) => `${plainFigure(ah)}${THIN}Ah`;
  if (wasAh === nowAh) return kind === null ? null : `bank ${kind} ${was}`;
  if (kind === null) return `bank ${plainFigure(wasAh)} → ${size(nowAh)}`;
  return `bank ${size(nowAh)} ${kind} ${size(wasAh)} ${was}`;
}

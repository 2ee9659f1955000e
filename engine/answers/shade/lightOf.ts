import { readScenario } from "../../scenario/readScenario.ts";
import type { AnswersPage } from "../answersPage.ts";
import { type Sunlight, sunlight } from "./sunlight.ts";

/** Who sees the sun in a scenario; null while it does not read. */
export function lightOf(page: Pick<AnswersPage, "document">, id: string): Sunlight | null {
  const document = page.document(id);
  const read = document === null ? null : readScenario(document);
  return read?.ok ? sunlight(read.scenario) : null;
}

import type { Change, LimitsReport, Problem, ScenarioInput } from "../../engine/index.ts";
import type { TimeScale } from "../charts/timeScale.ts";
import type { ActualPicture } from "../entries/actual/actualPicture.ts";
import type { LearnedPicture } from "../entries/readings/learnedPicture.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import type { DriversPicture, OddsPicture, SizePicture, VersusPicture } from "../results/answers.ts";
import type { EntryDoc, Notebook, NotebookScenario } from "./notebook.ts";

/** What is wrong with a scenario: a sentence, and the path of the field in its document where there is one. */
export type ScenarioProblem = Problem;

/** A result as far as it is known: newest first of what was asked; `stale` while something newer is in work. */
export interface Found<Result> {
  readonly result: Result | null;
  readonly stale: boolean;
  /** Members done and asked for; null where nothing runs. */
  readonly progress: { readonly done: number; readonly of: number } | null;
  readonly problems: readonly ScenarioProblem[];
}

/** Drawing room of the sheet, in px. */
export interface SheetRoom {
  readonly isPhone: boolean;
  readonly axisPx: number;
  readonly labelsPx: number;
}

/** What entries see of the page that they stand on. Every function is reactive. */
export interface NotebookPage {
  notebook(): Notebook;
  scenario(id: string): NotebookScenario | null;
  /** The scenario's whole document, base and changes worked together; null when its base is gone or a change finds no place. */
  document(id: string): ScenarioInput | null;
  /** The document of what it is based on; null for one with a document of its own. */
  baseDocument(id: string): ScenarioInput | null;
  /** Works changes into a scenario: into its document, or onto the list of one that is based on another. */
  change(id: string, changes: readonly Change[], label: string): void;
  /**
   * The same for a value that is typed or dragged: until `settle`, each call for one `field` starts from the scenario as it was before
   * the first, and all are one step back.
   */
  turn(id: string, field: string, changes: (document: ScenarioInput) => readonly Change[]): void;
  settle(): void;
  /** Adds a scenario based on another, and an entry to edit it in. @returns the new scenario's name, or null where there is no room */
  branch(id: string, after: string, changes?: readonly Change[], name?: string): string | null;
  rename(id: string, name: string): void;
  /** Takes a scenario out, with the entries that edit it; or says why it stays. */
  /** Takes a weather file in for one scenario; what there is to say about it stands at the head of the sheet. */
  takeWeather(id: string, file: File): void;
  removeScenario(id: string): string | null;
  /** Changes of a scenario that find no place in what it is based on, by their number in its list. */
  lostChanges(id: string): readonly { readonly number: number; readonly message: string }[];
  forgetChange(id: string, number: number): void;
  /** One run under the sky as written. */
  run(scenario: string): Found<RunPicture>;
  /** The run as it was before the last edit, where that is known and its charge ran otherwise. */
  runBefore(scenario: string): RunPicture | null;
  /** Bands and odds over the notebook's members. */
  odds(scenario: string): Found<OddsPicture>;
  /** Two scenarios under the same skies and operators. */
  versus(first: string, second: string): Found<VersusPicture>;
  /** A map of the odds over two numbers of a scenario. */
  sizes(doc: EntryDoc<"sizing">): Found<SizePicture>;
  /** What a scenario's outcome hangs on. */
  drivers(scenario: string): Found<DriversPicture>;
  /** The plan's wiring held against its limits. */
  limits(doc: EntryDoc<"limits">): Found<LimitsReport>;
  /** What an entry's readings make of its scenario's forecast. */
  learned(doc: EntryDoc<"readings">): Found<LearnedPicture>;
  /** A scenario held against the log that an entry keeps. */
  actual(doc: EntryDoc<"actual">): Found<ActualPicture>;
  scale(picture: { readonly ruler: RunPicture["ruler"] }): TimeScale;
  room(): SheetRoom;
  /** The instant that is being read on every chart of the sheet. */
  readingMs(): number | null;
  read(ms: number | null): void;
  /** Where the view of the sheet's time begins, when there is more of it than fits. */
  scrollPx(): number;
  scrolls(): boolean;
  scroll(px: number, viewPx: number): void;
}

import type { AnswersPage } from "../../engine/answers/answersPage.ts";
import type { Asked } from "../../engine/answers/asked.ts";
import type { NoteFigure } from "../../engine/answers/note/noteFigures.ts";
import type { DrawingRoom } from "../../engine/drawing/drawingRoom.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import type { Notebook } from "../../engine/notebook/notebook.ts";
import type { Ruler } from "../../engine/ruler/ruler.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import type { LOOKS } from "../../engine/words/look.ts";

/** Room for drawings on the sheet. */
export interface SheetRoom extends DrawingRoom {
  readonly isPhone: boolean;
}

/** An instant of a scenario's run, or a figure that a note quotes, and the entry where somebody asked how it comes about. */
export type WhyOf =
  | { readonly entry: string; readonly scenario: string; readonly ms: number }
  | { readonly entry: string; readonly figure: NoteFigure };

/** What entries see of the page that they stand on. Every function is reactive. */
export interface NotebookPage extends AnswersPage {
  notebook(): Notebook;
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
  /** Gives a scenario a look; who had it takes the one that this scenario had, or none. */
  setLook(id: string, look: (typeof LOOKS)[number]): void;
  rename(id: string, name: string): void;
  /** Takes a weather file in for one scenario; what there is to say about it is said at the head of the sheet. */
  takeWeather(id: string, file: File): void;
  /** Takes a scenario out, with the entries that edit it. @returns why it stays, or null where it is gone */
  removeScenario(id: string): string | null;
  /** Changes of a scenario that find no place in what it is based on, by their number in its list. */
  lostChanges(id: string): readonly { readonly number: number; readonly message: string }[];
  forgetChange(id: string, number: number): void;
  /** What was known of something asked before the last edit; null where that is what is asked now, or is not known. */
  before<Picture>(asked: Asked<Picture>): Picture | null;
  scale(picture: { readonly ruler: Ruler }): TimeScale;
  room(): SheetRoom;
  /** What is being asked about; null while nothing is. */
  why(): WhyOf | null;
  askWhy(of: WhyOf | null): void;
  /** The instant that is being read on every chart of the sheet. */
  readingMs(): number | null;
  read(ms: number | null): void;
  /** Where the view of the sheet's time begins, when there is more of it than fits. */
  scrollPx(): number;
  scrolls(): boolean;
  scroll(px: number, viewPx: number): void;
}

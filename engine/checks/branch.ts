import type { Cable } from "../scenario/cable.ts";

/** A part of a branch that its fuse has to protect: no fuse may be larger than the smallest of them. */
export interface Protected {
  /** "wire", "holder", "switch", "distribution". */
  readonly name: string;
  /** The largest fuse that it may stand behind, A. */
  readonly mostA: number;
}

/** What guards a branch. */
export interface BranchFuse {
  /** As stated; null where it is not. */
  readonly ratingA: number | null;
  /** What it must carry, A, and whether it has to be larger than that and not as large. */
  readonly needA: number;
  readonly isPeakBound: boolean;
  /** The field that states it. */
  readonly field: string;
}

export type BranchKind =
  | "string"
  | "main"
  | "converterIn"
  | "converterOut"
  | "panels"
  | "controller"
  | "source"
  | "station"
  | "gear";

/** One conductor of the plan, out and back, with what flows in it and what guards it. */
export interface Branch {
  /** "main", "lead/hf", "controller/roof": the same from run to run. */
  readonly id: string;
  readonly kind: BranchKind;
  /** Where it is, for lines and sentences: "lead of HF run position". */
  readonly about: string;
  /** The same as short as a sheet wants it: "HF run position". */
  readonly short: string;
  /** What stands at the end that feeds it, on the sheet: a title, and a figure or two. Left out for what the distribution feeds. */
  readonly box?: { readonly title: string; readonly detail: string };
  /** Greatest that can come about, second by second, A. */
  readonly peakA: number;
  /** Greatest that lasts ten minutes and more, A; of panels and chargers their rated current. */
  readonly lastingA: number;
  /** Names of the stations that send in the worst moment. */
  readonly sending: readonly string[];
  /** What its wire must carry, A. */
  readonly wireA: number;
  /** Current and volts by which its drop is measured. */
  readonly dropA: number;
  readonly atV: number;
  /** The wire as stated, or as it is assumed; null where nothing that is sold would do. */
  readonly cable: Cable | null;
  readonly isCableAssumed: boolean;
  readonly cableField: string;
  /** Null where it needs none: panels give no more than their wire carries. */
  readonly fuse: BranchFuse | null;
  /** What else its fuse protects, as far as stated: holder, switch, distribution. */
  readonly behind: readonly Protected[];
}

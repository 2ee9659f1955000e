import type { Problem } from "../scenario/problem.ts";
import type { Task } from "./taskKinds.ts";

/** How a task ended. A fault is ours: it names the member, so that it can be met again. */
export type TaskEnd =
  | { readonly kind: "part"; readonly part: unknown }
  | { readonly kind: "problems"; readonly problems: readonly Problem[] }
  | { readonly kind: "cancelled" }
  | { readonly kind: "fault"; readonly sentence: string };

/** What a worker is told, by numbers that the pool gives. */
export type TaskOrder =
  | { readonly kind: "run"; readonly number: number; readonly task: Task }
  | { readonly kind: "cancel"; readonly number: number };

/** What a worker says. */
export type TaskReply =
  | { readonly kind: "progress"; readonly number: number; readonly done: number }
  | { readonly kind: "end"; readonly number: number; readonly end: TaskEnd };

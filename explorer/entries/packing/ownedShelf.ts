import { OwnedList, type OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { ownStore } from "../../store/ownStore.ts";

const KEY = "duskline.owned";

/** What the club owns, kept in the browser for every notebook; nothing that is read there is trusted. */
export const ownedShelf = {
  /** Null where there is none, or it does not read. */
  read(): readonly OwnedThing[] | null {
    try {
      const kept: unknown = JSON.parse(ownStore()?.getItem(KEY) ?? "null");
      const { format, version, things } = (kept ?? {}) as { format?: unknown; version?: unknown; things?: unknown };
      if (format !== "duskline-owned" || version !== 1) return null;
      const read = OwnedList.safeParse(things);
      return read.success ? read.data : null;
    } catch {
      return null;
    }
  },
  /** @returns whether it is kept */
  write(things: readonly OwnedThing[]): boolean {
    const store = ownStore();
    try {
      store?.setItem(KEY, JSON.stringify({ format: "duskline-owned", version: 1, things }));
      return store !== null;
    } catch {
      return false;
    }
  },
};

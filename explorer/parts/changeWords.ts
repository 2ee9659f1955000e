import { createSignal } from "solid-js";
import { firstAnswer } from "./firstAnswer.ts";

type ChangesInWords = typeof import("../../engine/fields/changesInWords.ts").changesInWords;

const [wording, setWording] = createSignal<ChangesInWords | null>(null);
let isAsked = false;

/**
 * What `changesInWords` says, as soon as the words are here; nothing until then. They need the words of the whole format, which
 * the page fetches after its first answer. Reactive: read it inside JSX, memos or effects.
 */
export const changeWords: ChangesInWords = (...sides) => {
  if (!isAsked) {
    isAsked = true;
    void firstAnswer
      .then(() => import("../../engine/fields/changesInWords.ts"))
      .then((loaded) => setWording(() => loaded.changesInWords));
  }
  return wording()?.(...sides) ?? [];
};

import { createSignal } from "solid-js";
import { render } from "solid-js/web";
import { Refused } from "../parts/Refused.tsx";
import { ownStore } from "../store/ownStore.ts";
import { fragmentOfPieces, readPart } from "./linkParts.ts";
import { PartsCome } from "./PartsCome.tsx";
import { addPart, dropParts, PARTS_KEY, type PartSet, setsIn } from "./partBox.ts";

const KEEPS_NOTHING =
  "This browser keeps nothing here (a private window, perhaps), so that the parts of a notebook cannot be put together. Ask for the file.";
const NOT_TOGETHER =
  "The parts that came do not belong together, or one is damaged. Scan all codes once more, or ask for the file.";

/**
 * Gathers the parts of a notebook that came in several codes, each of which opens a tab of its own. The tab in which the last one comes goes
 * on; the others say so.
 * @returns the part behind # that carries all of it; null when it is refused, and then the page says why
 */
export async function gatherParts(root: Element): Promise<string | null> {
  const refuse = (...sentences: readonly string[]) => {
    render(() => <Refused sentences={sentences} />, root);
    return null;
  };
  const read = readPart(location.hash);
  if (!read.ok) return refuse(...read.sentences);
  const store = ownStore();
  let first: PartSet;
  try {
    if (store === null) return refuse(KEEPS_NOTHING);
    first = addPart(store, read.part);
  } catch {
    return refuse(KEEPS_NOTHING);
  }
  const { mark } = first;
  let set = first;
  if (set.pieces.includes(null)) set = await theRest(root, first);
  // Kept by the address from here on: a reload of this tab brings the whole, and nothing waits in the store.
  const fragment = fragmentOfPieces(mark, set.pieces as readonly string[]);
  dropParts(store, mark);
  if (fragment === null) return refuse(NOT_TOGETHER);
  history.replaceState(null, "", `${location.pathname}${fragment}`);
  return fragment;
}

/** Shows which parts are here until all are, and somebody wants to go on in this tab. */
function theRest(root: Element, first: PartSet): Promise<PartSet> {
  return new Promise((resolve) => {
    const [set, setSet] = createSignal(first);
    const hear = ({ key, newValue }: StorageEvent) => {
      const found = key === PARTS_KEY ? setsIn(newValue).find(({ mark }) => mark === first.mark) : undefined;
      if (found !== undefined && found.pieces.length === first.pieces.length) setSet(found);
    };
    addEventListener("storage", hear);
    const close = render(
      () => (
        <PartsCome
          set={set()}
          onGoOn={() => {
            removeEventListener("storage", hear);
            close();
            resolve(set());
          }}
        />
      ),
      root,
    );
  });
}

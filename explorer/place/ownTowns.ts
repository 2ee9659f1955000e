import { createSignal } from "solid-js";
import { type Town, townTable } from "../../engine/towns/index.ts";
// Empty in the page that is one file (oneFile): there is no room for them.
import townsUrl from "./data/towns.bin?url";

type State = "unasked" | "coming" | "here" | "failed" | "left out";

const [state, setState] = createSignal<State>(townsUrl === "" ? "left out" : "unasked");
const [towns, setTowns] = createSignal<readonly Town[]>([]);

/** The towns that places are searched among: fetched when somebody first asks for them, and kept while the page is open. */
export const ownTowns = {
  state,
  /** None until they are here. */
  towns,
  /** Fetches them; again where that went wrong before. */
  ask(): void {
    if (state() !== "unasked" && state() !== "failed") return;
    setState("coming");
    fetchTowns().then(
      (found) => {
        setTowns(found);
        setState("here");
      },
      () => setState("failed"),
    );
  },
};

async function fetchTowns(): Promise<Town[]> {
  const response = await fetch(townsUrl);
  if (!response.ok) throw new Error(`The towns could not be fetched: the server says ${response.status}.`);
  const packed = new Uint8Array(await response.arrayBuffer());
  const isPacked = packed[0] === 0x1f && packed[1] === 0x8b; // gzip, RFC 1952; some servers unpack it on the way
  return townTable(isPacked ? await unpacked(packed) : packed, (bytes) => new TextDecoder().decode(bytes));
}

async function unpacked(packed: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

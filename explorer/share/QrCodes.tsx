import { createMemo, createSignal, onCleanup, onMount, Show } from "solid-js";
import { encode } from "uqr";
import { makeWidth } from "../parts/makeWidth.ts";
import { CODE_VERSION, codeAddresses } from "./linkParts.ts";

/** Light modules round a code on all sides (ISO/IEC 18004:2015, section 6.3.8, from memory). */
const QUIET_MODULES = 4;

/** A code is as wide as this, or as there is room. */
const MOST_PX = 560;

/** A link as QR codes for a phone's camera, one at a time: several in view would be read as they come. */
export function QrCodes(props: { page: string; fragment: string }) {
  const codes = createMemo(() => codeAddresses(props.page, props.fragment));
  const addresses = () => {
    const made = codes();
    return made.ok ? made.addresses : [];
  };
  const [at, setAt] = createSignal(0);
  const count = () => addresses().length;
  const go = (by: number) => setAt(Math.min(count() - 1, Math.max(0, at() + by)));
  const byKeys = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLInputElement) return; // there, arrows go through the link
    if (event.key === "ArrowRight") go(1);
    else if (event.key === "ArrowLeft") go(-1);
  };
  onMount(() => addEventListener("keydown", byKeys));
  onCleanup(() => removeEventListener("keydown", byKeys));
  const why = () => {
    const made = codes();
    return made.ok ? null : made.sentence;
  };
  return (
    <Show when={count() > 0} fallback={<p role="status">{why()}</p>}>
      <section class="qr" aria-label="QR codes">
        <p>
          <Show when={count() > 1} fallback="Point the phone's camera at the code; it opens the copy there.">
            Point the phone's camera at each code, in any order, and open what it offers: the page there gathers the
            parts.
          </Show>
        </p>
        <QrCode address={addresses()[at()]!} name={count() > 1 ? `QR code ${at() + 1} of ${count()}` : "QR code"} />
        <Show when={count() > 1}>
          <p class="qr-acts">
            <button type="button" class="act" disabled={at() === 0} onClick={() => go(-1)}>
              Previous
            </button>
            <span role="status">
              Code {at() + 1} of {count()}
            </span>
            <button type="button" class="act" disabled={at() === count() - 1} onClick={() => go(1)}>
              Next
            </button>
          </p>
        </Show>
      </section>
    </Show>
  );
}

/** One code, drawn as runs of dark modules. */
function QrCode(props: { address: string; name: string }) {
  const code = createMemo(() => encode(props.address, { ecc: "L", maxVersion: CODE_VERSION, border: QUIET_MODULES }));
  const room = makeWidth();
  // A module is a whole number of pixels: those of unequal width are read badly.
  const sidePx = () => Math.max(1, Math.floor(Math.min(MOST_PX, room.width()) / code().size)) * code().size;
  return (
    <div class="qr-room" ref={room.ref}>
      <svg
        class="qr-code"
        style={{ width: `${sidePx()}px` }}
        role="img"
        aria-label={props.name}
        viewBox={`0 0 ${code().size} ${code().size}`}
      >
        <rect class="qr-light" width={code().size} height={code().size} />
        <path class="qr-dark" d={code().data.map(runsOf).join("")} />
      </svg>
    </div>
  );
}

/** The dark runs of one row as parts of a path. */
function runsOf(row: readonly boolean[], y: number): string {
  let path = "";
  for (let x = 0; x < row.length; x++) {
    if (!row[x] || row[x - 1]) continue;
    let end = x;
    while (row[end]) end++;
    path += `M${x} ${y}h${end - x}v1h${x - end}z`;
  }
  return path;
}

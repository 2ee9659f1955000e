import { createSignal, lazy, Suspense } from "solid-js";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

type Loaded = Pick<typeof import("./PackingView.tsx"), "PackingView" | "packingSummary">;

const [loaded, setLoaded] = createSignal<Loaded | null>(null);
let loading: Promise<Loaded> | null = null;

async function fetchView(): Promise<Loaded> {
  const { PackingView, packingSummary } = await import("./PackingView.tsx");
  const view = { PackingView, packingSummary };
  setLoaded(view);
  return view;
}

/** Fetches the view when such an entry is in the notebook and the answer stands: it takes longer than that to work out. */
function load(): Promise<Loaded> {
  loading ??= firstAnswer.then(fetchView);
  return loading;
}
const PackingView = lazy(async () => ({ default: (await load()).PackingView }));

export function PackingEntry(props: EntryProps<"packing">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching what to pack…</p>}>
      <PackingView {...props} />
    </Suspense>
  );
}

export function packingSummary(props: EntryProps<"packing">): string {
  void load();
  return loaded()?.packingSummary(props) ?? "working";
}

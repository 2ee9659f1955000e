import { createSignal, lazy, Suspense } from "solid-js";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

type Loaded = Pick<typeof import("./SizingView.tsx"), "SizingView" | "sizingSummary">;

const [loaded, setLoaded] = createSignal<Loaded | null>(null);
let loading: Promise<Loaded> | null = null;

async function fetchMap(): Promise<Loaded> {
  const { SizingView, sizingSummary } = await import("./SizingView.tsx");
  const view = { SizingView, sizingSummary };
  setLoaded(view);
  return view;
}

/** Fetches the map when such an entry is in the notebook and the answer stands: it takes longer than that to work out. */
function load(): Promise<Loaded> {
  loading ??= firstAnswer.then(fetchMap);
  return loading;
}
const SizingView = lazy(async () => ({ default: (await load()).SizingView }));

export function SizingEntry(props: EntryProps<"sizing">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the map…</p>}>
      <SizingView {...props} />
    </Suspense>
  );
}

export function sizingSummary(props: EntryProps<"sizing">): string {
  void load();
  return loaded()?.sizingSummary(props) ?? "working";
}

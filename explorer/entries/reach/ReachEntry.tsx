import { createSignal, lazy, Suspense } from "solid-js";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

type Loaded = Pick<typeof import("./ReachView.tsx"), "ReachView" | "reachSummary">;

const [loaded, setLoaded] = createSignal<Loaded | null>(null);
let loading: Promise<Loaded> | null = null;

async function fetchView(): Promise<Loaded> {
  const { ReachView, reachSummary } = await import("./ReachView.tsx");
  const view = { ReachView, reachSummary };
  setLoaded(view);
  return view;
}

/** Fetches the lanes when such an entry is in the notebook and the answer stands: it takes longer than that to work out. */
function load(): Promise<Loaded> {
  loading ??= firstAnswer.then(fetchView);
  return loading;
}
const ReachView = lazy(async () => ({ default: (await load()).ReachView }));

export function ReachEntry(props: EntryProps<"reach">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching what it would take…</p>}>
      <ReachView {...props} />
    </Suspense>
  );
}

export function reachSummary(props: EntryProps<"reach">): string {
  void load();
  return loaded()?.reachSummary(props) ?? "working";
}

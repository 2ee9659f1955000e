import type { Want } from "../../engine/answers/asked.ts";

/** Wants whose documents say their zone. The table is fetched where one leaves it open; without it, reading says that the zone is missing. */
export async function zonedWants(wants: readonly Want[]): Promise<readonly Want[]> {
  const isOpen = ({ documents }: Want) => documents.some(({ place }) => place?.zone === undefined);
  if (!wants.some(isOpen)) return wants;
  try {
    const { withZone } = await import("../../engine/scenario/withZone.ts");
    return wants.map((want) => (isOpen(want) ? { ...want, documents: want.documents.map(withZone) } : want));
  } catch {
    return wants;
  }
}

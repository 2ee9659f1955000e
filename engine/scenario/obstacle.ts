import * as z from "zod";
import { id, kind, quantity, share, text, word } from "./quantity.ts";

const eastM = quantity({ unit: "m", low: -500, high: 500, what: "distance east of the site's origin" }).meta({
  label: "East of the middle",
  isPlain: true,
  change: { ways: ["east", "west"] },
});
const northM = quantity({ unit: "m", low: -500, high: 500, what: "distance north of the site's origin" }).meta({
  label: "North of the middle",
  isPlain: true,
  change: { ways: ["north", "south"] },
});

/**
 * A tree: an opaque trunk and a crown of revolution that lets part of the light through. The transmittance is that of a
 * level path through the middle of the crown; longer and shorter paths follow Beer–Lambert.
 */
const Tree = z
  .strictObject({
    kind: kind("tree", "obstacle"),
    id: id("the tree's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").optional().meta({ label: "Name", isPlain: true }),
    eastM,
    northM,
    heightM: quantity({
      unit: "m",
      low: 0.5,
      high: 100,
      what: "height of the tree's top above the ground",
      typical: [5, 25],
    }).meta({ label: "Height", isPlain: true }),
    crownBaseM: quantity({
      unit: "m",
      low: 0,
      high: 80,
      what: "height at which the crown begins",
      typical: [1.5, 6],
    }).meta({ label: "Crown begins at", isPlain: true }),
    crownRadiusM: quantity({ unit: "m", low: 0.2, high: 25, what: "radius of the crown", typical: [2, 7] }).meta({
      label: "Crown radius",
      isPlain: true,
    }),
    trunkRadiusM: quantity({ unit: "m", low: 0.01, high: 3, what: "radius of the trunk", typical: [0.1, 0.4] })
      .default(0.2)
      .meta({ label: "Trunk radius" }),
    transmittanceInLeafShare: share("light that comes through the middle of the crown in leaf")
      .default(0.12)
      .meta({ label: "Light through, in leaf" }),
    transmittanceBareShare: share("light that comes through the middle of the bare crown")
      .default(0.45)
      .meta({ label: "Light through, bare" }),
    leafShare: share(
      "how much of the leaf is on, 1 full summer leaf, 0 bare; by month, latitude and hemisphere when left out",
    )
      .optional()
      .meta({ label: "Leaf on the tree", leftOut: "by the season" }),
    foliage: word(
      ["deciduous", "evergreen"],
      "deciduous sheds its leaf, evergreen keeps it; counts where leafShare is left out, deciduous when left out itself",
    )
      .optional()
      .meta({ label: "Foliage", choices: { deciduous: "sheds its leaf", evergreen: "keeps its leaf" } }),
  })
  .meta({
    title: "Obstacle: tree",
    says: "{heightM} high, {eastM}, {northM}",
    change: { added: "{thing} added, {heightM} high" },
    description:
      "An opaque trunk and a crown that lets part of the light through; stated for a level path through its middle, longer and shorter paths follow Beer–Lambert.",
  })
  .check(({ value, issues }) => {
    if (value.crownBaseM >= value.heightM) {
      const message = `the crown begins at ${value.crownBaseM} m, at or above the tree's top at ${value.heightM} m; lower crownBaseM or raise heightM`;
      issues.push({ code: "custom", path: ["crownBaseM"], input: value.crownBaseM, message });
    }
  });

/** An opaque box on the ground or above it: a building, a trailer, a mast drawn square. */
const Box = z
  .strictObject({
    kind: kind("box", "obstacle"),
    id: id("the box's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").optional().meta({ label: "Name", isPlain: true }),
    eastM,
    northM,
    baseM: quantity({ unit: "m", low: 0, high: 100, what: "height of its underside above the ground" })
      .default(0)
      .meta({ label: "Underside at" }),
    heightM: quantity({ unit: "m", low: 0.05, high: 150, what: "height of its top above the ground" }).meta({
      label: "Height",
      isPlain: true,
    }),
    lengthM: quantity({ unit: "m", low: 0.01, high: 300, what: "footprint along its heading" }).meta({
      label: "Length",
      isPlain: true,
    }),
    widthM: quantity({ unit: "m", low: 0.01, high: 300, what: "footprint across its heading" }).meta({
      label: "Width",
      isPlain: true,
    }),
    headingDeg: quantity({
      unit: "°",
      low: 0,
      high: 360,
      what: "bearing of its length, clockwise from true north",
    })
      .default(0)
      .meta({ label: "Length points to", isPlain: true }),
  })
  .meta({
    title: "Obstacle: box",
    says: "{heightM} high, {eastM}, {northM}",
    change: { added: "{thing} added, {heightM} high" },
    description: "An opaque box on the ground or above it: a building, a trailer, a mast drawn square.",
  })
  .check(({ value, issues }) => {
    if (value.baseM >= value.heightM) {
      const message = `its underside is at ${value.baseM} m, at or above its top at ${value.heightM} m; lower baseM or raise heightM`;
      issues.push({ code: "custom", path: ["baseM"], input: value.baseM, message });
    }
  });

/** The skyline: below it the sun and the sky are hidden for everything on the site. */
const Horizon = z
  .strictObject({
    kind: kind("horizon", "obstacle").meta({ choices: { horizon: "skyline" } }),
    id: id("the skyline's name in this document").meta({ label: "Short name" }),
    name: text("what people call it").optional().meta({ label: "Name", isPlain: true }),
    points: z
      .array(
        z
          .strictObject({
            bearingDeg: quantity({ unit: "°", low: 0, high: 360, what: "bearing clockwise from true north" }).meta({
              label: "Bearing",
            }),
            elevationDeg: quantity({
              unit: "°",
              low: 0,
              high: 89,
              what: "elevation of the skyline on that bearing",
            }).meta({ label: "Stands" }),
          })
          .meta({ title: "Skyline point", description: "How high the skyline stands on one bearing." }),
        { error: "a list of bearings with elevations" },
      )
      .min(1, { error: "a list with at least one bearing" })
      .max(360, { error: "a list of at most 360 bearings" })
      .meta({
        label: "Skyline",
        isPlain: true,
        change: "{item}: another outline",
        description: "points of the skyline; straight lines between them, all the way round",
      }),
  })
  .meta({
    title: "Obstacle: horizon",
    says: "{points.length} points",
    change: { added: "{thing} added" },
    description: "The skyline: below it the sun and the sky are hidden for everything on the site.",
  });

/** Anything that stands between a panel and the sky. Metres east and north of the site's origin, above level ground. */
export const Obstacle = z
  .discriminatedUnion("kind", [Tree, Box, Horizon], {
    error: "an obstacle whose kind is tree, box or horizon",
  })
  .meta({
    title: "Obstacle",
    change: { removed: "{thing} taken away" },
    description:
      "Anything between a panel and the sky, in metres east and north of the site's origin, above level ground.",
  });
export type Obstacle = z.infer<typeof Obstacle>;
export type Tree = z.infer<typeof Tree>;
export type Box = z.infer<typeof Box>;
export type Horizon = z.infer<typeof Horizon>;

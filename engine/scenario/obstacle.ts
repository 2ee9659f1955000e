import * as z from "zod";
import { id, kind, quantity, share, text } from "./quantity.ts";

const eastM = quantity({ unit: "m", low: -500, high: 500, what: "distance east of the site's origin" });
const northM = quantity({ unit: "m", low: -500, high: 500, what: "distance north of the site's origin" });

/**
 * A tree: an opaque trunk and a crown of revolution that lets part of the light through. The transmittance is that of a
 * level path through the middle of the crown; longer and shorter paths follow Beer–Lambert.
 */
const Tree = z
  .strictObject({
    kind: kind("tree", "obstacle"),
    id: id("the tree's name in this document"),
    name: text("what people call it").optional(),
    eastM,
    northM,
    heightM: quantity({
      unit: "m",
      low: 0.5,
      high: 100,
      what: "height of the tree's top above the ground",
      typical: [5, 25],
    }),
    crownBaseM: quantity({ unit: "m", low: 0, high: 80, what: "height at which the crown begins", typical: [1.5, 6] }),
    crownRadiusM: quantity({ unit: "m", low: 0.2, high: 25, what: "radius of the crown", typical: [2, 7] }),
    trunkRadiusM: quantity({ unit: "m", low: 0.01, high: 3, what: "radius of the trunk", typical: [0.1, 0.4] }).default(
      0.2,
    ),
    transmittanceInLeafShare: share("light that comes through the middle of the crown in leaf").default(0.12),
    transmittanceBareShare: share("light that comes through the middle of the bare crown").default(0.45),
    leafShare: share("how much of the leaf is on: 1 full summer leaf, 0 bare").default(1),
  })
  .meta({
    title: "Obstacle: tree",
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
    id: id("the box's name in this document"),
    name: text("what people call it").optional(),
    eastM,
    northM,
    baseM: quantity({ unit: "m", low: 0, high: 100, what: "height of its underside above the ground" }).default(0),
    heightM: quantity({ unit: "m", low: 0.05, high: 150, what: "height of its top above the ground" }),
    lengthM: quantity({ unit: "m", low: 0.01, high: 300, what: "footprint along its heading" }),
    widthM: quantity({ unit: "m", low: 0.01, high: 300, what: "footprint across its heading" }),
    headingDeg: quantity({
      unit: "°",
      low: 0,
      high: 360,
      what: "bearing of its length, clockwise from true north",
    }).default(0),
  })
  .meta({
    title: "Obstacle: box",
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
    kind: kind("horizon", "obstacle"),
    id: id("the skyline's name in this document"),
    name: text("what people call it").optional(),
    points: z
      .array(
        z
          .strictObject({
            bearingDeg: quantity({ unit: "°", low: 0, high: 360, what: "bearing clockwise from true north" }),
            elevationDeg: quantity({ unit: "°", low: 0, high: 89, what: "elevation of the skyline on that bearing" }),
          })
          .meta({ title: "Skyline point", description: "How high the skyline stands on one bearing." }),
        { error: "a list of bearings with elevations" },
      )
      .min(1, { error: "a list with at least one bearing" })
      .max(360, { error: "a list of at most 360 bearings" })
      .meta({ description: "points of the skyline; straight lines between them, all the way round" }),
  })
  .meta({
    title: "Obstacle: horizon",
    description: "The skyline: below it the sun and the sky are hidden for everything on the site.",
  });

/** Anything that stands between a panel and the sky. Metres east and north of the site's origin, above level ground. */
export const Obstacle = z
  .discriminatedUnion("kind", [Tree, Box, Horizon], {
    error: "an obstacle whose kind is tree, box or horizon",
  })
  .meta({
    title: "Obstacle",
    description:
      "Anything between a panel and the sky, in metres east and north of the site's origin, above level ground.",
  });
export type Obstacle = z.infer<typeof Obstacle>;
export type Tree = z.infer<typeof Tree>;
export type Box = z.infer<typeof Box>;
export type Horizon = z.infer<typeof Horizon>;

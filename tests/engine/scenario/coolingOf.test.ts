import { expect, test } from "vitest";
import { coolingOf } from "../../../engine/scenario/coolingOf.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { PanelGroup } from "../../../engine/scenario/panelGroup.ts";

const group = (mount: object, heightM: number, parts: object = {}) =>
  PanelGroup.parse({
    ...{ id: "p", name: "P", count: 1, module: { ratedW: 100 } },
    ...{ mount, at: { eastM: 0, northM: 0, heightM } },
    ...parts,
  });
const trailer = Obstacle.parse({
  ...{ kind: "box", id: "trailer", eastM: 0.5, northM: 0, heightM: 2.4, lengthM: 5, widthM: 2.2, headingDeg: 90 },
});

test("air behind the panels goes by where they are, and by what is stated before that", () => {
  const fixed = { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 };
  expect(coolingOf(group({ kind: "flat" }, 2.5), [])).toBe("closeRoof");
  expect(coolingOf(group({ kind: "flat" }, 0.1), [])).toBe("onRoof");
  expect(coolingOf(group({ ...fixed, tiltDeg: 5 }, 2.5), [])).toBe("closeRoof");
  expect(coolingOf(group(fixed, 0.6), [])).toBe("openRack");
  expect(coolingOf(group({ kind: "aimed", aims: [{ at: "08:00" }] }, 0.4), [])).toBe("openRack");
  // A tilted row just over the roof of a box lies on that roof; beside it, high over it or steep, it does not.
  expect(coolingOf(group({ ...fixed, tiltDeg: 20 }, 2.5), [trailer])).toBe("closeRoof");
  expect(
    coolingOf(group({ ...fixed, tiltDeg: 20 }, 2.5, { at: { eastM: 0, northM: 4, heightM: 2.5 } }), [trailer]),
  ).toBe("openRack");
  expect(coolingOf(group({ ...fixed, tiltDeg: 20 }, 3.4), [trailer])).toBe("openRack");
  expect(coolingOf(group({ ...fixed, tiltDeg: 60 }, 2.5), [trailer])).toBe("openRack");
  expect(coolingOf(group({ kind: "flat" }, 2.5, { cooling: "openRack" }), [trailer])).toBe("openRack");
});

import * as z from "zod";
import { quantity, word } from "./quantity.ts";

/** Which published form is used where there is more than one; the defaults suit nearly everybody. */
export const Models = z
  .strictObject({
    transposition: word(["hayDavies", "perez", "isotropic"], "how sky light reaches a tilted panel")
      .default("hayDavies")
      .meta({
        label: "Sky light on a tilt",
        choices: { hayDavies: "Hay and Davies", perez: "Perez", isotropic: "even sky" },
      }),
    incidence: word(["physical", "ashrae"], "loss of light that strikes the glass at a slant")
      .default("physical")
      .meta({ label: "Slanting light on glass", choices: { physical: "glass optics", ashrae: "ASHRAE" } }),
    cellTemperature: word(["faiman", "sandia"], "how warm the cells get")
      .default("faiman")
      .meta({ label: "Cell temperature", choices: { faiman: "Faiman", sandia: "Sandia" } }),
    diffuseShade: word(["skyView", "none"], "whether obstacles take sky light as well as sun")
      .default("skyView")
      .meta({ label: "Obstacles take sky light", choices: { skyView: "yes", none: "no" } }),
    sectionRule: word(
      ["kthBrightest", "mildShade"],
      "current of a string in uneven light: that of the k-th brightest section (cautious), or, under mppt, raised as in real strings in mild shade",
    )
      .default("kthBrightest")
      .meta({
        label: "Uneven light in a string",
        choices: { kthBrightest: "cautious", mildShade: "mild shade raised" },
      }),
    albedoShare: quantity({
      unit: "",
      low: 0,
      high: 1,
      what: "light that the ground throws back",
      typical: [0.15, 0.8],
      why: "grass, soil, sand 0.15 to 0.3; fresh snow 0.7 to 0.85 (common practice, no source)",
    })
      .default(0.2)
      .meta({ label: "Ground throws back" }),
  })
  .meta({
    title: "Models",
    label: "How it is worked out",
    description: "Which published form is used where there is more than one; the defaults suit nearly everybody.",
  });
export type Models = z.infer<typeof Models>;

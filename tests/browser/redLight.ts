import type { Driven } from "./driven.ts";

/** The most green or blue that eyes in the dark are asked to bear, of 255: the brightest of our own reds has 58. */
const MOST = 64;
/** At the right edge lies the bar to scroll by, which some windows lay over the page in colours of their own. */
const BAR_PX = 16;

/** The first few places that are neither red nor dark where a part of the page is in the middle of what is seen, each with its colour. */
export async function notRed(driven: Driven, part: string): Promise<string[]> {
  await driven.look(async (css) => {
    const found = document.querySelector(css);
    if (found === null) throw new Error(`nothing is ${css}`);
    found.scrollIntoView({ block: "center", behavior: "instant" });
    // A colour on its way from one light to the next is neither's.
    const passing = document
      .getAnimations()
      .filter(({ effect }) => Number.isFinite(effect?.getComputedTiming().endTime));
    await Promise.allSettled(passing.map(({ finished }) => finished));
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  }, part);
  return driven.look(
    async (picture, most, barPx) => {
      const image = new Image();
      image.src = `data:image/png;base64,${picture}`;
      await image.decode();
      const { width, height } = image;
      const canvas = Object.assign(document.createElement("canvas"), { width, height }).getContext("2d")!;
      canvas.drawImage(image, 0, 0);
      const { data } = canvas.getImageData(0, 0, width, height);
      const found: string[] = [];
      for (let at = 0; at < data.length && found.length < 8; at += 4) {
        const [red, green, blue] = data.subarray(at, at + 3);
        if (Math.max(green!, blue!) <= most || (at / 4) % width >= width - barPx) continue;
        const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
        found.push(
          `${x}, ${y}: rgb(${red}, ${green}, ${blue}) in ${document.elementFromPoint(x, y)?.outerHTML.slice(0, 60)}`,
        );
      }
      return found;
    },
    await driven.picture(),
    MOST,
    BAR_PX,
  );
}

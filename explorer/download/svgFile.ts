import strataCss from "../charts/strata.css?inline";

const SVG = "http://www.w3.org/2000/svg";
const MARGIN_PX = 16;

/** The custom properties that the drawing's rules refer to, with what they are in the present light. */
function paletteRule(): string {
  const computed = getComputedStyle(document.documentElement);
  const names = new Set(strataCss.match(/--[a-z0-9-]+/g) ?? []);
  return `svg{${[...names].map((name) => `${name}:${computed.getPropertyValue(name)}`).join(";")}}`;
}

/** Puts the ruler, the axis, the strata and their labels into one picture that needs no page. */
export function svgFile(ruler: SVGElement, axis: SVGElement, strata: SVGElement, labels: SVGElement | null): string {
  const width = (svg: SVGElement | null) => Number(svg?.getAttribute("width") ?? 0);
  const height = (svg: SVGElement) => Number(svg.getAttribute("height"));
  const left = width(axis);
  const top = height(ruler) + MARGIN_PX;
  const wholeWidth = left + width(strata) + width(labels) + MARGIN_PX;
  const wholeHeight = top + height(strata) + MARGIN_PX;
  const whole = document.createElementNS(SVG, "svg");
  whole.setAttribute("xmlns", SVG);
  whole.setAttribute("width", String(wholeWidth));
  whole.setAttribute("height", String(wholeHeight));
  const place = (svg: SVGElement | null, x: number, y: number) => {
    if (svg === null) return;
    const copy = svg.cloneNode(true) as SVGElement;
    for (const [name, value] of Object.entries({ x, y, overflow: "visible" })) copy.setAttribute(name, String(value));
    whole.append(copy);
  };
  place(ruler, left, 4);
  place(strata, left, top);
  place(axis, 0, top);
  place(labels, left + width(strata), top);
  const text = new XMLSerializer().serializeToString(whole);
  const ground = `<rect class="sheet-fill" width="${wholeWidth}" height="${wholeHeight}"/>`;
  return text.replace(">", `><style>${paletteRule()}${strataCss}</style>${ground}`);
}

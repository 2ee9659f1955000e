const SVG = "http://www.w3.org/2000/svg";
const parser = new DOMParser();

/**
 * Puts a drawing's markup into an element of the page, and only touches what differs: no element is made again whose place in the
 * drawing still holds one of its name. Read without the namespace of SVG, because a browser would take paths apart that are not shown.
 * @throws SyntaxError where the markup is no XML, which `html` does not let happen
 */
export function drawInto(element: Element, markup: string): void {
  const wanted = parser.parseFromString(`<g>${markup}</g>`, "application/xml").documentElement;
  const fault = wanted.getElementsByTagName("parsererror")[0];
  if (fault !== undefined) throw new SyntaxError(`A drawing is no XML: ${fault.textContent}`);
  patchChildren(element, wanted);
}

function patchChildren(live: Element, wanted: Element): void {
  let old = live.firstChild;
  for (let node = wanted.firstChild; node !== null; node = node.nextSibling) {
    const next: ChildNode | null = old?.nextSibling ?? null;
    if (node instanceof Element) {
      const same = old instanceof Element && old.localName === node.localName ? old : null;
      const made = same ?? document.createElementNS(SVG, node.localName);
      patchAttributes(made, node);
      patchChildren(made, node);
      if (same === null) place(live, made, old);
    } else if (old instanceof Text) {
      if (old.data !== node.nodeValue) old.data = node.nodeValue ?? "";
    } else {
      place(live, document.createTextNode(node.nodeValue ?? ""), old);
    }
    old = next;
  }
  while (old !== null) {
    const next: ChildNode | null = old.nextSibling;
    old.remove();
    old = next;
  }
}

function place(parent: Element, made: ChildNode, old: ChildNode | null): void {
  if (old === null) parent.append(made);
  else old.replaceWith(made);
}

function patchAttributes(live: Element, wanted: Element): void {
  for (const { name, value } of wanted.attributes) {
    if (live.getAttribute(name) !== value) live.setAttribute(name, value);
  }
  for (const name of live.getAttributeNames()) if (!wanted.hasAttribute(name)) live.removeAttribute(name);
}

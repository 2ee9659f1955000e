/** What the script says of itself; written in where the page is made one file. */
declare const dusklineScript: () => string;

let address: string | null = null;

/**
 * Starts a worker of the page that is one file: the same script once more, which is told by its name what it is there. Whoever starts one makes
 * the address for it: from a disk, browsers let a worker load nothing that the page has made.
 * @param part the file of the worker, without its ending
 */
export function startInside(part: string): Worker {
  address ??= URL.createObjectURL(new Blob([dusklineScript()], { type: "text/javascript" }));
  return new Worker(address, { name: part });
}

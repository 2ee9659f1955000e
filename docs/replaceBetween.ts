/**
 * Puts `text` between the two comments `<!-- name -->` and `<!-- /name -->` of a Markdown page.
 * @throws Error if the page lacks them
 */
export function replaceBetween(page: string, name: string, text: string): string {
  const begin = `<!-- ${name} -->`;
  const end = `<!-- /${name} -->`;
  const from = page.indexOf(begin);
  const to = page.indexOf(end);
  if (from < 0 || to < from) throw new Error(`The page has no ${begin} … ${end}.`);
  return `${page.slice(0, from + begin.length)}\n${text}\n${page.slice(to)}`;
}

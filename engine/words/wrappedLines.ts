/** Breaks a sentence into lines of at most `longest` characters, words that are longer apart. */
export function wrappedLines(sentence: string, longest: number): string[] {
  const lines: string[] = [];
  for (const word of sentence.split(" ")) {
    const last = lines.length - 1;
    if (last >= 0 && lines[last]!.length + word.length < longest) lines[last] += ` ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A plant file cut at its machines: the lines before them and behind them, and the text of each. */
export interface MachineTexts {
  /** Up to and with the line `machines:`. */
  readonly before: string;
  readonly behind: string;
  readonly machines: readonly MachineText[];
}

export interface MachineText {
  readonly name: string;
  readonly text: string;
  /** The line of the file it begins in, from 0. */
  readonly line: number;
}

/** Names that stand for a node elsewhere, which a piece by itself cannot know. */
const anchored = /(^|[\s[{,:-])[&*][^\s,[\]{}]/m;

/**
 * Cuts the text of a plant at its machines, by indentation alone, so that a machine can be read without the others.
 * Nothing where the file is laid out another way, names a machine twice, or lets one place stand for another: then it
 * is read as a whole.
 */
export function machineTexts(text: string): MachineTexts | undefined {
  if (anchored.test(text)) return undefined;
  const lines = text.split('\n');
  const start = lines.findIndex((line) => /^machines:\s*(#.*)?$/.test(line));
  if (start < 0) return undefined;
  const found = lines.findIndex((line, index) => index > start && /^[^\s#]/.test(line));
  const end = found < 0 ? lines.length : found;
  const first = lines.findIndex((line, index) => index > start && index < end && /^\s+[^\s#]/.test(line));
  if (first < 0) return undefined;
  const indent = lines[first]!.length - lines[first]!.trimStart().length;
  const begins = (line: string) => line.search(/[^ ]/) === indent && /[^\s#-]/.test(line.charAt(indent));
  const starts: number[] = [];
  for (let index = start + 1; index < end; index++) if (begins(lines[index]!)) starts.push(index);
  const machines = starts.map((line, index): MachineText => {
    // Comments between `machines:` and the first machine belong to the first.
    const from = index === 0 ? start + 1 : line;
    const text = lines.slice(from, starts[index + 1] ?? end).join('\n');
    return { name: nameIn(lines[line]!), text, line: from };
  });
  if (new Set(machines.map((each) => each.name)).size < machines.length) return undefined;
  return { before: lines.slice(0, start + 1).join('\n'), behind: lines.slice(end).join('\n'), machines };
}

function nameIn(line: string): string {
  const key = /^\s*("(?:[^"\\]|\\.)*"|'(?:[^']|'')*'|[^:]+(?::\S[^:]*)*):(\s|$)/.exec(line)?.[1]?.trim() ?? line.trim();
  if (key.startsWith('"')) return unquoted(key);
  return key.startsWith("'") ? key.slice(1, -1).replaceAll("''", "'") : key;
}

function unquoted(key: string): string {
  try {
    return JSON.parse(key) as string;
  } catch {
    return key;
  }
}

/** Those machines as a plant file of their own. */
export function pieceOf({ before, behind }: MachineTexts, machines: readonly MachineText[]): string {
  return [before, ...machines.map((each) => each.text), ...(behind === '' ? [] : [behind])].join('\n');
}

/** The same with each machine on the line it has in the file, so that what is refused is refused where it stands. */
export function pieceInPlace(
  { before, behind, machines: all }: MachineTexts,
  machines: readonly MachineText[],
): string {
  const lines = before.split('\n');
  for (const { text, line } of machines) {
    while (lines.length < line) lines.push('');
    lines.push(...text.split('\n'));
  }
  const last = all.at(-1)!;
  const end = last.line + last.text.split('\n').length;
  while (lines.length < end) lines.push('');
  return [...lines, ...(behind === '' ? [] : [behind])].join('\n');
}

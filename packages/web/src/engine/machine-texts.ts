/** A plant file cut into what stands before and behind its machines, and the text of each machine. */
export interface MachineTexts {
  readonly around: string;
  readonly machines: readonly string[];
}

/**
 * Cuts the text of a plant at its machines, by indentation alone: a machine whose text and surroundings are what they
 * were is the machine it was. Nothing where the file is laid out another way; then every machine is worked out again.
 */
export function machineTexts(text: string): MachineTexts | undefined {
  const lines = text.split('\n');
  const start = lines.findIndex((line) => /^machines:\s*(#.*)?$/.test(line));
  if (start < 0) return undefined;
  const end = lines.findIndex((line, index) => index > start && /^[^\s#]/.test(line));
  const inside = lines.slice(start + 1, end < 0 ? lines.length : end);
  const first = inside.find((line) => /^\s+[^\s#]/.test(line));
  if (first === undefined) return undefined;
  const indent = first.length - first.trimStart().length;
  const machines: string[][] = [];
  for (const line of inside) {
    const begins = line.length - line.trimStart().length === indent && /[^\s#-]/.test(line.trim().charAt(0));
    if (begins) machines.push([line]);
    else machines.at(-1)?.push(line);
  }
  const around = [...lines.slice(0, start), ...(end < 0 ? [] : lines.slice(end))].join('\n');
  return { around, machines: machines.map((each) => each.join('\n')) };
}

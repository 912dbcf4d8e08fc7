/** The candidate with the fewest edits to what was written, within a third of its length. */
export function nearest(text: string, candidates: readonly string[]): string | undefined {
  const wanted = text.trim().slice(0, 60).toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(1, Math.ceil(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    const edits = editDistance(wanted, candidate.toLowerCase());
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(replaced, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}

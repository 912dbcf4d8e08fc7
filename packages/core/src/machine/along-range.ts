/** A smooth function along an operating range: its values at the steps, and anywhere between them. */
export interface Along {
  readonly steps: readonly { readonly at: number; readonly value: number }[];
  value(at: number): number;
}

/** Where a smooth function passes through zero: at a step, or between two by halving. */
export function zeros(of: Along): readonly number[] {
  return of.steps.flatMap(({ at, value }, index) => {
    const before = of.steps[index - 1];
    if (value === 0) return [at];
    return before !== undefined && before.value * value < 0 ? [halved(before.at, at, of)] : [];
  });
}

function halved(from: number, to: number, of: Along): number {
  let [left, right] = [from, to];
  const sign = Math.sign(of.value(left));
  for (let round = 0; round < 40; round++) {
    const middle = (left + right) / 2;
    if (Math.sign(of.value(middle)) === sign) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}

/** The stretches in which a function is not above zero; a crossing lies in such a stretch even between two steps. */
export function regions(
  of: Along,
  crossings: readonly number[],
): readonly { readonly low: number; readonly high: number }[] {
  const inside = [...of.steps, ...crossings.map((at) => ({ at, value: -1 }))].sort((a, b) => a.at - b.at);
  const found: { low: number; high: number }[] = [];
  let low: number | undefined;
  for (const [index, { at, value }] of inside.entries()) {
    const before = inside[index - 1]?.at;
    if (value <= 0 && low === undefined) low = before === undefined ? at : halved(before, at, of);
    if (value > 0 && low !== undefined) {
      found.push({ low, high: halved(before!, at, of) });
      low = undefined;
    }
  }
  if (low !== undefined) found.push({ low, high: inside.at(-1)!.at });
  return found;
}

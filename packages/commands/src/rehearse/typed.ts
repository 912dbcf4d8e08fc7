import {
  type DefectStatement,
  defectKinds,
  type FaultStatement,
  motions,
  parseLevel,
  parseQuantity,
  Refusal,
} from '@soundpost/core';

/** `outer-ring:pump-drive-end:1 g peak`. Throws Refusal. */
export function faultTyped(typed: string): FaultStatement {
  const [kind, at, ...size] = typed.split(':').map((each) => each.trim());
  if (kind === undefined || at === undefined || size.length === 0) {
    throw new Refusal({
      read: `--fault ${typed}`,
      expected: "KIND:AT:SIZE, such as 'outer-ring:pump-drive-end:1 g peak'",
    });
  }
  return { kind, at, size: parseLevel(size.join(':'), motions) };
}

/** `loose-mount`, `loose-mount:0.3`, `low-corner:2 Hz`: a bare number is taken only of what has no unit. Throws Refusal. */
export function defectTyped(typed: string): DefectStatement {
  const [word, ...size] = typed.split(':').map((each) => each.trim());
  const kind = defectKinds.find((each) => each.kind === word);
  if (kind === undefined || size.length === 0) return { kind: word! };
  const value = parseQuantity(size.join(':'), kind.quantity);
  if (value === 0 && kind.quantity === 'ratio') {
    throw new Refusal({
      read: `--defect ${typed}`,
      expected: 'a ratio other than zero',
      suggestion: "Of a chain that shows nothing at all: 'bias-open'.",
    });
  }
  return { kind: word!, size: value };
}

import { type Cell, cells, type DesignedPoint, reason, type Showing } from '@soundpost/core';
import type { Explained } from '../derivation/explained.ts';

function reaches({ outcome }: Cell): boolean {
  return outcome === 'meets' || outcome === 'warns';
}

/** How many targets of the points the chosen chains reach, counted one by one. */
export function explainedCoverage(points: readonly DesignedPoint[], showing: Showing): Explained {
  const counted = points.map((designed) => {
    const each = designed.appraisal === undefined ? [] : cells(designed.appraisal);
    return { designed, cells: each, covered: each.filter(reaches).length };
  });
  const covered = counted.reduce((sum, each) => sum + each.covered, 0);
  const targets = points.reduce((sum, { point }) => sum + point.targets.length, 0);
  const one = points.length === 1 ? counted[0] : undefined;
  return {
    title: 'Targets covered',
    sentence: `A target is covered where the gravest judgement about it, and about the chain for its sake, is ‘meets’ or ‘warns’: ${covered} of ${targets}. It says nothing of targets nobody stated.`,
    numbers:
      one === undefined
        ? [
            { name: 'covered', shown: String(covered) },
            { name: 'not covered', shown: String(targets - covered) },
            { name: 'without a chain', shown: String(points.filter((each) => each.appraisal === undefined).length) },
          ]
        : one.cells.length === 0
          ? [{ name: 'chain', shown: 'none chosen, so nothing is covered' }]
          : one.cells.map((cell) => ({
              name: cell.target,
              shown: `${cell.outcome}${cell.decides === undefined ? '' : `: ${reason(cell.decides, showing).replace(`${cell.target}: `, '')}`}`,
            })),
    steps: [
      {
        formula: 'covered = Σ targets whose gravest judgement meets or warns',
        substituted: `covered = ${sum(one === undefined ? counted.map((each) => each.covered) : one.cells.map((cell) => Number(reaches(cell))))} = ${covered}`,
      },
    ],
    sources: [],
  };
}

/** Findings of a point by their weight. */
export function explainedFindings({ findings, point }: DesignedPoint): Explained {
  const told = findings.filter((each) => each.weight !== 'notes');
  const weights = [...new Set(told.map((each) => each.weight))];
  const counts = weights.map((weight) => ({
    name: weight.replace('-', ' '),
    count: told.filter((each) => each.weight === weight).length,
  }));
  return {
    title: 'Findings',
    sentence: `The rules found ${told.length === 0 ? 'nothing' : told.length} at ${point.of} that blocks, asks or warns; mere notes are not counted. Each stands under the point and under Findings with its limit and its source.`,
    numbers: counts.map(({ name, count }) => ({ name, shown: String(count) })),
    steps: [
      {
        formula: 'findings = Σ of all that block, ask or warn',
        substituted: `findings = ${sum(counts.map((each) => each.count))} = ${told.length}`,
      },
    ],
    sources: [],
  };
}

/** Long sums are cut: nobody adds up five thousand ones. */
function sum(counts: readonly number[]): string {
  const most = 40;
  if (counts.length === 0) return '0';
  if (counts.length <= most) return counts.join(' + ');
  const rest = counts.slice(most).reduce((total, each) => total + each, 0);
  return `${counts.slice(0, most).join(' + ')} + ${rest}`;
}

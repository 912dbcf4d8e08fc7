import type { Acceptance, PointComparison } from '@soundpost/core';
import { type Html, html, named } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';
import { checkList } from './checks.ts';
import { identifiedTable } from './identified.ts';
import { pictureFigures } from './picture-figures.ts';

/** What is wrong with a machine is not what is wrong with its chain. */
const ofMachine = 'machine-faults';

/** One section for each recorded point: its checks, its pictures, its chain as identified, faults of its machine. */
export function pointSections(accepted: Acceptance, setting: Setting): readonly Section[] {
  const { compared, pictures, identified } = accepted;
  return compared.points.map(({ at, verdict, counts }, index): Section => {
    const own = compared.results.filter((each) => each.at === at);
    const chain = own.filter(({ check }) => check !== ofMachine);
    const machine = own.filter(({ check }) => check === ofMachine);
    const found = identified.filter((each) => each.at === at);
    const drawn = pictures.filter((each) => each.at === at);
    const design = accepted.design.machines.flatMap(({ points }) => points).find(({ point }) => point.of === at);
    return {
      title: named(at),
      body: html`<p>${sign(verdict)}: ${counts.meets} met, ${counts.fails} failed, ${counts['cannot tell']} cannot be told from these records. Chain as designed: ${design?.appraisal?.prediction.chain.of ?? 'none chosen'}.</p>
${checkList(chain, setting, 'No record of this point could be held against its chain.')}
${drawn.length === 0 ? undefined : html`<h4>What the records show</h4>${pictureFigures(drawn, `p${index + 1}`, setting)}`}
${found.length === 0 ? undefined : html`<h4>The chain as identified</h4>${identifiedTable(found, setting)}`}
${machine.length === 0 ? undefined : html`<h4>Faults of the machine, not of the chain</h4>${checkList(machine, setting, '')}`}`,
    };
  });
}

/** Every point in one table. */
export function pointSummary({ compared }: Acceptance): Html {
  const count = (verdict: keyof PointComparison['counts']) => ({
    kind: 'number' as const,
    cell: ({ counts }: PointComparison) => String(counts[verdict]),
  });
  return html`${table({
    columns: [
      { head: 'Point', cell: ({ at }: PointComparison) => named(at) },
      { head: 'Verdict', kind: 'line', cell: ({ verdict }) => sign(verdict) },
      { head: 'Met', ...count('meets') },
      { head: 'Failed', ...count('fails') },
      { head: 'Cannot tell', ...count('cannot tell') },
    ],
    rows: compared.points,
    folds: true,
    empty: 'No recording is said to be made at a point of this design.',
  })}
${compared.strangers.map((at) => html`<p>${named(at)} is no measuring point of this design: its records were held against nothing.</p>`)}`;
}

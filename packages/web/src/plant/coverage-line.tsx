import { OpeningNumber } from '../parts/why.tsx';
import type { Coverage } from './lines.ts';

/** How much of what is asked for the chosen chains reach, counted over the points shown. */
export function CoverageLine(props: {
  readonly coverage: Coverage;
  readonly filtered: boolean;
  /** Values typed into cells that the file did not take. */
  readonly refusals: number;
}) {
  const { coverage, filtered, refusals } = props;
  const { of } = coverage;
  const asked = of === undefined ? undefined : ({ is: 'covered', points: of } as const);
  const { points, covered, uncovered, waiting, withoutChain } = coverage;
  return (
    <p className="coverage-line" role="status">
      <span>
        <OpeningNumber asked={asked} what="Targets covered">
          <strong>{covered}</strong>
        </OpeningNumber>{' '}
        {covered === 1 ? 'target' : 'targets'} covered
      </span>
      <span className={uncovered > 0 ? 'short-of' : 'quiet'}>
        <OpeningNumber asked={asked} what="Targets not covered" aside>
          <strong>{uncovered}</strong>
        </OpeningNumber>{' '}
        not covered
      </span>
      <span className="quiet">
        at {points} {points === 1 ? 'point' : 'points'}
        {filtered ? ' that fit' : ''}
        {withoutChain > 0 ? `, ${withoutChain} without a chain` : ''}
        {waiting > 0 ? `; ${waiting} being worked out` : ''}
      </span>
      {refusals === 0 ? undefined : (
        <span className="refused">
          ✗ {refusals} typed {refusals === 1 ? 'value is' : 'values are'} not in the file
        </span>
      )}
    </p>
  );
}

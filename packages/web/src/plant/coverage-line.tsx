import type { Coverage } from './lines.ts';

/** How much of what is asked for the chosen chains reach, counted over the points shown. */
export function CoverageLine({ coverage, filtered }: { readonly coverage: Coverage; readonly filtered: boolean }) {
  const { points, covered, uncovered, waiting, withoutChain } = coverage;
  return (
    <p className="coverage-line" role="status">
      <span>
        <strong>{covered}</strong> {covered === 1 ? 'target' : 'targets'} covered
      </span>
      <span className={uncovered > 0 ? 'short-of' : 'quiet'}>
        <strong>{uncovered}</strong> not covered
      </span>
      <span className="quiet">
        at {points} {points === 1 ? 'point' : 'points'}
        {filtered ? ' that fit' : ''}
        {withoutChain > 0 ? `, ${withoutChain} without a chain` : ''}
        {waiting > 0 ? `; ${waiting} being worked out` : ''}
      </span>
    </p>
  );
}

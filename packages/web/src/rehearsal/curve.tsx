import type { CurveView, Scale } from '../engine/rehearsal/rehearsal-views.ts';
import { useNarrow } from '../point/use-narrow.ts';

const edge = { left: 62, right: 12, top: 26, bottom: 40 };

/** A curve as a drawing: fine lines, axes with their units, and what is looked for marked above it. */
export function Curve({ curve, chain }: { readonly curve: CurveView; readonly chain: string }) {
  const narrow = useNarrow();
  const [width, height] = narrow ? [350, 230] : [620, 250];
  const { across, up, marks, band } = curve;
  const x = placing(across.scale, across.low, across.high, edge.left, width - edge.right);
  const y = placing(up.scale, up.low, up.high, height - edge.bottom, edge.top);
  const ticksAcross = ticks(across.scale, across.low, across.high, narrow ? 4 : 7);
  const ticksUp = ticks(up.scale, up.low, up.high, 5);
  const points: string[] = [];
  for (let n = 0; n + 1 < curve.points.length; n += 2) {
    const height = up.scale === 'logarithmic' ? Math.max(up.low, curve.points[n + 1]!) : curve.points[n + 1]!;
    points.push(`${x(curve.points[n]!).toFixed(1)},${y(height).toFixed(1)}`);
  }
  const told = marks.map((each) => `${each.name} ${each.seen ? 'seen' : 'hidden'}`).join(', ');
  return (
    <figure className="curve">
      <figcaption>{curve.title}</figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${curve.title} of ${chain}, in ${up.unit} over ${across.unit}${told === '' ? '' : `; ${told}`}`}
      >
        {band === undefined ? undefined : (
          <rect
            className="band"
            x={x(Math.max(across.low, band.low))}
            width={x(Math.min(across.high, band.high)) - x(Math.max(across.low, band.low))}
            y={edge.top}
            height={height - edge.top - edge.bottom}
          />
        )}
        {ticksAcross.map((each) => (
          <g key={each}>
            <line className="grid" x1={x(each)} x2={x(each)} y1={edge.top} y2={height - edge.bottom} />
            <text x={x(each)} y={height - edge.bottom + 15} textAnchor="middle">
              {shown(each)}
            </text>
          </g>
        ))}
        {ticksUp.map((each) => (
          <g key={each}>
            <line className="grid" x1={edge.left} x2={width - edge.right} y1={y(each)} y2={y(each)} />
            <text x={edge.left - 6} y={y(each) + 4} textAnchor="end">
              {shown(each)}
            </text>
          </g>
        ))}
        <polyline className="trace" points={points.join(' ')} />
        {marks.map((each, index) => (
          <g key={each.name} className={each.seen ? 'seen' : 'hidden'}>
            <line x1={x(each.at)} x2={x(each.at)} y1={edge.top} y2={height - edge.bottom} />
            <path d={`M${x(each.at) - 5} ${edge.top - 9}h10l-5 9z`} />
            <text x={x(each.at) + 7} y={edge.top - 2 - (index % 2) * 10} className="mark">
              {index + 1}
            </text>
          </g>
        ))}
        <text className="unit" x={4} y={12}>
          {up.unit}
        </text>
        <text className="unit" x={width - edge.right} y={height - 6} textAnchor="end">
          {across.unit}
        </text>
      </svg>
      {marks.length === 0 ? undefined : (
        <p className="quiet marks">
          {marks.map((each, index) => (
            <span key={each.name}>
              {index + 1} <bdi>{each.name}</bdi> {each.seen ? '▼ seen' : '▽ hidden'}
            </span>
          ))}
        </p>
      )}
    </figure>
  );
}

function placing(scale: Scale, low: number, high: number, from: number, to: number) {
  const along =
    scale === 'linear'
      ? (value: number) => (value - low) / (high - low)
      : (value: number) => Math.log(value / low) / Math.log(high / low);
  return (value: number) => from + (to - from) * along(value);
}

function ticks(scale: Scale, low: number, high: number, most: number): readonly number[] {
  if (scale === 'logarithmic') {
    const decades = Math.log10(high / low);
    const steps = decades < 2.2 ? [1, 2, 5] : [1];
    const all: number[] = [];
    const every = Math.max(1, Math.ceil(decades / most));
    for (let decade = Math.floor(Math.log10(low)); decade <= Math.log10(high); decade += every) {
      for (const step of steps) all.push(step * 10 ** decade);
    }
    return all.filter((each) => each >= low * 0.999 && each <= high * 1.001);
  }
  const rough = (high - low) / most;
  const size = 10 ** Math.floor(Math.log10(rough));
  const step = size * (rough / size < 1.5 ? 1 : rough / size < 3.5 ? 2 : rough / size < 7.5 ? 5 : 10);
  const all: number[] = [];
  for (let each = Math.ceil(low / step) * step; each <= high + step * 1e-6; each += step) all.push(each);
  return all.map((each) => (Math.abs(each) < step * 1e-6 ? 0 : each));
}

function shown(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e5 || size < 1e-4 * 0.999) return value.toExponential(0).replace('e', ' · 10^').replace('^+', '^');
  return String(Number(value.toPrecision(3)));
}

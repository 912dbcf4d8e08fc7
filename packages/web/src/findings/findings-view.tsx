import { type KeyboardEvent, useDeferredValue, useMemo, useRef, useState } from 'react';
import { useSearchParams } from 'wouter';
import { usePlantState } from '../app/plant-context.tsx';
import type { FindingView, PlantView } from '../engine/views.ts';
import { FindingBlock } from '../parts/finding-block.tsx';
import { Help } from '../parts/help.tsx';
import { usePrinting } from '../parts/use-printing.ts';
import { WeightWord, weightWords } from '../parts/weight-word.tsx';
import { FindingFilter } from './finding-filter.tsx';
import { keptFindings, type Sought } from './kept-findings.ts';
import { stepThrough } from './step-through.ts';
import '../style/findings.css';

/** So many are set at once; the next ones follow when asked for, by hand or by arrow. */
const atOnce = 60;

/** Every finding of the plant, gravest first, each leading to the place it speaks of. */
export function FindingsView() {
  const { plant } = usePlantState();
  const [search, setSearch] = useSearchParams();
  const [shown, setShown] = useState(atOnce);
  const list = useRef<HTMLDivElement>(null);
  const whole = useWhole(plant!);
  const printing = usePrinting();
  const sought: Sought = {
    rule: search.get('rule') ?? '',
    machine: search.get('machine') ?? '',
    text: useDeferredValue(search.get('text') ?? ''),
  };
  const { rule, machine, text } = sought;
  const kept = useMemo(() => keptFindings(whole.findings, { rule, machine, text }), [whole, rule, machine, text]);
  const machines = useMemo(() => new Set(plant!.machines.map((each) => each.name)), [plant]);
  const seek = (change: Partial<Sought>) => {
    setShown(atOnce);
    setSearch(
      (before) => {
        for (const [key, value] of Object.entries(change)) {
          if (value === '') before.delete(key);
          else before.set(key, value);
        }
        return before;
      },
      { replace: true },
    );
  };
  const onKeyDown = (event: KeyboardEvent) => {
    stepThrough(event, list.current, () => setShown((count) => Math.min(kept.length, count + atOnce)));
  };
  const visible = printing ? kept : kept.slice(0, shown);
  return (
    <div className="findings">
      <h1>
        Findings <Help of="a finding">{whatIsAFinding}</Help>
      </h1>
      <p className="quiet">{summary(whole, kept.length, plant!, printing)}</p>
      {whole.findings.length === 0 ? undefined : (
        <FindingFilter
          findings={whole.findings}
          sought={{ ...sought, text: search.get('text') ?? '' }}
          seek={seek}
          enter={() => list.current?.querySelector<HTMLElement>('[data-place]')?.focus()}
        />
      )}
      <div ref={list}>
        {groups(visible).map(([weight, findings]) => (
          <section key={weight} aria-label={weightWords(weight).word}>
            <h2>
              <WeightWord weight={weight} />{' '}
              <span className="quiet count">
                {kept.filter((each) => each.weight === weight).length} · {weightWords(weight).does}
              </span>
            </h2>
            {findings.map((each) => (
              <FindingBlock
                key={each.key}
                finding={each}
                ofMachine={each.machine !== undefined && machines.has(each.machine)}
                onKeyDown={onKeyDown}
              />
            ))}
          </section>
        ))}
      </div>
      {kept.length > shown ? (
        <button type="button" className="more" onClick={() => setShown(shown + atOnce)}>
          Show {Math.min(atOnce, kept.length - shown)} more of {kept.length - shown}
        </button>
      ) : undefined}
      {kept.length === 0 && whole.findings.length > 0 ? (
        <p className="empty">
          None of the {whole.findings.length} findings is of this kind. Take a filter away to see the others.
        </p>
      ) : undefined}
    </div>
  );
}

const whatIsAFinding =
  'A comparison of stated values that did not come out, or could not be made: what was found, against which limit, why it matters and what to do. It says nothing of what nobody stated.';

interface Whole {
  readonly findings: readonly FindingView[];
  readonly stale: boolean;
}

/** While the plant is worked out anew, the list of before stays, so that nothing jumps under the reader. */
function useWhole(plant: PlantView): Whole {
  const before = useRef<readonly FindingView[]>([]);
  if (plant.verdict !== undefined) before.current = plant.findings;
  const stale = plant.verdict === undefined;
  const findings = before.current;
  return useMemo(() => ({ findings, stale }), [findings, stale]);
}

function summary(
  { findings, stale }: Whole,
  kept: number,
  { progress, points, machines }: PlantView,
  printing: boolean,
): string {
  if (stale) {
    const before = findings.length === 0 ? '' : ' Until then the list is that of before the change.';
    return `Being worked out: ${progress.done} of ${progress.of} machines.${before}`;
  }
  const scope = `${counted(points.length, 'point')} on ${counted(machines.length, 'machine')}`;
  if (findings.length === 0) {
    return `Nothing was found at ${scope}: every comparison of stated values with the stated targets came out, and none is open. What nobody stated was not compared.`;
  }
  const seen = kept === findings.length ? '' : `${kept} shown. `;
  const keys = printing ? '' : 'Arrow keys go through them, Enter opens the place.';
  return `${counted(findings.length, 'finding')} at ${scope}, gravest first. ${seen}${keys}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function groups(findings: readonly FindingView[]): readonly (readonly [string, readonly FindingView[]])[] {
  const weights = [...new Set(findings.map((each) => each.weight))];
  return weights.map((weight) => [weight, findings.filter((each) => each.weight === weight)]);
}

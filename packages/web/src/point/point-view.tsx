import '../style/point.css';
import { Fragment, useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import { machineAddress } from '../app/address.ts';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { PointView as PointRecord, TrialView } from '../engine/views.ts';
import { Markup } from '../parts/markup.tsx';
import { OutcomeWord } from '../parts/verdict-word.tsx';
import { OpeningNumber, Why } from '../parts/why.tsx';
import { ChainBoxes } from './chain-boxes.tsx';
import { FirstChain } from './first-chain.tsx';
import { HeldBar } from './held-bar.tsx';
import { JudgementTable } from './judgement-table.tsx';
import { PointFindings } from './point-findings.tsx';
import { PointSheets } from './point-sheets.tsx';
import { SideBySide } from './side-by-side.tsx';
import { SpeedHand } from './speed-hand.tsx';
import { useHands } from './use-hands.ts';
import { useNarrow } from './use-narrow.ts';

/** The measuring point: its amplitude chart under the hand, its chain, and every sheet of it. */
export function PointView({ of }: { readonly of: string }) {
  const point = useAnswer(async (store) => ({ found: await store.engine.point(of) }), `point ${of}`);
  if (point === undefined) return <p className="waiting">Working out the point…</p>;
  if (point.found === undefined) {
    return (
      <>
        <h1>No such point</h1>
        <p>
          The plant has no point <bdi>{of}</bdi>. <Link href="/">See all points</Link>
        </p>
      </>
    );
  }
  return <Bench key={of} point={point.found} />;
}

function Bench({ point }: { readonly point: PointRecord }) {
  const store = usePlantStore();
  const [aside, setAside] = useState<TrialView>();
  const narrow = useNarrow();
  const hands = useHands(point.of, point.trial, narrow || aside !== undefined ? 'narrow' : 'wide');
  const [refused, setRefused] = useState<string>();
  const trial = hands.trial ?? point.trial;
  // The hands let go when the file as kept has been read, not before: the old values would flash up in between.
  const keeping = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the point as newly read is the reason to let go
  useEffect(() => {
    if (!keeping.current) return;
    keeping.current = false;
    hands.letGo();
  }, [point]);
  const keep = async () => {
    const edits = await store.engine.kept(hands.asked);
    keeping.current = true;
    const words = await store.act(`Chain of ${point.name}`, edits);
    setRefused(words);
    if (words !== undefined) keeping.current = false;
  };
  return (
    <article className="point">
      <header className="point-head">
        <p className="crumbs">
          <Link href="/">Points</Link> / <Link href={machineAddress(point.machine)}>{point.machine}</Link>
        </p>
        <h1>
          <bdi>{point.name}</bdi>
        </h1>
        <p className="place">
          <bdi>{point.location}</bdi> · looking <bdi>{point.direction}</bdi>
        </p>
        <p className="point-verdict" aria-live="polite">
          <OutcomeWord outcome={trial.outcome} />{' '}
          <span className="quiet">
            {trial.outcome === 'no chain' ? 'nothing measures here yet' : 'against its '}
            {trial.outcome === 'no chain' ? undefined : (
              <OpeningNumber asked={{ is: 'covered', points: [point.of] }} what="Stated targets">
                {new Set(trial.judgements.flatMap((each) => each.target ?? [])).size} stated targets
              </OpeningNumber>
            )}
          </span>
          {trial.decides.length === 0 ? undefined : (
            <span className="nearest">
              {trial.outcome === 'meets' ? 'Nearest to failing: ' : ''}
              {trial.decides.slice(0, 2).map(({ words, ...judgement }, index) => (
                <Fragment key={`${judgement.rule} ${judgement.target ?? ''} ${judgement.what}`}>
                  {index === 0 ? '' : '; '}
                  {words} <Why of={point.of} {...judgement} trial={hands.asked} />
                </Fragment>
              ))}
              {trial.decides.length > 2 ? `; and ${trial.decides.length - 2} more below` : ''}
            </span>
          )}
        </p>
      </header>
      {trial.outcome === 'no chain' ? <FirstChain point={point} /> : undefined}
      <div className="bench">
        <section className="chart" aria-label="Amplitude chart">
          {aside === undefined ? (
            <Markup className="amplitude" markup={trial.chart} />
          ) : (
            <SideBySide aside={aside} now={trial} close={() => setAside(undefined)} />
          )}
          {point.speed === undefined ? undefined : (
            <SpeedHand machine={point.machine} speed={point.speed} hands={hands} shown={trial.speed} />
          )}
        </section>
        <section className="hands" aria-label="The chain, under the hand">
          <h2>The chain</h2>
          <ChainBoxes point={point} hands={hands} handles={trial.handles} />
          <HeldBar
            hands={hands}
            refused={refused}
            keep={() => void keep()}
            setAside={() => void store.engine.trial({ ...hands.asked, width: 'narrow' }).then(setAside)}
            compares={aside !== undefined}
          />
        </section>
      </div>
      <JudgementTable
        of={point.of}
        asked={hands.asked}
        judgements={trial.judgements}
        before={hands.holds ? point.trial.judgements : undefined}
      />
      <PointFindings findings={point.findings} />
      <PointSheets point={point} />
    </article>
  );
}

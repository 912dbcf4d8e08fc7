import '../style/point.css';
import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import { acceptanceAddress, machineAddress, rehearsalAddress } from '../app/address.ts';
import { useAnswer, usePlantStore } from '../app/plant-context.tsx';
import type { PointView as PointRecord, TrialView } from '../engine/views.ts';
import { usePainted } from '../parts/use-painted.ts';
import { ChainBoxes } from './chain-boxes.tsx';
import { ChartInHand } from './chart-in-hand.tsx';
import { FirstChain } from './first-chain.tsx';
import { HeldBar } from './held-bar.tsx';
import { JudgementTable } from './judgement-table.tsx';
import { PointFindings } from './point-findings.tsx';
import { PointSheets } from './point-sheets.tsx';
import { SideBySide } from './side-by-side.tsx';
import { SpeedHand } from './speed-hand.tsx';
import { useHands, useHeld } from './use-hands.ts';
import { useNarrow } from './use-narrow.ts';
import { VerdictInHand } from './verdict-in-hand.tsx';

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
  const painted = usePainted();
  const hands = useHands(point, narrow || aside !== undefined ? 'narrow' : 'wide');
  const outcome = useHeld(hands, ({ picture }) => picture.outcome);
  const [refused, setRefused] = useState<string>();
  // The hands let go when the file as kept has been read, not before: the old values would flash up in between.
  const keeping = useRef(false);
  useEffect(() => {
    hands.read(point, keeping.current);
    keeping.current = false;
  }, [hands, point]);
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
          <bdi>{point.location}</bdi> · looking <bdi>{point.direction}</bdi> ·{' '}
          <Link href={rehearsalAddress(point.of)}>Rehearse the measurement</Link> ·{' '}
          <Link href={acceptanceAddress(point.of)}>Accept from recordings</Link>
        </p>
        <VerdictInHand point={point} hands={hands} />
      </header>
      {outcome === 'no chain' ? <FirstChain point={point} /> : undefined}
      <div className="bench">
        <section className="chart" aria-label="Amplitude chart">
          {aside === undefined ? (
            <ChartInHand hands={hands} />
          ) : (
            <SideBySide aside={aside} hands={hands} close={() => setAside(undefined)} />
          )}
          {point.speed === undefined ? undefined : (
            <SpeedHand machine={point.machine} speed={point.speed} hands={hands} />
          )}
        </section>
        <section className="hands" aria-label="The chain, under the hand">
          <h2>The chain</h2>
          <ChainBoxes point={point} hands={hands} />
          <HeldBar
            hands={hands}
            refused={refused}
            keep={() => void keep()}
            setAside={() => void store.engine.trial({ ...hands.asked, width: 'narrow' }).then(setAside)}
            compares={aside !== undefined}
          />
        </section>
      </div>
      <JudgementTable point={point} hands={hands} />
      <PointFindings findings={point.findings} />
      {painted ? <PointSheets point={point} /> : <p className="waiting">Setting the sheets…</p>}
    </article>
  );
}

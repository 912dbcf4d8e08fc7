import '../style/point.css';
import '../style/rehearsal.css';
import { useState } from 'react';
import { Link } from 'wouter';
import { machineAddress, pointAddress } from '../app/address.ts';
import type {
  BesideTyped,
  DefectTyped,
  FaultTyped,
  HeardView,
  RehearsalChoices,
  RehearsalView as RehearsalRecord,
} from '../engine/rehearsal/rehearsal-views.ts';
import { ChainBeside } from './chain-beside.tsx';
import { DefectList } from './defect-list.tsx';
import { FaultList } from './fault-list.tsx';
import { Listening } from './listening.tsx';
import { RehearsedChain } from './rehearsed-chain.tsx';
import { type RehearsalHand, useRehearsal } from './use-rehearsal.ts';

/** A measurement rehearsed before anything is bought: a machine made up from its design, seen through one chain or two. */
export function RehearsalView({ of }: { readonly of: string }) {
  const hand = useRehearsal(of);
  if (hand.choices === undefined) return <p className="waiting">Getting ready to rehearse…</p>;
  if (hand.choices === 'none') {
    return (
      <>
        <h1>No such point</h1>
        <p>
          The plant has no point <bdi>{of}</bdi>. <Link href="/">See all points</Link>
        </p>
      </>
    );
  }
  return <Stage key={of} choices={hand.choices} hand={hand} />;
}

function Stage({ choices, hand }: { readonly choices: RehearsalChoices; readonly hand: RehearsalHand }) {
  const [faults, setFaults] = useState<readonly FaultTyped[]>([]);
  const [defects, setDefects] = useState<readonly DefectTyped[]>([]);
  const [beside, setBeside] = useState<BesideTyped>();
  const [course, setCourse] = useState('steady');
  const [state, setState] = useState('highest');
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('highest');
  const [seconds, setSeconds] = useState('4');
  const [rate, setRate] = useState('51200');
  const [seed, setSeed] = useState('1');
  const running = hand.doing !== undefined;
  const start = () =>
    hand.start({
      of: choices.of,
      seconds,
      rate,
      seed,
      course: course === 'steady' ? `steady:${state}` : `${course}:${from}:${to}`,
      faults,
      defects,
      beside,
    });
  return (
    <article className="rehearsal">
      <header className="point-head">
        <p className="crumbs">
          <Link href="/">Points</Link> / <Link href={machineAddress(choices.machine)}>{choices.machine}</Link> /{' '}
          <Link href={pointAddress(choices.of)}>{choices.name}</Link>
        </p>
        <h1>
          Rehearse the measurement at <bdi>{choices.name}</bdi>
        </h1>
        <p className="place">
          Made up from the design, not measured: it shows what the chain would do to such a motion, and what an analyst
          would see of it.
        </p>
      </header>
      {choices.chain === undefined ? (
        <p role="alert">
          A motion is seen through a chain only.{' '}
          <Link href={pointAddress(choices.of)}>Choose one at the point first.</Link>
        </p>
      ) : (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void start();
          }}
        >
          <p>
            Through <bdi>{choices.chain}</bdi>.
          </p>
          <div className="halves">
            <FaultList kinds={choices.faults} typed={faults} change={setFaults} />
            <DefectList
              title="Defects of the chain as installed"
              kinds={choices.defects}
              typed={defects}
              change={setDefects}
            />
          </div>
          <ChainBeside choices={choices} typed={beside} change={setBeside} />
          <fieldset className="typed-list">
            <legend>The record</legend>
            <div className="typed-row">
              <label>
                Speed
                <select value={course} onChange={(event) => setCourse(event.target.value)}>
                  <option value="steady">steady</option>
                  <option value="ramp">changes evenly</option>
                  <option value="run-up">runs up</option>
                  <option value="coast-down">coasts down</option>
                </select>
              </label>
              {course === 'steady' ? (
                <label>
                  State
                  <select value={state} onChange={(event) => setState(event.target.value)}>
                    {choices.states.map((name) => (
                      <option key={name}>{name}</option>
                    ))}
                  </select>
                </label>
              ) : (
                <>
                  <label>
                    from
                    <input value={from} placeholder="600 r/min" onChange={(event) => setFrom(event.target.value)} />
                  </label>
                  <label>
                    to
                    <input value={to} placeholder="highest" onChange={(event) => setTo(event.target.value)} />
                  </label>
                </>
              )}
              <label>
                Length, s
                <input value={seconds} inputMode="decimal" onChange={(event) => setSeconds(event.target.value)} />
              </label>
              <label>
                Samples a second
                <input value={rate} inputMode="numeric" onChange={(event) => setRate(event.target.value)} />
              </label>
              <label title="Another number, another draw of noise and slip; the same number, the same record">
                Seed
                <input value={seed} inputMode="numeric" onChange={(event) => setSeed(event.target.value)} />
              </label>
            </div>
          </fieldset>
          <p className="start">
            <button type="submit" className="main" disabled={running}>
              Rehearse
            </button>{' '}
            {running ? (
              <button type="button" onClick={hand.cancel}>
                Cancel
              </button>
            ) : undefined}{' '}
            <span role="status">{running ? `Now: ${hand.doing}…` : hand.ended}</span>
          </p>
        </form>
      )}
      {hand.made === undefined ? undefined : <Made made={hand.made} files={hand.files} />}
    </article>
  );
}

function Made({ made, files }: { readonly made: RehearsalRecord; readonly files: RehearsalHand['files'] }) {
  const heard: (readonly [string, HeardView])[] = [];
  if (made.source !== undefined) heard.push(['the motion itself', made.source]);
  for (const [index, each] of made.chains.entries()) {
    if (each.heard !== undefined)
      heard.push([`${index === 0 ? 'as measured' : 'as measured beside'}: ${each.name}`, each.heard]);
  }
  return (
    <>
      <h2>What an analyst sees</h2>
      <div className={made.chains.length > 1 ? 'chains two' : 'chains'}>
        {made.chains.map((chain, index) => (
          <RehearsedChain
            // biome-ignore lint/suspicious/noArrayIndexKey: both chains may have the same name
            key={index}
            chain={chain}
            files={(ending) => files(index, ending)}
          />
        ))}
      </div>
      <Listening heard={heard} />
      <h2>What was put in</h2>
      <p>{made.speed}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled by key */}
      <section className="pushed" tabIndex={0} aria-label="What was put in">
        <table>
          <thead>
            <tr>
              <th scope="col">put in</th>
              <th scope="col">as</th>
              <th scope="col">where</th>
              <th scope="col" className="number">
                level
              </th>
            </tr>
          </thead>
          <tbody>
            {made.contents.map((each) => (
              <tr key={`${each.by} ${each.name}`}>
                <th scope="row">
                  <bdi>{each.name}</bdi>
                </th>
                <td>{each.by}</td>
                <td>{each.where}</td>
                <td className="number">{each.level}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {made.assumed.map((each) => (
        <p key={each} className="quiet">
          {each}
        </p>
      ))}
    </>
  );
}

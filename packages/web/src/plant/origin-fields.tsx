import type { Status } from '@soundpost/core';
import type { Origin } from '../engine/origin.ts';

const statuses: Readonly<Record<Status, true>> = {
  measured: true,
  nameplate: true,
  drawing: true,
  certificate: true,
  'data sheet': true,
  assumed: true,
};

/** How many new values are known, and where from: asked once for all of them. */
export function OriginFields(props: {
  readonly origin: Origin;
  readonly change: (origin: Origin) => void;
  /** How many of the values that go have something said of them in the file. */
  readonly losing: number;
}) {
  const { origin, change, losing } = props;
  return (
    <fieldset className="origin-fields">
      <legend>How the new values are known</legend>
      <label>
        <span>Status</span>
        <select value={origin.status} onChange={(event) => change({ ...origin, status: event.target.value })}>
          <option value="">not said</option>
          {Object.keys(statuses).map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      <label className="source">
        <span>Source of these values</span>
        <input
          type="text"
          autoComplete="off"
          value={origin.source}
          placeholder="survey, drawing and sheet, certificate"
          onChange={(event) => change({ ...origin, source: event.target.value })}
        />
      </label>
      <p className={losing > 0 ? 'losing' : 'quiet'}>
        {losing === 0
          ? 'Written beside every new length, temperature, location and direction; of parts nothing is said.'
          : `! Of ${losing} ${losing === 1 ? 'value' : 'values'} the file says how ${losing === 1 ? 'it is' : 'they are'} known. That was said of the old ${losing === 1 ? 'value' : 'values'} and goes with ${losing === 1 ? 'it' : 'them'}.`}
      </p>
    </fieldset>
  );
}

/** What was said of the value that goes, and what will be said of the one that comes. */
export function OriginNote({ said, origin }: { readonly said: string; readonly origin: Origin | undefined }) {
  const next = [origin?.status ?? '', origin?.source.trim() ?? ''].filter((each) => each !== '').join(', ');
  if (said === '' && next === '') return undefined;
  return (
    <span className="origin-note">
      {said === '' ? undefined : (
        <>
          was: <bdi>{said}</bdi>;{' '}
        </>
      )}
      now: {next === '' ? 'nothing said of it' : <bdi>{next}</bdi>}
    </span>
  );
}

import type {
  AcceptanceChoices,
  ChannelFound,
  ChannelTyped,
  FileFound,
  RecordingTyped,
} from '../engine/acceptance/acceptance-views.ts';

export function begun(file: FileFound, point: string): RecordingTyped {
  return {
    file: file.name,
    occasion: '',
    fields: {},
    rate: '',
    channels: file.channels.map(({ number }) => ({
      number,
      point: file.channels.length === 1 ? point : '',
      unit: '',
      gain: '',
      coupling: '',
      sensitivity: '',
      speed: '',
    })),
  };
}

/** What a recording does not say itself: on what occasion it was made, which channel is which point, and what is asked. */
export function RecordingForm({
  file,
  choices,
  typed,
  change,
}: {
  readonly file: FileFound;
  readonly choices: AcceptanceChoices;
  readonly typed: RecordingTyped;
  change(typed: RecordingTyped): void;
}) {
  const occasion = choices.occasions.find((each) => each.kind === typed.occasion);
  const asksRate = file.channels.some((each) => each.asks.includes('rate'));
  return (
    <fieldset className="typed-list">
      <legend>
        <bdi>{file.name}</bdi>
      </legend>
      <p className="quiet">{file.words}</p>
      <div className="typed-row">
        <label>
          Made on which occasion
          <select
            value={typed.occasion}
            onChange={(event) => change({ ...typed, occasion: event.target.value, fields: {} })}
          >
            <option value="">say which</option>
            {choices.occasions.map((each) => (
              <option key={each.kind} value={each.kind}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        {occasion?.fields.map(({ key, meaning, example, options, optional }) => {
          const put = (value: string) => change({ ...typed, fields: { ...typed.fields, [key]: value } });
          return (
            // biome-ignore lint/a11y/noLabelWithoutControl: either of two controls stands in it
            <label key={key}>
              {meaning}
              {optional ? ' (may be left out)' : ''}
              {options.length > 0 ? (
                <select value={typed.fields[key] ?? ''} onChange={(event) => put(event.target.value)}>
                  <option value="">not said</option>
                  {options.map((each) => (
                    <option key={each}>{each}</option>
                  ))}
                </select>
              ) : (
                <input
                  value={typed.fields[key] ?? ''}
                  placeholder={example}
                  onChange={(event) => put(event.target.value)}
                />
              )}
            </label>
          );
        })}
        {asksRate ? (
          <label>
            Samples a second (the file does not say)
            <input
              value={typed.rate}
              placeholder="51.2 kHz"
              onChange={(event) => change({ ...typed, rate: event.target.value })}
            />
          </label>
        ) : undefined}
      </div>
      {occasion === undefined ? undefined : <p className="quiet">{occasion.how}</p>}
      {file.channels.map((found, index) => (
        <ChannelForm
          key={found.number}
          found={found}
          points={choices.points}
          typed={typed.channels[index]!}
          change={(channel) => change({ ...typed, channels: typed.channels.with(index, channel) })}
        />
      ))}
    </fieldset>
  );
}

function ChannelForm({
  found,
  points,
  typed,
  change,
}: {
  readonly found: ChannelFound;
  readonly points: readonly string[];
  readonly typed: ChannelTyped;
  change(typed: ChannelTyped): void;
}) {
  const text = (fact: 'unit' | 'gain' | 'sensitivity' | 'speed', words: string, example: string) => (
    <label>
      {words}
      <input
        value={typed[fact]}
        placeholder={example}
        onChange={(event) => change({ ...typed, [fact]: event.target.value })}
      />
    </label>
  );
  return (
    <div className="typed-row">
      <label>
        Channel {found.number} is
        <select value={typed.point} onChange={(event) => change({ ...typed, point: event.target.value })}>
          <option value="">left out</option>
          {points.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      {typed.point === '' ? undefined : (
        <>
          {found.asks.includes('unit') ? text('unit', 'Unit of its numbers (not in the file)', 'V') : undefined}
          {found.asks.includes('gain') ? text('gain', 'Gain, 1 where nothing amplifies', '1') : undefined}
          {found.asks.includes('coupling') ? (
            <label>
              Coupling (not in the file)
              <select value={typed.coupling} onChange={(event) => change({ ...typed, coupling: event.target.value })}>
                <option value="">not known</option>
                <option>direct</option>
                <option>alternating</option>
              </select>
            </label>
          ) : undefined}
          {text('sensitivity', 'Sensitivity told to the recorder', '100 mV/g')}
          {text('speed', 'Speed of the shaft', '1486 r/min')}
          <p className="quiet says">{found.says}</p>
        </>
      )}
    </div>
  );
}

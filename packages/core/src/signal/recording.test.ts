import { expect, test } from 'vitest';
import { notStated, stated } from '../quantity/stated.ts';
import { questionsOf, type RecordedChannel, type Recording } from './recording.ts';

const channel = (of: string, told: Partial<RecordedChannel> = {}): RecordedChannel => ({
  of,
  name: stated(of),
  rate: notStated,
  unit: notStated,
  sensitivity: stated('100 mV/g'),
  gain: stated('1'),
  coupling: stated('AC'),
  speed: stated('1486 r/min'),
  samples: 10,
  complex: false,
  heard: {},
  ...told,
});

const recording = (channels: readonly RecordedChannel[], start = '2026-11-25 17:04:32Z'): Recording => ({
  form: 'invented',
  channels,
  start: start === '' ? notStated : stated(start),
  remarks: [],
  findings: [],
});

test('what no channel says is asked once; what some do not say is asked of them', () => {
  const two = recording([channel('A', { heard: { unit: "the file says 'Pounds'" } }), channel('B')]);
  expect(questionsOf(two)).toEqual([
    { of: 'both channels', what: 'sampling rate' },
    { of: 'A', what: "unit of the numbers (the file says 'Pounds')" },
    { of: 'B', what: 'unit of the numbers' },
  ]);
});

test('many channels are not named one by one', () => {
  const channels = Array.from({ length: 10 }, (_, index) =>
    channel(`C${index}`, index === 0 ? { gain: notStated } : {}),
  );
  const some = channels.map((each, index) => (index < 7 ? { ...each, coupling: notStated } : each));
  const asked = questionsOf(recording(some));
  expect(asked).toContainEqual({ of: 'C0', what: 'gain' });
  expect(asked).toContainEqual({ of: 'C0; C1; C2; C3 and 3 more', what: 'coupling, AC or DC' });
});

test('a start without its zone is a local time of nobody knows where', () => {
  const zoneOf = (start: string) =>
    questionsOf(recording([channel('A')], start)).filter(({ of }) => of === 'the recording');
  expect(zoneOf('2026-11-25 17:04:32')).toEqual([{ of: 'the recording', what: 'time zone of its start' }]);
  expect(zoneOf('2026-11-25T17:04:32+01:00')).toEqual([]);
  expect(zoneOf('')[0]!.what).toContain('date, time and time zone');
});

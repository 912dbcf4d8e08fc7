import { notStated, type RecordedChannel } from '@soundpost/core';

/** A channel that says nothing of itself: what a file does say is put over it. */
export function silentChannel(index: number): RecordedChannel {
  return {
    of: `channel ${index + 1}`,
    name: notStated,
    rate: notStated,
    unit: notStated,
    sensitivity: notStated,
    gain: notStated,
    coupling: notStated,
    speed: notStated,
    samples: undefined,
    complex: false,
    heard: {},
  };
}

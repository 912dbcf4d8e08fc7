import { source } from './source.ts';

export const dunkerley = source({
  id: 'dunkerley',
  title: "Dunkerley's estimate of a combined resonance, any vibration textbook",
  how: 'from memory',
  note: '1/f2 = 1/f12 + 1/f22; never above the true value, so pessimistic.',
});

import { source } from './source.ts';

export const beltPractice = source({
  id: 'belt-practice',
  title: 'Belt-pass frequency as printed in trade notes',
  how: 'second-hand',
  note: 'f = pi D n / L; one public table prints a row with a misprinted speed.',
});

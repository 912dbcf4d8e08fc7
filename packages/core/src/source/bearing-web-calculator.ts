import { source } from './source.ts';

export const bearingWebCalculator = source({
  id: 'bearing-web-calculator',
  title: 'Example row of a public web calculator of bearing frequencies',
  how: 'read',
  note: 'Low authority, but the row is exact: 12, 96, 144, 72 Hz.',
});

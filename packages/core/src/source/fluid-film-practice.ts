import { source } from './source.ts';

export const fluidFilmPractice = source({
  id: 'fluid-film-practice',
  title: 'Oil-whirl band of plain bearings, 0.40 to 0.48 of shaft speed',
  how: 'second-hand',
  note: '0.42 to 0.48 is also printed; the wider band is used.',
});

import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { elasticMount } from './mount-kind.ts';

export const quickLock = elasticMount({
  kind: 'quick-lock',
  name: 'Quarter-turn coupling on a fixed pad',
  cautions: [
    'Dirt between the faces costs half the band: wipe both before each reading.',
    'The same coupling force each time, or the trend jumps.',
  ],
  sources: [clause(tradePractice)],
});

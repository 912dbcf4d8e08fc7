import { broch1984 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { elasticMount } from './mount-kind.ts';

export const handProbe = elasticMount({
  kind: 'hand-probe',
  name: 'Hand-held probe tip',
  cautions: [
    'The hand is part of the mount: angle and pressure change the reading.',
    'Never near rotating parts; keep sleeves and cable clear.',
  ],
  sources: [clause(broch1984)],
});

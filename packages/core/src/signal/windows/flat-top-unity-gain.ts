import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { cosineSum, windowKind } from './window.ts';

export const flatTopUnityGain = windowKind({
  kind: 'flat-top-unity-gain',
  name: 'Flat-top with a mean of one',
  use: 'as the five-term flat-top; its weights are not scaled to a top of one',
  weight: cosineSum(1, 1.933, 1.286, 0.388, 0.0322),
  sources: [clause(tradePractice, 'analyser practice')],
});

import { expect, test } from 'vitest';
import { changed, parts, point, transducer } from '../../../../evidence/bench.ts';
import { measuringChain } from '../chain/chain.ts';
import { type Exposure, exposures } from '../demand/surroundings.ts';
import { stated } from '../quantity/index.ts';
import { pointLife } from './point-life.ts';

const chainOf = (sealing: string) => measuringChain(parts({ transducer: changed(transducer('ACC-100'), { sealing }) }));
const place = (exposure: Exposure) => {
  const bare = point({});
  const { surroundings } = bare;
  return {
    ...bare,
    surroundings: { ...surroundings, values: { ...surroundings.values, exposure: stated(exposure, exposure) } },
  };
};

test('negative: nothing is feared without a chain, or for a hermetic body however wet', () => {
  for (const exposure of exposures) {
    expect(pointLife(place(exposure), undefined)).toEqual([]);
    expect(pointLife(place(exposure), chainOf('hermetic'))).toEqual([]);
  }
});

test('law: a mated connector is feared in the wet only; an unknown sealing is named, never taken for sound', () => {
  const names = (exposure: Exposure) =>
    pointLife(place(exposure), chainOf('IP67 (mated)')).map((each) => each.effect.name);
  expect(names('dry')).toEqual([]);
  expect(names('washed down')).toEqual(['mated-connector-in-the-wet']);
  const unknown = pointLife(place('immersed'), chainOf('unknown'));
  expect(unknown.length).toBeGreaterThan(0);
  for (const { missing } of unknown) expect(missing).toMatchObject([{ what: 'sealing' }]);
});

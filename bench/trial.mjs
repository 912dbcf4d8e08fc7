import { readFileSync } from 'node:fs';
import { bundled } from './bundled.mjs';
import { genericCatalogue, pump, pumpPoint, wideCatalogue } from './plants.mjs';
import { spread } from './spread.mjs';

const warming = 200;
const moves = 300;

/** What one move of a hand costs without a browser: a trial as the page asks for it. */
export async function measured() {
  const { Engine } = await bundled('engine/engine.ts');
  const rows = {};
  for (const [of, text] of [
    ['generic catalogue', readFileSync(genericCatalogue, 'utf8')],
    ['400 transducers', wideCatalogue(400)],
  ]) {
    const engine = new Engine();
    engine.open({ path: 'plant.yaml', text: pump(), catalogues: { generic: { path: 'generic.yaml', text } } });
    const point = engine.point(pumpPoint);
    const key = (what) => point.trial.handles.find((each) => each.what === what && !each.of.startsWith('target')).key;
    const { low, high } = point.speed;
    const hands = {
      sensitivity: (share) => ({ moved: { [key('sensitivity')]: share } }),
      'cable length': (share) => ({ moved: { [key('length')]: share } }),
      speed: (share) => ({ speed: low + ((high - low) * (share + 1)) / 2 }),
    };
    for (const [hand, moved] of Object.entries(hands)) {
      const durations = [];
      for (let move = 0; move < warming + moves; move++) {
        const asked = { of: pumpPoint, moved: {}, parts: {}, speed: undefined, ...moved(Math.sin(move)) };
        const began = performance.now();
        engine.trial(asked);
        if (move >= warming) durations.push(performance.now() - began);
      }
      rows[`${hand}, ${of}`] = spread(durations);
    }
  }
  return { unit: 'ms for one move', moves, rows };
}

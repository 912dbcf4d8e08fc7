import { expose } from 'comlink';
import type { Engine } from './engine.ts';
import { FirstEngine } from './first-engine.ts';

const first = new FirstEngine();
let loaded: Promise<Engine> | undefined;

/** The whole engine, on the plant the first one has open; loaded once, and again where that failed. */
function whole(): Promise<Engine> {
  loaded ??= import('./engine.ts').then(
    ({ Engine: Whole }) => new Whole(first),
    (error: unknown) => {
      loaded = undefined;
      throw error;
    },
  );
  return loaded;
}

type Answering = Readonly<Record<string, (...asked: unknown[]) => unknown>>;

/** Answers by the first engine where it can, by the whole one where it must. */
const answering = new Proxy(
  {},
  {
    get: (_, name: string) => {
      const own = (first as unknown as Answering)[name];
      if (typeof own === 'function') return own.bind(first);
      return async (...asked: unknown[]) => {
        const engine = (await whole()) as unknown as Answering;
        const answer = engine[name];
        if (answer === undefined) throw new Error(`the engine has no answer called ${name}`);
        return answer.apply(engine, asked);
      };
    },
  },
);

expose(answering);

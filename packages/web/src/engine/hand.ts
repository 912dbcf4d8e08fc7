import { type HeldPoint, unpacked } from './held-point.ts';
import { pictureView, tried, triedSubject } from './trial.ts';
import type { PictureView, TrialAsked } from './views.ts';

/**
 * A point on the page itself, so that the picture follows the hand in the same frame: the same functions the engine
 * answers with, on the parts that were handed over.
 */
export class Hand {
  readonly #held: HeldPoint;

  constructor(held: HeldPoint) {
    this.#held = unpacked(held);
  }

  /** Nothing where the hand asks for a part that was not handed over. */
  picture(asked: TrialAsked): PictureView | undefined {
    const { plant, machine, point, showing } = this.#held;
    const { transducer } = asked.parts;
    if (transducer !== undefined && !plant.catalogue.transducers.some((each) => each.name === transducer)) return;
    const held = tried(triedSubject(plant, machine, point, asked), plant);
    return pictureView(machine, point, held, asked, showing);
  }
}

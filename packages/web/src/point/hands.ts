import type { Hand } from '../engine/hand.ts';
import type { PlantStore } from '../engine/plant-store.ts';
import type { PictureView, PlaceView, PointView, TrialAsked, TrialView } from '../engine/views.ts';

export type ChartWidth = 'wide' | 'narrow';

/** All that is told of a chain, and of which question it is the answer. */
export interface Told {
  readonly asked: TrialAsked;
  readonly trial: TrialView;
}

/** Milliseconds a hand must rest before all is told of what it holds. */
const rest = 120;
/** Milliseconds in which the first picture is painted, before anything else is loaded. */
const painting = 50;
/** So many pictures make the browser compile what draws them. */
const warming = 12;

function nothingHeld(of: string): TrialAsked {
  return { of, moved: {}, parts: {}, speed: undefined };
}

/**
 * What the hands hold at a point, and what the chain then is. The picture is drawn on the page within the frame of the
 * move; all else is told by the engine once the hand rests. Until the page can draw by itself, and for a part that was
 * not handed over, the engine draws too: then only the newest question is kept, so that nothing queues behind the hand.
 */
export class Hands {
  asked: TrialAsked;
  picture: PictureView;
  told: Told;
  readonly #store: PlantStore;
  readonly #listeners = new Set<() => void>();
  #width: ChartWidth = 'wide';
  #hand: Hand | undefined;
  /** Counts what was handed over; what comes of an older question is late. */
  #handing = 0;
  #drawn = false;
  #behind = false;
  #telling = false;
  #tellNext = false;
  #resting: ReturnType<typeof setTimeout> | undefined;

  constructor(store: PlantStore, point: PointView) {
    this.#store = store;
    this.asked = nothingHeld(point.of);
    this.picture = point.trial;
    this.told = { asked: this.asked, trial: point.trial };
  }

  readonly subscribe = (listener: () => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  get holds(): boolean {
    return holdsParts(this.asked);
  }

  move(key: string, decades: number): void {
    this.#hold({ ...this.asked, moved: { ...this.asked.moved, [key]: decades } });
  }

  place(place: PlaceView['place'], name: string): void {
    this.#hold({ ...this.asked, parts: { ...this.asked.parts, [place]: name } });
    if (place === 'transducer') this.#handOver();
  }

  line(inLine: readonly string[]): void {
    this.#hold({ ...this.asked, inLine });
  }

  run(speed: number | undefined): void {
    this.#hold({ ...this.asked, speed });
  }

  letGo(): void {
    this.#hold(nothingHeld(this.asked.of));
    this.#tell();
  }

  /** The point as newly read from the file, or shown in other units. */
  read(point: PointView, letGo: boolean): void {
    if (letGo) this.asked = nothingHeld(point.of);
    this.#hand = undefined;
    this.#handOver();
    if (this.holds || this.asked.speed !== undefined || this.#width !== 'wide') this.#tell();
    else {
      this.picture = point.trial;
      this.told = { asked: this.asked, trial: point.trial };
      this.#notify();
    }
  }

  setWidth(width: ChartWidth): void {
    if (width === this.#width) return;
    this.#width = width;
    this.#draw();
  }

  /** What is asked, at the width it is shown at. */
  get #question(): TrialAsked {
    return { ...this.asked, width: this.#width };
  }

  #hold(asked: TrialAsked): void {
    this.asked = asked;
    this.#store.touched();
    if (this.#drawn) {
      this.#behind = true;
      this.#notify();
      return;
    }
    this.#drawn = true;
    requestAnimationFrame(() => {
      this.#drawn = false;
      if (this.#behind) this.#draw();
    });
    this.#draw();
  }

  #draw(): void {
    this.#behind = false;
    const picture = this.#hand?.picture(this.#question);
    clearTimeout(this.#resting);
    if (picture === undefined) this.#tell();
    else {
      this.picture = picture;
      this.#resting = setTimeout(() => this.#tell(), rest);
    }
    this.#notify();
  }

  #tell(): void {
    this.#tellNext = true;
    if (!this.#telling) void this.#tellAll();
  }

  async #tellAll(): Promise<void> {
    this.#telling = true;
    try {
      while (this.#tellNext) {
        this.#tellNext = false;
        const { asked } = this;
        const trial = await this.#store.engine.trial(this.#question);
        if (trial === undefined) continue;
        this.told = { asked, trial };
        if (this.#hand === undefined || asked === this.asked) this.picture = trial;
        this.#notify();
      }
    } finally {
      this.#telling = false;
    }
  }

  /** Brings the point onto the page once the first picture stands; where that fails the engine goes on drawing. */
  #handOver(): void {
    this.#handing++;
    const handing = this.#handing;
    const { of, parts } = this.asked;
    const bring = async () => {
      const [{ Hand }, held] = await Promise.all([
        import('../engine/hand.ts'),
        this.#store.engine.held(of, parts.transducer),
      ]);
      if (held === undefined || handing !== this.#handing) return;
      this.#hand = new Hand(held);
      this.#warm(this.#hand, warming);
    };
    requestAnimationFrame(() => setTimeout(() => void bring().catch(() => {}), painting));
  }

  #warm(hand: Hand, times: number): void {
    if (times === 0 || hand !== this.#hand) return;
    whenIdle(() => {
      hand.picture(this.#question);
      this.#warm(hand, times - 1);
    });
  }

  #notify(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Whether it is another chain than the file states, at whatever speed. */
export function holdsParts({ moved, parts, inLine }: TrialAsked): boolean {
  return Object.values(moved).some((each) => each !== 0) || Object.keys(parts).length > 0 || inLine !== undefined;
}

function whenIdle(act: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(act);
  else setTimeout(act, 50);
}

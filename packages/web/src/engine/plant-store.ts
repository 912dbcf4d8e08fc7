import type { Edit, Journal, PlantOnDisk, Step } from '@soundpost/server/protocol';
import { type Remote, wrap } from 'comlink';
import { fetchedPlant, saved, watchedChanges } from './disk.ts';
import type { Engine } from './engine.ts';
import type { PlantView, ShowingChoice } from './views.ts';

/** Whether what is on the screen is in the file. */
export type Saving = 'saved' | 'saving' | 'offline' | 'stranger' | 'conflict';

export interface ConflictView {
  readonly path: string;
  readonly mine: string | undefined;
  readonly theirs: string | undefined;
}

export interface PlantState {
  readonly plant: PlantView | undefined;
  /** Why the file cannot be read, in the words of its reader. */
  readonly refused: string | undefined;
  readonly saving: Saving;
  /** Changes of this page that another program's changes took the place of. */
  readonly conflicts: readonly ConflictView[];
  readonly undo: string | undefined;
  readonly redo: string | undefined;
  readonly showing: ShowingChoice;
  /** Counts up with every text that was read; what was asked of an older one is stale. */
  readonly generation: number;
  readonly notice: string | undefined;
  /** Whether the work on the rest of the plant was stopped before it was done. */
  readonly stopped: boolean;
}

const usual: ShowingChoice = { units: 'metric', decimal: 'point', detector: 'stated' };

/** The history another wrote, with the steps of this page it does not have yet at its end: both can be undone. */
function withOwnSteps(theirs: Journal, own: Journal): Journal {
  const known = new Set(theirs.steps.map(({ at, label }) => `${at} ${label}`));
  const added = own.steps.slice(0, own.done).filter(({ at, label }) => !known.has(`${at} ${label}`));
  if (added.length === 0) return theirs;
  const steps = [...theirs.steps.slice(0, theirs.done), ...added];
  return { steps, done: steps.length };
}

/** Milliseconds a hand must rest before the rest of the plant is worked on. */
const pauseForHands = 400;

/** Milliseconds in which a first picture is painted; what is loaded for later waits so long. */
const afterPicture = 2000;

/** The open plant as the page sees it: one state, replaced as a whole, and the acts that change it. */
export class PlantStore {
  readonly engine: Remote<Engine>;
  readonly #another: () => Worker;
  #state: PlantState;
  #text = '';
  #disk: PlantOnDisk | undefined;
  #journal: Journal = { steps: [], done: 0 };
  #listeners = new Set<() => void>();
  #queue: Promise<void> = Promise.resolve();
  #working = false;
  #workWanted = false;
  #touched = Number.NEGATIVE_INFINITY;

  constructor(another: () => Worker, showing: ShowingChoice = usual) {
    this.#another = another;
    this.engine = wrap<Engine>(another());
    this.#state = {
      plant: undefined,
      refused: undefined,
      saving: 'saved',
      conflicts: [],
      undo: undefined,
      redo: undefined,
      showing,
      generation: 0,
      notice: undefined,
      stopped: false,
    };
  }

  readonly subscribe = (listener: () => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly snapshot = () => this.#state;

  get text(): string {
    return this.#text;
  }

  /** The file as it stands on the disk, as far as this page knows. */
  get disk(): PlantOnDisk {
    if (this.#disk === undefined) throw new Error('no plant is open');
    return this.#disk;
  }

  async open(): Promise<void> {
    await this.engine.show(this.#state.showing);
    const disk = await fetchedPlant();
    this.#disk = disk;
    this.#journal = disk.journal;
    this.#text = disk.text;
    this.#taken(await this.engine.open(disk));
    watchedChanges((hash) => void this.#changedOnDisk(hash));
  }

  async show(showing: ShowingChoice): Promise<void> {
    this.#put({ showing });
    await this.engine.show(showing);
    this.#put({ plant: await this.engine.plant(), generation: this.#state.generation + 1 });
  }

  /** Makes edits as one act that can be undone. Resolves to why they cannot be made, or to nothing. */
  act(label: string, edits: readonly Edit[]): Promise<string | undefined> {
    return this.#inTurn(async () => {
      const made = await this.engine.edited(this.#text, edits);
      const opened = await this.engine.read(made.text);
      if ('refused' in opened) return opened.refused.message;
      const step: Step = { label, edits, undo: made.undo, at: new Date().toISOString() };
      const steps = [...this.#journal.steps.slice(0, this.#journal.done), step];
      this.#journal = { steps, done: steps.length };
      this.#text = made.text;
      this.#taken(opened);
      await this.#save();
      return undefined;
    });
  }

  undo(): Promise<string | undefined> {
    return this.#step(-1);
  }

  redo(): Promise<string | undefined> {
    return this.#step(1);
  }

  /** A hand moves: what is worked out in the background waits until it rests. */
  touched(): void {
    this.#touched = performance.now();
  }

  /** Stops working the rest of the plant out; what is asked for by itself is answered all the same. */
  stop(): void {
    this.#put({ stopped: true });
  }

  goOn(): void {
    this.#put({ stopped: false });
    void this.#workThrough();
  }

  /** The machines that are in sight are worked out before the others. */
  inSight(machines: readonly string[]): void {
    if (this.#state.plant !== undefined) void this.engine.prefer(machines);
  }

  notice(notice: string | undefined): void {
    this.#put({ notice });
  }

  /**
   * Asks what takes long in a worker of its own, so that hands are answered meanwhile. `stop` ends it at once; the
   * answer is then never given.
   */
  aside<T>(ask: (engine: Remote<Engine>) => Promise<T>): { readonly answer: Promise<T>; stop(): void } {
    return this.apart(async (engine) => {
      await engine.open({ ...this.#disk!, text: this.#text });
      return ask(engine);
    });
  }

  /** The same for what needs no plant. */
  apart<T>(ask: (engine: Remote<Engine>) => Promise<T>): { readonly answer: Promise<T>; stop(): void } {
    const worker = this.#another();
    const engine = wrap<Engine>(worker);
    const answer = (async () => {
      await engine.show(this.#state.showing);
      const given = await ask(engine);
      worker.terminate();
      return given;
    })();
    return { answer, stop: () => worker.terminate() };
  }

  settleConflicts(): void {
    this.#put({ conflicts: [], saving: 'saved' });
  }

  #step(direction: -1 | 1): Promise<string | undefined> {
    return this.#inTurn(async () => {
      const { steps, done } = this.#journal;
      const step = direction < 0 ? steps[done - 1] : steps[done];
      if (step === undefined) return undefined;
      const made = await this.engine.edited(this.#text, direction < 0 ? step.undo : step.edits);
      const opened = await this.engine.read(made.text);
      if ('refused' in opened) return opened.refused.message;
      this.#journal = { steps, done: done + direction };
      this.#text = made.text;
      this.#taken(opened);
      this.notice(`${direction < 0 ? 'Undone' : 'Done again'}: ${step.label}`);
      await this.#save();
      return undefined;
    });
  }

  get #unsaved(): boolean {
    return this.#text !== this.#disk?.text;
  }

  #inTurn<T>(act: () => Promise<T>): Promise<T> {
    const result = this.#queue.then(act);
    this.#queue = result.then(
      () => undefined,
      () => undefined,
    );
    return result;
  }

  async #save(): Promise<void> {
    this.#put({ saving: 'saving' });
    const base = this.#disk!;
    const answer = await saved({ base: base.hash, text: this.#text, journal: this.#journal }).catch(
      (error: unknown) => {
        this.notice(error instanceof Error ? error.message : String(error));
        return 'offline' as const;
      },
    );
    if (answer === 'offline' || answer === 'stranger') {
      this.#put({ saving: answer });
      setTimeout(() => void this.#inTurn(() => this.#saveIfUnsaved()), 3000);
    } else if ('text' in answer) {
      const { text, hash, journal } = await fetchedPlant();
      this.#journal = withOwnSteps(journal, this.#journal);
      await this.#merge(text, hash);
    } else {
      this.#disk = { ...base, text: this.#text, hash: answer.hash };
      this.#put({ saving: 'saved' });
    }
  }

  async #saveIfUnsaved(): Promise<void> {
    if (this.#state.saving === 'offline' || this.#state.saving === 'stranger') await this.#save();
  }

  /** Another program changed the file: its changes and ours together; where both changed one value, theirs stands and ours is shown. */
  async #merge(theirs: string, hash: string): Promise<void> {
    const { text, conflicts } = await this.engine.merged(this.#disk!.text, this.#text, theirs);
    const opened = await this.engine.read(text);
    this.#disk = { ...this.#disk!, text: theirs, hash };
    if ('refused' in opened) {
      this.#put({ refused: opened.refused.message });
      return;
    }
    this.#text = text;
    const shown = conflicts.map(({ path, mine, theirs: other }) => ({ path: path.join(' / '), mine, theirs: other }));
    this.#taken(opened);
    this.#put({ conflicts: shown, notice: 'Another program changed the file; its changes were taken in.' });
    if (text !== theirs) await this.#save();
    else this.#put({ saving: 'saved' });
    if (shown.length > 0 && this.#state.saving === 'saved') this.#put({ saving: 'conflict' });
  }

  async #changedOnDisk(hash: string): Promise<void> {
    await this.#inTurn(async () => {
      if (hash === this.#disk?.hash) return;
      const disk = await fetchedPlant();
      if (disk.hash === this.#disk?.hash) return;
      this.#journal = withOwnSteps(disk.journal, this.#unsaved ? this.#journal : disk.journal);
      await this.#merge(disk.text, disk.hash);
    });
  }

  #taken(opened: { refused: { message: string } } | { plant: PlantView }): void {
    const { steps, done } = this.#journal;
    const history = { undo: steps[done - 1]?.label, redo: steps[done]?.label };
    if ('refused' in opened) this.#put({ refused: opened.refused.message, ...history });
    else {
      this.#put({
        plant: opened.plant,
        refused: undefined,
        stopped: false,
        generation: this.#state.generation + 1,
        ...history,
      });
      void this.#workThrough();
    }
  }

  /** Lets the worker work the plant out machine by machine; what the page asks in between is answered first. */
  async #workThrough(): Promise<void> {
    this.#workWanted = true;
    if (this.#working) return;
    this.#working = true;
    // A plant may be taken while the last of the one before is handed over: it wants working through as well.
    while (this.#workWanted) {
      this.#workWanted = false;
      try {
        await this.#workedThrough();
      } catch (error) {
        // What is wrong with a machine far down may be found only after the first ones are on the screen.
        this.#put({ refused: error instanceof Error ? error.message : String(error) });
      }
    }
    this.#working = false;
  }

  async #workedThrough(): Promise<void> {
    let shown = performance.now();
    // The rest of the engine is there before the server may go away, and after the first picture.
    setTimeout(() => void this.engine.ready().catch(() => {}), afterPicture);
    while (!this.#state.stopped && (await this.engine.advance())) {
      while (performance.now() - this.#touched < pauseForHands) await new Promise((later) => setTimeout(later, 100));
      // To hand over the rows of a large plant takes the page a moment: the more there are, the seldomer.
      if (performance.now() - shown > Math.max(400, (this.#state.plant?.points.length ?? 0) / 4)) {
        this.#put({ plant: await this.engine.plant() });
        shown = performance.now();
      }
    }
    this.#put({ plant: await this.engine.plant() });
  }

  #put(change: Partial<PlantState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}

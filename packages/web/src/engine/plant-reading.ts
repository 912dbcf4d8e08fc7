import { type Plant, type PlantMachine, Refusal } from '@soundpost/core';
import { applyEdits } from '@soundpost/files';
import type { Edit } from '@soundpost/server/protocol';
import { type MachineText, type MachineTexts, machineTexts, pieceInPlace, pieceOf } from './machine-texts.ts';
import { type CatalogueTexts, plantFrom } from './read-plant.ts';

/** A machine as read, with the text it was read from: the same key is the same machine. */
export interface ReadMachine {
  readonly key: string;
  readonly machine: PlantMachine;
}

/** So many machines are read in one piece; the lines around them are read once for each piece. */
const together = 8;

/**
 * A plant file read machine by machine, so that thousands of points are there as they are read, and an edit reads the
 * one machine it is in. What cannot be cut is read as a whole. Everything throws Refusal.
 */
export class PlantReading {
  readonly #path: string;
  readonly #catalogues: CatalogueTexts;
  #text = '';
  #cut: MachineTexts | undefined;
  /** One for each machine of the cut; made once, since each is as long as its text. */
  #keys: readonly string[] = [];
  #read = new Map<string, PlantMachine>();
  #whole: Plant | undefined;
  #pending: number[] = [];

  constructor(path: string, catalogues: CatalogueTexts) {
    this.#path = path;
    this.#catalogues = catalogues;
  }

  /** Takes a text and reads what is new in it for about so long; the rest waits for `more`. */
  take(text: string, milliseconds: number): void {
    const cut = machineTexts(text);
    const kept = new Map<string, PlantMachine>();
    const pending: number[] = [];
    const keys = (cut?.machines ?? []).map((each) => keyOf(cut!, each));
    for (const [index, key] of keys.entries()) {
      const before = this.#read.get(key);
      if (before === undefined) pending.push(index);
      else kept.set(key, before);
    }
    const sameAround = cut !== undefined && this.#cut?.before === cut.before && this.#cut.behind === cut.behind;
    const until = performance.now() + milliseconds;
    const whole = sameAround ? this.#whole : undefined;
    // Only what was read without a refusal takes the place of what was there.
    const next = new Reading(this.#path, this.#catalogues, text, cut, keys, kept, pending, whole);
    next.advance();
    while (next.pending.length > 0 && performance.now() < until) next.advance();
    this.#text = text;
    this.#cut = cut;
    this.#keys = keys;
    this.#read = next.read;
    this.#whole = next.whole;
    this.#pending = next.pending;
  }

  /** Reads a piece more; false where nothing is left. */
  more(name?: string): boolean {
    if (this.#pending.length === 0) return false;
    const wanted = name === undefined ? -1 : this.#pending.findIndex((at) => this.#cut!.machines[at]!.name === name);
    if (wanted > 0) this.#pending.unshift(...this.#pending.splice(wanted, 1));
    const next = new Reading(
      this.#path,
      this.#catalogues,
      this.#text,
      this.#cut,
      this.#keys,
      this.#read,
      this.#pending,
      this.#whole,
    );
    next.advance();
    this.#whole = next.whole;
    return true;
  }

  /** The machine a point belongs to, read or not: `P-301` of `P-301/drive-end`. */
  ownerOf(point: string): string | undefined {
    const names = this.#cut?.machines ?? this.#whole?.machines ?? [];
    return names.find((each) => point.startsWith(`${each.name}/`))?.name;
  }

  /** How many machines the file has, read or not. */
  get machineCount(): number {
    return this.#cut?.machines.length ?? this.#whole?.machines.length ?? 0;
  }

  get isWhole(): boolean {
    return this.#pending.length === 0;
  }

  /** The plant with the machines read so far, in the order of the file. */
  get plant(): Plant {
    return { ...this.#whole!, machines: this.machines.map((each) => each.machine) };
  }

  get machines(): readonly ReadMachine[] {
    if (this.#cut === undefined) {
      return this.#whole!.machines.map((machine) => ({ key: `${this.#text}\u0000${machine.name}`, machine }));
    }
    return this.#keys.flatMap((key): readonly ReadMachine[] => {
      const machine = this.#read.get(key);
      return machine === undefined ? [] : [{ key, machine }];
    });
  }

  /** The text with edits made; edits of one machine are made in the text of that machine alone. */
  edited(text: string, edits: readonly Edit[]): { readonly text: string; readonly undo: readonly Edit[] } {
    const cut = text === this.#text ? this.#cut : machineTexts(text);
    const name = edits[0]?.path[1];
    const inOne = edits.every(({ path }) => path.length > 2 && path[0] === 'machines' && path[1] === name);
    const at = cut?.machines.findIndex((each) => each.name === name) ?? -1;
    if (cut === undefined || !inOne || at < 0) return applyEdits(text, edits);
    const own = cut.machines[at]!;
    const made = applyEdits(`machines:\n${own.text}`, edits);
    const machines = cut.machines.map((each, index) =>
      index === at ? { ...each, text: made.text.slice('machines:\n'.length) } : each,
    );
    return { text: pieceOf(cut, machines), undo: made.undo };
  }
}

/** One step of reading, on its way to be the reading. */
class Reading {
  readonly pending: number[];
  whole: Plant | undefined;
  readonly read: Map<string, PlantMachine>;
  readonly #path: string;
  readonly #catalogues: CatalogueTexts;
  readonly #text: string;
  readonly #cut: MachineTexts | undefined;
  readonly #keys: readonly string[];

  constructor(
    path: string,
    catalogues: CatalogueTexts,
    text: string,
    cut: MachineTexts | undefined,
    keys: readonly string[],
    read: Map<string, PlantMachine>,
    pending: number[],
    whole: Plant | undefined,
  ) {
    this.#path = path;
    this.#catalogues = catalogues;
    this.#text = text;
    this.#cut = cut;
    this.#keys = keys;
    this.read = read;
    this.pending = pending;
    this.whole = whole;
  }

  advance(): void {
    const cut = this.#cut;
    if (cut === undefined) {
      this.whole = plantFrom(this.#text, this.#path, this.#catalogues);
      return;
    }
    const next = this.pending.slice(0, together);
    const texts = next.map((index) => cut.machines[index]!);
    // Where every machine is known, one is read all the same if what stands around them is new.
    if (texts.length === 0 && this.whole !== undefined) return;
    const plant = this.#piece(cut, texts.length > 0 ? texts : cut.machines.slice(0, 1));
    this.whole ??= plant;
    for (const [index, at] of next.entries()) this.read.set(this.#keys[at]!, plant.machines[index]!);
    this.pending.splice(0, texts.length);
  }

  #piece(cut: MachineTexts, texts: readonly MachineText[]): Plant {
    try {
      return plantFrom(pieceOf(cut, texts), this.#path, this.#catalogues);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return plantFrom(pieceInPlace(cut, texts), this.#path, this.#catalogues);
    }
  }
}

function keyOf({ before, behind }: MachineTexts, { text }: MachineText): string {
  return `${before}\u0000${behind}\u0000${text}`;
}

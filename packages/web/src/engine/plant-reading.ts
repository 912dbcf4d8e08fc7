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

  /** The text of one machine under `machines:`; the whole text where it cannot be cut out. */
  machineText(name: string): string {
    const own = this.#cut?.machines.find((each) => each.name === name);
    return own === undefined ? this.#text : `${underMachines}${own.text}`;
  }

  /** The text with edits made; edits inside machines are made in the text of each machine alone. */
  edited(text: string, edits: readonly Edit[]): { readonly text: string; readonly undo: readonly Edit[] } {
    const cut = text === this.#text ? this.#cut : machineTexts(text);
    const grouped = cut === undefined ? undefined : byMachine(edits, cut);
    if (cut === undefined || grouped === undefined) return applyEdits(text, edits);
    const undo: Edit[] = [];
    const machines = cut.machines.map((each) => {
      const own = grouped.get(each.name);
      if (own === undefined) return each;
      const made = applyEdits(`${underMachines}${each.text}`, own);
      undo.unshift(...made.undo);
      return { ...each, text: made.text.slice(underMachines.length) };
    });
    // What puts back more than the machine speaks of the piece, not of the file.
    if (undo.some(({ path }) => path.length < 2)) return applyEdits(text, edits);
    return { text: pieceOf(cut, machines), undo };
  }
}

const underMachines = 'machines:\n';

/** The edits of each machine in their order; nothing where one of them is not inside a machine that is there. */
function byMachine(edits: readonly Edit[], cut: MachineTexts): ReadonlyMap<string, readonly Edit[]> | undefined {
  const grouped = new Map<string, Edit[]>();
  const names = new Set(cut.machines.map((each) => each.name));
  for (const edit of edits) {
    const [first, name] = edit.path;
    if (edit.path.length < 3 || first !== 'machines' || typeof name !== 'string' || !names.has(name)) return undefined;
    const own = grouped.get(name);
    if (own === undefined) grouped.set(name, [edit]);
    else own.push(edit);
  }
  return grouped;
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

import {
  assembledDesign,
  type Design,
  type DesignedMachine,
  type DesignedPoint,
  designedMachine,
  type Plant,
  type PlantMachine,
} from '@soundpost/core';
import type { Edit } from '@soundpost/server/protocol';
import { PlantReading } from './plant-reading.ts';
import type { CatalogueTexts } from './read-plant.ts';
import { writtenMachine } from './written-machine.ts';

/** Budgets draw their trials from here; the same number gives the same digits as on the command line. */
const seed = 1;
/** Milliseconds of reading before the first machines are shown. */
const patience = 300;

/** One open plant: its text, what the text says, and every machine worked out so far. */
export class PlantSession {
  text = '';
  plant: Plant | undefined;
  design: Design | undefined;
  readonly catalogues: CatalogueTexts;
  readonly #reading: PlantReading;
  #known = new Map<string, DesignedMachine>();
  #keys: readonly string[] = [];
  #designed = new Map<string, DesignedMachine>();
  #preferred: readonly string[] = [];

  constructor(path: string, catalogues: CatalogueTexts) {
    this.catalogues = catalogues;
    this.#reading = new PlantReading(path, catalogues);
  }

  /** Reads a text. What it says of a machine whose text is what it was need not be worked out again. Throws Refusal. */
  read(text: string): void {
    this.#reading.take(text, patience);
    this.text = text;
    this.design = undefined;
    this.#follow();
    const kept = new Set(this.#keys);
    if (this.#reading.isWhole) this.#known = new Map([...this.#known].filter(([key]) => kept.has(key)));
  }

  edited(text: string, edits: readonly Edit[]) {
    return this.#reading.edited(text, edits);
  }

  /** The text of one machine as a file of its own; the whole text where it cannot be cut out. */
  machineText(name: string): string {
    return this.#reading.machineText(name);
  }

  /** A machine as its file writes it, every value as it was typed; nothing where there is no such machine. */
  machineWritten(name: string): unknown {
    return writtenMachine(this.machineText(name), name);
  }

  /** How many machines the file has, read or not. */
  get machineCount(): number {
    return this.#reading.machineCount;
  }

  /** Takes over what has been read. */
  #follow(): void {
    const machines = this.#reading.machines;
    this.plant = this.#reading.plant;
    this.#keys = machines.map((each) => each.key);
    this.#designed = new Map(
      machines.flatMap(({ key, machine }) => {
        const known = this.#known.get(key);
        return known === undefined ? [] : [[machine.name, known]];
      }),
    );
  }

  /** The machine worked out, now if it is not yet. */
  machine(name: string): DesignedMachine | undefined {
    const before = this.#designed.get(name);
    if (before !== undefined) return before;
    if (!this.plant?.machines.some((each) => each.name === name) && this.#reading.more(name)) this.#follow();
    const index = this.plant?.machines.findIndex((each) => each.name === name) ?? -1;
    return index < 0 ? undefined : this.#workOut(this.plant!.machines[index]!, index);
  }

  point(of: string): { readonly machine: DesignedMachine; readonly point: DesignedPoint } | undefined {
    const owner = this.#reading.ownerOf(of);
    const machine = owner === undefined ? undefined : this.machine(owner);
    const point = machine?.points.find((each) => each.point.of === of);
    return machine === undefined || point === undefined ? undefined : { machine, point };
  }

  designedSoFar(name: string): DesignedMachine | undefined {
    return this.#designed.get(name);
  }

  get done(): number {
    return this.#designed.size;
  }

  /** The machines to work out before all others. */
  prefer(machines: readonly string[]): void {
    this.#preferred = machines;
  }

  /** Works out the next machine; false where none is left. The design of the plant is whole with the last. */
  advance(): boolean {
    if (this.plant === undefined) return false;
    if (this.#reading.more()) {
      this.#follow();
      return true;
    }
    const plant = this.plant;
    const open = ({ name }: { readonly name: string }) => !this.#designed.has(name);
    const inSight = plant.machines.findIndex((each) => open(each) && this.#preferred.includes(each.name));
    const index = inSight >= 0 ? inSight : plant.machines.findIndex(open);
    if (index >= 0) {
      this.#workOut(plant.machines[index]!, index);
      return true;
    }
    this.design ??= assembledDesign(
      plant,
      plant.machines.map((each) => this.#designed.get(each.name)!),
    );
    return false;
  }

  #workOut(machine: PlantMachine, index: number): DesignedMachine {
    const designed = designedMachine(this.plant!, machine, seed);
    this.#designed.set(machine.name, designed);
    this.#known.set(this.#keys[index]!, designed);
    return designed;
  }
}

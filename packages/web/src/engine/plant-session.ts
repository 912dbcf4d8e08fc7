import {
  assembledDesign,
  type Design,
  type DesignedMachine,
  type DesignedPoint,
  designedMachine,
  type Plant,
  type PlantMachine,
} from '@soundpost/core';
import { machineTexts } from './machine-texts.ts';
import { type CatalogueTexts, plantFrom } from './read-plant.ts';

/** Budgets draw their trials from here; the same number gives the same digits as on the command line. */
const seed = 1;

/** One open plant: its text, what the text says, and every machine worked out so far. */
export class PlantSession {
  text = '';
  plant: Plant | undefined;
  design: Design | undefined;
  readonly #path: string;
  readonly catalogues: CatalogueTexts;
  #known = new Map<string, DesignedMachine>();
  #keys: readonly string[] = [];
  #designed = new Map<string, DesignedMachine>();

  constructor(path: string, catalogues: CatalogueTexts) {
    this.#path = path;
    this.catalogues = catalogues;
  }

  /** Reads a text. What it says of a machine whose text is what it was need not be worked out again. Throws Refusal. */
  read(text: string): void {
    this.plant = plantFrom(text, this.#path, this.catalogues);
    this.text = text;
    this.design = undefined;
    const cut = machineTexts(text);
    const whole = cut !== undefined && cut.machines.length === this.plant.machines.length;
    this.#keys = this.plant.machines.map((machine, index) =>
      whole ? `${cut.around}\u0000${cut.machines[index]}` : `${text}\u0000${machine.name}`,
    );
    const kept = new Set(this.#keys);
    this.#known = new Map([...this.#known].filter(([key]) => kept.has(key)));
    this.#designed = new Map(
      this.plant.machines.flatMap((machine, index) => {
        const known = this.#known.get(this.#keys[index]!);
        return known === undefined ? [] : [[machine.name, known]];
      }),
    );
  }

  /** The machine worked out, now if it is not yet. */
  machine(name: string): DesignedMachine | undefined {
    const before = this.#designed.get(name);
    if (before !== undefined) return before;
    const index = this.plant?.machines.findIndex((each) => each.name === name) ?? -1;
    return index < 0 ? undefined : this.#workOut(this.plant!.machines[index]!, index);
  }

  point(of: string): { readonly machine: DesignedMachine; readonly point: DesignedPoint } | undefined {
    const owner = this.plant?.machines.find((machine) =>
      machine.points.some((point) => `${machine.name}/${point.statement.name}` === of),
    );
    const machine = owner === undefined ? undefined : this.machine(owner.name);
    const point = machine?.points.find((each) => each.point.of === of);
    return machine === undefined || point === undefined ? undefined : { machine, point };
  }

  designedSoFar(name: string): DesignedMachine | undefined {
    return this.#designed.get(name);
  }

  get done(): number {
    return this.#designed.size;
  }

  /** Works out the next machine; false where none is left. The design of the plant is whole with the last. */
  advance(): boolean {
    const plant = this.plant;
    if (plant === undefined) return false;
    const index = plant.machines.findIndex((each) => !this.#designed.has(each.name));
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

import {
  defectTyped,
  faultTyped,
  givenCourse,
  givenOccasion,
  otherChain,
  type Rehearsal,
  rehearsalFiles,
  rehearsing,
} from '@soundpost/commands/pure';
import {
  type DefectKind,
  defectKinds,
  type FaultKind,
  faultKinds,
  type Plant,
  parseQuantity,
  Refusal,
  type Showing,
  showQuantity,
} from '@soundpost/core';
import type { PlantOnDisk } from '@soundpost/server/protocol';
import { PlantSession } from '../plant-session.ts';
import type { DefectTyped, FileView, RehearsalAnswer, RehearsalChoices, RehearsalTyped } from './rehearsal-views.ts';
import { rehearsalView } from './rehearsed-view.ts';

/** Rehearses at the points of a plant, in a worker of its own: whoever does not want to wait ends it. */
export class RehearsalEngine {
  #session: PlantSession | undefined;
  #showing: Showing = {};
  #made: { readonly rehearsal: Rehearsal; readonly typed: RehearsalTyped } | undefined;

  open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>, showing: Showing): void {
    this.#showing = showing;
    this.#session = new PlantSession(disk.path, disk.catalogues);
    this.#session.read(disk.text);
  }

  choices(of: string): RehearsalChoices | undefined {
    const found = this.#session!.point(of);
    if (found === undefined) return undefined;
    const { machine, point } = found;
    const { train } = machine.stated;
    const catalogue = this.#plant.catalogue;
    const names = (shelf: readonly { readonly name: string }[]) => shelf.map(({ name }) => name);
    return {
      of,
      name: point.point.name,
      machine: machine.stated.name,
      chain: point.appraisal?.prediction.chain.of,
      faults: (faultKinds as readonly FaultKind[]).flatMap(({ kind, name, sized, example, at }) => {
        const places =
          at === 'shaft'
            ? train.shafts
            : train.elements.filter((each) => (at as readonly string[]).includes(each.kind)).map((each) => each.name);
        return places.length === 0 ? [] : [{ kind, name, sized, example, places }];
      }),
      defects: (defectKinds as readonly DefectKind[]).map(({ kind, name, sized, quantity, usual }) => ({
        kind,
        name,
        sized,
        example: showQuantity(quantity, usual),
      })),
      states: machine.frequencies.states.map(({ name }) => name),
      parts: {
        transducer: names(catalogue.transducers),
        mount: names(catalogue.mounts),
        cable: names(catalogue.cables),
        input: names(catalogue.inputs),
      },
    };
  }

  /** Makes and shows a rehearsal; `tell` hears what is being done. What cannot be rehearsed is said in words. */
  async rehearse(typed: RehearsalTyped, tell: (words: string) => void): Promise<RehearsalAnswer> {
    try {
      const found = this.#session!.point(typed.of);
      if (found === undefined) return { refused: `The plant has no point ${typed.of}.` };
      const { machine, point } = found;
      const { beside } = typed;
      const asked = {
        seconds: numberAbove(typed.seconds, 'length in seconds'),
        recordRate: wholeAbove(typed.rate, 'samples a second'),
        seed: wholeAbove(typed.seed, 'seed'),
        course: givenCourse(typed.course, 'highest'),
        faults: typed.faults.map(({ kind, at, size }) => faultTyped(`${kind}:${at}:${size}`)),
        occasion: givenOccasion(undefined),
      };
      const chains = [{ point, defects: typed.defects.map(defect) }];
      if (beside !== undefined) {
        const length = beside.cableLength.trim();
        const changes = { ...beside.parts, ...(length === '' ? {} : { cableLength: parseQuantity(length, 'length') }) };
        chains.push({ point: otherChain(this.#plant, point, changes), defects: beside.defects.map(defect) });
      }
      const steps = rehearsing(machine, point, asked, chains, this.#plant.policy.detection);
      let step = steps.next();
      while (step.done !== true) {
        tell(step.value);
        // The words leave the worker before the next step keeps it busy.
        await new Promise((later) => setTimeout(later));
        step = steps.next();
      }
      this.#made = { rehearsal: step.value, typed };
      return { made: rehearsalView(step.value, machine, this.#showing) };
    } catch (error) {
      if (error instanceof Refusal) return { refused: error.message };
      throw error;
    }
  }

  /** The record of a chain as files, as the command writes them. */
  files(chain: number, ending: string): readonly FileView[] {
    const { rehearsal, typed } = this.#made!;
    const { record } = rehearsal.chains[chain]!;
    if (!record.known || !rehearsal.motion.known) return [];
    const name = typed.of.replaceAll(/[^\w.-]+/g, '-');
    const path = `${name}${chain === 0 ? '' : '-beside'}.${ending}`;
    const defects = rehearsal.chains[chain]!.defects;
    const made = { occasion: 'running', defects, script: rehearsal.script };
    return rehearsalFiles(path, record.value, rehearsal.motion.value, made, typed.of).map(
      ({ path: file, content }) => ({
        name: file,
        content,
      }),
    );
  }

  get #plant(): Plant {
    return this.#session!.plant!;
  }
}

function defect({ kind, size }: DefectTyped) {
  return defectTyped(size.trim() === '' ? kind : `${kind}:${size}`);
}

function numberAbove(typed: string, what: string): number {
  const value = Number(typed);
  if (typed.trim() !== '' && Number.isFinite(value) && value > 0) return value;
  throw new Refusal({ read: `${what} ${typed}`, expected: 'a number above 0' });
}

function wholeAbove(typed: string, what: string): number {
  const value = numberAbove(typed, what);
  if (Number.isSafeInteger(value)) return value;
  throw new Refusal({ read: `${what} ${typed}`, expected: 'a whole number' });
}

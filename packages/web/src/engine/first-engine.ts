import { type Design, type Finding, questions, Refusal, type Showing, valueIfStated } from '@soundpost/core';
import type { PlantOnDisk } from '@soundpost/server/protocol';
import { findingView } from './finding-view.ts';
import { type HeldPoint, packed } from './held-point.ts';
import { speedRange } from './machine/speed-range.ts';
import { PlantSession } from './plant-session.ts';
import { PointRows } from './point-rows.ts';
import { questionView } from './question-view.ts';
import { remarkOf } from './remark.ts';
import { trialView, tried, triedSubject } from './trial.ts';
import type {
  Opened,
  PlaceView,
  PlantView,
  PointView,
  QuestionView,
  ShowingChoice,
  TrialAsked,
  TrialView,
} from './views.ts';

/** What of the engine the first picture needs: the plant, a point, the chart under the hand. All else is loaded after it. */
export class FirstEngine {
  showing: Showing = {};
  #session: PlantSession | undefined;
  readonly #rows = new PointRows();
  #asked: { readonly design: Design; readonly questions: readonly QuestionView[] } | undefined;

  show({ detector, ...choice }: ShowingChoice): void {
    this.showing = detector === 'stated' ? choice : { ...choice, detector };
  }

  open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>): Opened {
    this.#session = new PlantSession(disk.path, disk.catalogues);
    return this.read(disk.text);
  }

  /** Takes a text in place of the one before; what cannot be read leaves the plant as it was. */
  read(text: string): Opened {
    try {
      this.session.read(text);
      return { plant: this.plant() };
    } catch (error) {
      if (error instanceof Refusal) return { refused: { message: error.message } };
      throw error;
    }
  }

  /** Works on for about as long as a frame; false when the whole plant is worked out. */
  advance(): boolean {
    const until = performance.now() + 12;
    let more = true;
    while (more && performance.now() < until) more = this.session.advance();
    return more;
  }

  /** The machines to work out before all others: those in sight. */
  prefer(machines: readonly string[]): void {
    this.session.prefer(machines);
  }

  plant(): PlantView {
    const session = this.session;
    const plant = session.plant!;
    const { name, owner, revision, date } = plant.title.values;
    const design = session.design;
    return {
      name: valueIfStated(name) ?? 'A plant without a name',
      owner: valueIfStated(owner) ?? '',
      revision: valueIfStated(revision) ?? '',
      date: String(valueIfStated(date) ?? ''),
      machines: plant.machines.map((each) => ({ name: each.name, title: each.title, points: each.points.length })),
      points: this.#rows.of(session, this.showing),
      verdict: design?.verdict,
      findings: design === undefined ? [] : this.findings(design.findings),
      questions: design === undefined ? [] : this.#questions(design),
      progress: { read: plant.machines.length, done: session.done, of: session.machineCount },
    };
  }

  /** What may stand in a line between transducer and input: supplies, barriers, isolators. */
  lineParts(): PlaceView['choices'] {
    return this.session.plant!.catalogue.supplies.map((each) => ({ name: each.name, remark: remarkOf(each) }));
  }

  point(of: string): PointView | undefined {
    const found = this.session.point(of);
    if (found === undefined) return undefined;
    const { machine, point: designed } = found;
    const plant = this.session.plant!;
    const { chosen, way } = designed.stated;
    const place = (
      name: PlaceView['place'],
      parts: readonly { name: string; remark?: string | undefined }[],
      now: string | undefined,
    ): PlaceView => ({
      place: name,
      chosen: now,
      choices: parts.map((each) => ({ name: each.name, remark: remarkOf(each) })),
    });
    return {
      of,
      machine: machine.stated.name,
      name: designed.point.name,
      location: designed.point.location,
      direction: designed.point.direction.known ? String(designed.point.direction.value) : 'unknown',
      path: ['machines', machine.stated.name, 'points', designed.point.name],
      places: [
        place('transducer', plant.catalogue.transducers, chosen?.transducer.name),
        place('mount', plant.catalogue.mounts, chosen?.mount.name),
        place('cable', plant.catalogue.cables, way?.cable.name),
        place('input', plant.catalogue.inputs, way?.input.name),
      ],
      inLine: way?.inLine.map((each) => each.name) ?? [],
      lineChoices: this.lineParts(),
      speed: speedRange(machine, this.showing),
      trial: this.trial({ of, moved: {}, parts: {}, speed: undefined })!,
      findings: this.findings(designed.findings),
    };
  }

  /** The point as a hand holds it. */
  trial(asked: TrialAsked): TrialView | undefined {
    const began = performance.now();
    const found = this.session.point(asked.of);
    if (found === undefined) return undefined;
    const plant = this.session.plant!;
    const held = tried(triedSubject(plant, found.machine, found.point, asked), plant);
    return trialView(found.machine, found.point, held, asked, this.showing, began);
  }

  /** All that a trial at a point reads, for a hand to work with on the page itself. */
  held(of: string, transducer?: string): HeldPoint | undefined {
    const found = this.session.point(of);
    return found && packed(this.session.plant!, found.machine, found.point, this.showing, transducer);
  }

  get session(): PlantSession {
    if (this.#session === undefined) throw new Error('no plant is open');
    return this.#session;
  }

  /** Answering costs many judgements, so one design is asked once. */
  #questions(design: Design): readonly QuestionView[] {
    if (this.#asked?.design !== design) {
      const plant = this.session.plant!;
      this.#asked = { design, questions: questions(design).map((each) => questionView(each, plant)) };
    }
    return this.#asked.questions;
  }

  findings(findings: readonly Finding[]) {
    const points = new Set(
      this.session.plant!.machines.flatMap((machine) =>
        machine.points.map((point) => `${machine.name}/${point.statement.name}`),
      ),
    );
    return findings.map((each, index) => findingView(each, index, this.showing, points));
  }
}

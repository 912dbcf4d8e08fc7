import {
  cells,
  type Design,
  decibels,
  type Finding,
  flipPoints,
  pointShortlist,
  questions,
  Refusal,
  reason,
  type Shelf,
  type Showing,
  showMeasure,
  valueIfStated,
} from '@soundpost/core';
import { explainedFlip, pointSheets } from '@soundpost/documents';
import { mergedPlants } from '@soundpost/files';
import type { Edit, PlantOnDisk } from '@soundpost/server/protocol';
import { partEdits, removalEdits } from './catalogue/part-edits.ts';
import { emptySheet, partViews } from './catalogue/part-view.ts';
import { shelfViews } from './catalogue/shelves.ts';
import type { EmptySheet, PartEdits, PartTyped, PartView, ShelfView } from './catalogue/views.ts';
import { findingView } from './finding-view.ts';
import { foreseen } from './foreseen.ts';
import { subjectOf } from './handles.ts';
import { type HeldPoint, packed } from './held-point.ts';
import { keptEdits } from './kept-edits.ts';
import { built } from './machine/building.ts';
import type { BuildingAsked, Built } from './machine/building-views.ts';
import { heldSpeed } from './machine/held-speed.ts';
import { machineBench } from './machine/machine-bench.ts';
import { speedRange } from './machine/speed-range.ts';
import type { HeldAnswer, MachineBench, SpeedAsked } from './machine/views.ts';
import { type PartChoices, partChoices } from './part-choices.ts';
import { pasteView } from './paste/paste-view.ts';
import type { PasteChoices, PasteView } from './paste/views.ts';
import { PlantSession } from './plant-session.ts';
import { PointRows } from './point-rows.ts';
import { pointOpenings } from './point-sheet.ts';
import { questionView } from './question-view.ts';
import { told } from './told.ts';
import { trialView, tried, triedSubject } from './trial.ts';
import type {
  CandidateView,
  Edited,
  FlipView,
  ForeseenView,
  Opened,
  PlaceView,
  PlantView,
  PointView,
  QuestionView,
  SheetView,
  ShowingChoice,
  TrialAsked,
  TrialView,
} from './views.ts';
import { whyView } from './why.ts';
import type { NumberAsked, WhyView } from './why-views.ts';
import { worked } from './worked.ts';
import { workingPlot } from './working-plot.ts';
import { workingSheet, workingShelves } from './working-sheet.ts';
import type { PlotAsked, PlotView, WorkedView, WorkingAsked, WorkingSheetView, WorkingShelf } from './working-views.ts';
import { type WrittenLength, writtenLength } from './written-length.ts';

/** The core as the page asks it. It lives in a worker: nothing here waits for a server, and the page waits for nothing here. */
export class Engine {
  #session: PlantSession | undefined;
  #showing: Showing = {};
  readonly #rows = new PointRows();
  #asked: { readonly design: Design; readonly questions: readonly QuestionView[] } | undefined;

  show({ detector, ...choice }: ShowingChoice): void {
    this.#showing = detector === 'stated' ? choice : { ...choice, detector };
  }

  open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>): Opened {
    this.#session = new PlantSession(disk.path, disk.catalogues);
    return this.read(disk.text);
  }

  /** Takes a text in place of the one before; what cannot be read leaves the plant as it was. */
  read(text: string): Opened {
    try {
      this.#open.read(text);
      return { plant: this.plant() };
    } catch (error) {
      if (error instanceof Refusal) return { refused: { message: error.message } };
      throw error;
    }
  }

  /** The text with edits made, and what undoes them; the plant is not read yet. */
  edited(text: string, edits: readonly Edit[]): Edited {
    return this.#open.edited(text, edits);
  }

  /** Two changed texts of one plant as one; where both changed a value theirs stands, and the list says so. */
  merged(base: string, mine: string, theirs: string) {
    return mergedPlants(base, mine, theirs);
  }

  /** Works on for about as long as a frame; false when the whole plant is worked out. */
  advance(): boolean {
    const until = performance.now() + 12;
    let more = true;
    while (more && performance.now() < until) more = this.#open.advance();
    return more;
  }

  plant(): PlantView {
    const session = this.#open;
    const plant = session.plant!;
    const { name, owner, revision, date } = plant.title.values;
    const design = session.design;
    return {
      name: valueIfStated(name) ?? 'A plant without a name',
      owner: valueIfStated(owner) ?? '',
      revision: valueIfStated(revision) ?? '',
      date: String(valueIfStated(date) ?? ''),
      machines: plant.machines.map((each) => ({ name: each.name, title: each.title, points: each.points.length })),
      points: this.#rows.of(session, this.#showing),
      verdict: design?.verdict,
      findings: design === undefined ? [] : this.#findings(design.findings),
      questions: design === undefined ? [] : this.#questions(design),
      progress: { read: plant.machines.length, done: session.done, of: session.machineCount },
    };
  }

  placeChoices(): PartChoices {
    return partChoices(this.#open.plant!);
  }

  /** What may stand in a line between transducer and input: supplies, barriers, isolators. */
  lineParts(): PlaceView['choices'] {
    return this.#open.plant!.catalogue.supplies.map((each) => ({ name: each.name, remark: remarkOf(each) }));
  }

  foreseen(points: readonly string[], place: PlaceView['place'], part: string): readonly ForeseenView[] {
    const { plant } = this.#open;
    const found = points.map((of) => this.#open.point(of)).filter((each) => each !== undefined);
    return found.map((each) => foreseen(plant!, each, place, part));
  }

  /** The cable length of a point as its file has it. */
  length(machine: string, point: string): WrittenLength | undefined {
    return writtenLength(this.#open.text, machine, point);
  }

  /** What was copied from a spreadsheet, as this plant understands it; nothing is changed. */
  pasted(text: string, choices: PasteChoices): PasteView {
    return pasteView(text, choices, this.#open.plant!, this.#open.text, this.#showing);
  }

  machineBench(name: string): MachineBench | undefined {
    const machine = this.#open.machine(name);
    return (
      machine && machineBench(machine, this.#findings(machine.findings), this.#showing, this.#open.machineWritten(name))
    );
  }

  /** What would build something onto the plant or a machine, or take it away; nothing is changed. */
  built(asked: BuildingAsked): Built {
    return built(asked, this.#open);
  }

  heldSpeed(name: string, asked: SpeedAsked): HeldAnswer | undefined {
    const machine = this.#open.machine(name);
    return machine && heldSpeed(machine, asked, this.#showing);
  }

  point(of: string): PointView | undefined {
    const found = this.#open.point(of);
    if (found === undefined) return undefined;
    const { machine, point: designed } = found;
    const plant = this.#open.plant!;
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
      speed: speedRange(machine, this.#showing),
      trial: this.trial({ of, moved: {}, parts: {}, speed: undefined })!,
      sheets: pointSheets(designed, plant, 'point', this.#setting)
        .filter((each) => each.present)
        .map(({ name, title }) => ({ name, title })),
      findings: this.#findings(designed.findings),
    };
  }

  /** One sheet of a point; nothing where the point has no such thing. */
  sheet(of: string, name: string): SheetView | undefined {
    const found = this.#open.point(of);
    if (found === undefined) return undefined;
    return pointOpenings(found.point, this.#open.plant!, name, this.#showing)?.view;
  }

  /** The point as a hand holds it. */
  trial(asked: TrialAsked): TrialView | undefined {
    const began = performance.now();
    const found = this.#open.point(asked.of);
    if (found === undefined) return undefined;
    const plant = this.#open.plant!;
    const held = tried(triedSubject(plant, found.machine, found.point, asked), plant);
    return trialView(found.machine, found.point, held, asked, this.#showing, began);
  }

  /** All that a trial at a point reads, for a hand to work with on the page itself. */
  held(of: string, transducer?: string): HeldPoint | undefined {
    const found = this.#open.point(of);
    return found && packed(this.#open.plant!, found.machine, found.point, this.#showing, transducer);
  }

  /** What a hand holds, as changes of the file; empty where it holds nothing that can be kept. */
  kept(asked: TrialAsked): readonly Edit[] {
    const found = this.#open.point(asked.of);
    const plant = this.#open.plant!;
    if (found === undefined) return [];
    const held = triedSubject(plant, found.machine, found.point, asked);
    if (held === undefined) return [];
    return keptEdits(asked, held, found.point, this.#open.text, this.#open.catalogues, plant);
  }

  candidates(of: string): readonly CandidateView[] {
    const found = this.#open.point(of);
    if (found === undefined) return [];
    const chosen = found.point.stated.chosen;
    return pointShortlist(this.#open.plant!, found.point).map(
      (row): CandidateView => ({
        transducer: row.transducer.name,
        mount: row.mount.name,
        remark: remarkOf(row.transducer),
        outcome: row.appraisal.outcome,
        margin: showMeasure(decibels(row.leastMargin), this.#showing),
        chosen: chosen?.transducer.name === row.transducer.name && chosen.mount.name === row.mount.name,
        cells: cells(row.appraisal).map((cell) => ({
          target: cell.target,
          outcome: cell.outcome,
          margin: cell.decides?.margin === undefined ? '' : showMeasure(decibels(cell.decides.margin), this.#showing),
          reason: cell.decides === undefined ? '' : reason(cell.decides, this.#showing),
        })),
      }),
    );
  }

  flips(of: string): readonly FlipView[] {
    const found = this.#open.point(of);
    const subject = found === undefined ? undefined : subjectOf(found.point);
    if (subject === undefined) return [];
    return flipPoints(subject, this.#open.plant!.policy).map((each) => ({
      of: each.of,
      what: each.what,
      stated: each.stated,
      flipsAt: each.flipsAt,
      to: each.to,
      decides: each.decides === undefined ? '' : reason(each.decides, this.#showing),
      why: whyView(explainedFlip(each, this.#showing)),
    }));
  }

  catalogue(): readonly ShelfView[] {
    return shelfViews(this.#open.plant!, this.#open);
  }

  /** Every part of that name: a name may stand on two shelves. */
  partSheets(name: string): readonly PartView[] {
    const { plant } = this.#open;
    const designed = plant!.machines.flatMap((each) => this.#open.designedSoFar(each.name) ?? []);
    return partViews(plant!, this.#open, name, designed, this.#showing);
  }

  emptySheet(shelf: Shelf, kind: string): EmptySheet {
    return emptySheet(shelf, kind);
  }

  partEdits(typed: PartTyped): PartEdits {
    return partEdits(this.#open.plant!, this.#open, typed);
  }

  partRemoval(shelf: Shelf, name: string): PartEdits {
    return removalEdits(this.#open, shelf, name);
  }

  /** Why a number of the screen is what it is. */
  told(asked: NumberAsked): readonly WhyView[] {
    return told(asked, this.#open, this.#showing);
  }

  workings(): readonly WorkingShelf[] {
    return workingShelves();
  }

  /** Throws where there is no formula of that name; the list of workings has them. */
  working(name: string): WorkingSheetView {
    return workingSheet(name);
  }

  worked(asked: WorkingAsked): WorkedView {
    return worked(asked, this.#showing);
  }

  workingPlot(asked: PlotAsked): PlotView {
    return workingPlot(asked, this.#showing);
  }

  get #open(): PlantSession {
    if (this.#session === undefined) throw new Error('no plant is open');
    return this.#session;
  }

  /** Answering costs many judgements, so one design is asked once. */
  #questions(design: Design): readonly QuestionView[] {
    if (this.#asked?.design !== design) {
      const plant = this.#open.plant!;
      this.#asked = { design, questions: questions(design).map((each) => questionView(each, plant)) };
    }
    return this.#asked.questions;
  }

  get #setting() {
    return { showing: this.#showing };
  }

  #findings(findings: readonly Finding[]) {
    const points = new Set(
      this.#open.plant!.machines.flatMap((machine) =>
        machine.points.map((point) => `${machine.name}/${point.statement.name}`),
      ),
    );
    return findings.map((each, index) => findingView(each, index, this.#showing, points));
  }
}

function remarkOf(part: { name: string }): string {
  const remark = (part as { remark?: unknown }).remark;
  return typeof remark === 'string' ? remark : '';
}

import { cells, decibels, flipPoints, pointShortlist, reason, type Shelf, showMeasure } from '@soundpost/core';
import { explainedFlip, pointSheets } from '@soundpost/documents';
import { mergedPlants } from '@soundpost/files';
import type { Edit, PlantOnDisk } from '@soundpost/server/protocol';
import { partEdits, removalEdits } from './catalogue/part-edits.ts';
import { emptySheet, partViews } from './catalogue/part-view.ts';
import { shelfViews } from './catalogue/shelves.ts';
import type { EmptySheet, PartEdits, PartTyped, PartView, ShelfView } from './catalogue/views.ts';
import { FirstEngine } from './first-engine.ts';
import { foreseen } from './foreseen.ts';
import { subjectOf } from './handles.ts';
import type { HeldPoint } from './held-point.ts';
import { keptEdits } from './kept-edits.ts';
import { built } from './machine/building.ts';
import type { BuildingAsked, Built } from './machine/building-views.ts';
import { heldSpeed } from './machine/held-speed.ts';
import { machineBench } from './machine/machine-bench.ts';
import type { HeldAnswer, MachineBench, SpeedAsked } from './machine/views.ts';
import { type PartChoices, partChoices } from './part-choices.ts';
import { pasteView } from './paste/paste-view.ts';
import type { PasteChoices, PasteView } from './paste/views.ts';
import { pointOpenings } from './point-sheet.ts';
import { remarkOf } from './remark.ts';
import { told } from './told.ts';
import { triedSubject } from './trial.ts';
import type {
  CandidateView,
  Edited,
  FlipView,
  ForeseenView,
  Opened,
  PlaceView,
  PlantView,
  PointView,
  SheetName,
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

/** The core as the page asks it, whole. It lives in a worker: nothing here waits for a server, and the page waits for nothing here. */
export class Engine {
  readonly first: FirstEngine;

  constructor(first = new FirstEngine()) {
    this.first = first;
  }

  /** Asked only to have the whole engine there before the server goes away. */
  ready(): void {}

  show(choice: ShowingChoice): void {
    this.first.show(choice);
  }

  open(disk: Pick<PlantOnDisk, 'path' | 'text' | 'catalogues'>): Opened {
    return this.first.open(disk);
  }

  read(text: string): Opened {
    return this.first.read(text);
  }

  advance(): boolean {
    return this.first.advance();
  }

  /** The machines to work out before all others: those in sight. */
  prefer(machines: readonly string[]): void {
    this.first.prefer(machines);
  }

  plant(): PlantView {
    return this.first.plant();
  }

  lineParts(): PlaceView['choices'] {
    return this.first.lineParts();
  }

  point(of: string): PointView | undefined {
    return this.first.point(of);
  }

  trial(asked: TrialAsked): TrialView | undefined {
    return this.first.trial(asked);
  }

  held(of: string, transducer?: string): HeldPoint | undefined {
    return this.first.held(of, transducer);
  }

  /** The text with edits made, and what undoes them; the plant is not read yet. */
  edited(text: string, edits: readonly Edit[]): Edited {
    return this.first.session.edited(text, edits);
  }

  /** Two changed texts of one plant as one; where both changed a value theirs stands, and the list says so. */
  merged(base: string, mine: string, theirs: string) {
    return mergedPlants(base, mine, theirs);
  }

  placeChoices(): PartChoices {
    return partChoices(this.first.session.plant!);
  }

  foreseen(points: readonly string[], place: PlaceView['place'], part: string): readonly ForeseenView[] {
    const { plant } = this.first.session;
    const found = points.map((of) => this.first.session.point(of)).filter((each) => each !== undefined);
    return found.map((each) => foreseen(plant!, each, place, part));
  }

  /** The cable length of a point as its file has it. */
  length(machine: string, point: string): WrittenLength | undefined {
    return writtenLength(this.first.session.text, machine, point);
  }

  /** What was copied from a spreadsheet, as this plant understands it; nothing is changed. */
  pasted(text: string, choices: PasteChoices): PasteView {
    return pasteView(text, choices, this.first.session.plant!, this.first.session.text, this.first.showing);
  }

  machineBench(name: string): MachineBench | undefined {
    const machine = this.first.session.machine(name);
    return (
      machine &&
      machineBench(
        machine,
        this.first.findings(machine.findings),
        this.first.showing,
        this.first.session.machineWritten(name),
      )
    );
  }

  /** What would build something onto the plant or a machine, or take it away; nothing is changed. */
  built(asked: BuildingAsked): Built {
    return built(asked, this.first.session);
  }

  heldSpeed(name: string, asked: SpeedAsked): HeldAnswer | undefined {
    const machine = this.first.session.machine(name);
    return machine && heldSpeed(machine, asked, this.first.showing);
  }

  /** The sheets of a point that have something to say. */
  sheets(of: string): readonly SheetName[] {
    const found = this.first.session.point(of);
    if (found === undefined) return [];
    return pointSheets(found.point, this.first.session.plant!, 'point', { showing: this.first.showing })
      .filter((each) => each.present)
      .map(({ name, title }) => ({ name, title }));
  }

  /** One sheet of a point; nothing where the point has no such thing. */
  sheet(of: string, name: string): SheetView | undefined {
    const found = this.first.session.point(of);
    if (found === undefined) return undefined;
    return pointOpenings(found.point, this.first.session.plant!, name, this.first.showing)?.view;
  }

  /** What a hand holds, as changes of the file; empty where it holds nothing that can be kept. */
  kept(asked: TrialAsked): readonly Edit[] {
    const found = this.first.session.point(asked.of);
    const plant = this.first.session.plant!;
    if (found === undefined) return [];
    const held = triedSubject(plant, found.machine, found.point, asked);
    if (held === undefined) return [];
    return keptEdits(asked, held, found.point, this.first.session.text, this.first.session.catalogues, plant);
  }

  candidates(of: string): readonly CandidateView[] {
    const found = this.first.session.point(of);
    if (found === undefined) return [];
    const chosen = found.point.stated.chosen;
    return pointShortlist(this.first.session.plant!, found.point).map(
      (row): CandidateView => ({
        transducer: row.transducer.name,
        mount: row.mount.name,
        remark: remarkOf(row.transducer),
        outcome: row.appraisal.outcome,
        margin: showMeasure(decibels(row.leastMargin), this.first.showing),
        chosen: chosen?.transducer.name === row.transducer.name && chosen.mount.name === row.mount.name,
        cells: cells(row.appraisal).map((cell) => ({
          target: cell.target,
          outcome: cell.outcome,
          margin:
            cell.decides?.margin === undefined ? '' : showMeasure(decibels(cell.decides.margin), this.first.showing),
          reason: cell.decides === undefined ? '' : reason(cell.decides, this.first.showing),
        })),
      }),
    );
  }

  flips(of: string): readonly FlipView[] {
    const found = this.first.session.point(of);
    const subject = found === undefined ? undefined : subjectOf(found.point);
    if (subject === undefined) return [];
    return flipPoints(subject, this.first.session.plant!.policy).map((each) => ({
      of: each.of,
      what: each.what,
      stated: each.stated,
      flipsAt: each.flipsAt,
      to: each.to,
      decides: each.decides === undefined ? '' : reason(each.decides, this.first.showing),
      why: whyView(explainedFlip(each, this.first.showing)),
    }));
  }

  catalogue(): readonly ShelfView[] {
    return shelfViews(this.first.session.plant!, this.first.session);
  }

  /** Every part of that name: a name may stand on two shelves. */
  partSheets(name: string): readonly PartView[] {
    const { plant } = this.first.session;
    const designed = plant!.machines.flatMap((each) => this.first.session.designedSoFar(each.name) ?? []);
    return partViews(plant!, this.first.session, name, designed, this.first.showing);
  }

  emptySheet(shelf: Shelf, kind: string): EmptySheet {
    return emptySheet(shelf, kind);
  }

  partEdits(typed: PartTyped): PartEdits {
    return partEdits(this.first.session.plant!, this.first.session, typed);
  }

  partRemoval(shelf: Shelf, name: string): PartEdits {
    return removalEdits(this.first.session, shelf, name);
  }

  /** Why a number of the screen is what it is. */
  told(asked: NumberAsked): readonly WhyView[] {
    return told(asked, this.first.session, this.first.showing);
  }

  workings(): readonly WorkingShelf[] {
    return workingShelves();
  }

  /** Throws where there is no formula of that name; the list of workings has them. */
  working(name: string): WorkingSheetView {
    return workingSheet(name);
  }

  worked(asked: WorkingAsked): WorkedView {
    return worked(asked, this.first.showing);
  }

  workingPlot(asked: PlotAsked): PlotView {
    return workingPlot(asked, this.first.showing);
  }
}

import type { Design, Showing } from '../../packages/core/src/index.ts';
import { loopScaleDrawing } from '../../packages/documents/src/alarm/loop-scale.ts';
import { amplitudeChart } from '../../packages/documents/src/chain/amplitude-chart.ts';
import { biasDrawing } from '../../packages/documents/src/chain/bias-drawing.ts';
import { chainDrawing } from '../../packages/documents/src/chain/chain-drawing.ts';
import { noisePlot } from '../../packages/documents/src/chain/noise-plot.ts';
import { responsePlot } from '../../packages/documents/src/chain/response-plot.ts';
import { issueFacts } from '../../packages/documents/src/document-set/issue-facts.ts';
import { documentRecord } from '../../packages/documents/src/document-set/issued-kind.ts';
import { issuedKinds } from '../../packages/documents/src/document-set/kinds.ts';
import { drawingsIn, type Orientation } from '../../packages/documents/src/document-set/record.ts';
import type { Drawing, Width } from '../../packages/documents/src/drawing/drawing.ts';
import { speedMapDrawing } from '../../packages/documents/src/machine/speed-map-drawing.ts';
import { trainDrawing } from '../../packages/documents/src/machine/train-drawing.ts';
import { budgetPlot } from '../../packages/documents/src/uncertainty/budget-plot.ts';

/** A drawing with where it stands: on the paper of an issued document, or on the sheet of a screen of a width. */
export interface StandingDrawing {
  readonly of: string;
  readonly on: Orientation | Width;
  readonly drawing: Drawing;
}

/** Every drawing of every issued document. */
export function issuedDrawings(design: Design, showing: Showing = {}): readonly StandingDrawing[] {
  const facts = issueFacts(design, { contentHash: 'a1b2c3d4e5f60718' });
  return issuedKinds.flatMap((kind) => {
    const record = documentRecord(kind, design, facts, showing);
    if (record === undefined) return [];
    return drawingsIn(record).map(({ drawing }) => ({ of: kind.kind, on: record.orientation, drawing }));
  });
}

/** Every drawing of the report and of the screens, in both widths. */
export function shownDrawings(design: Design, showing: Showing = {}): readonly StandingDrawing[] {
  return (['wide', 'narrow'] as const).flatMap((width) => {
    const standing = (of: string, drawing: Drawing | undefined): readonly StandingDrawing[] =>
      drawing === undefined ? [] : [{ of, on: width, drawing }];
    const ofMachines = design.machines.flatMap((machine) => [
      ...standing('trainDrawing', trainDrawing(machine, showing, width)),
      ...standing('speedMapDrawing', speedMapDrawing(machine, showing, width)),
    ]);
    const ofPoints = Object.entries({
      amplitudeChart,
      chainDrawing,
      responsePlot,
      noisePlot,
      biasDrawing,
      loopScaleDrawing,
      budgetPlot,
    }).flatMap(([of, draw]) =>
      design.machines.flatMap(({ points }) => points.flatMap((each) => standing(of, draw(each, showing, width)))),
    );
    return [...ofMachines, ...ofPoints];
  });
}

export function everyDrawing(design: Design, showing: Showing = {}): readonly StandingDrawing[] {
  return [...issuedDrawings(design, showing), ...shownDrawings(design, showing)];
}

import { type Answer, answer, answerOf, type Sheet, type Stated, valueIfStated } from '../quantity/index.ts';
import { type Drawing, earthed, nodeOf, unmeasured } from './drawing.ts';
import type { WiredPoint } from './graph.ts';
import type { ScreenEnd, wiringSheet } from './statement.ts';

/** The screen in one piece or in two, and where each is joined to earth. */
export function drawScreen(
  { point, chain }: WiredPoint,
  wiring: Sheet<typeof wiringSheet>,
  frame: string,
  bar: string,
  drawing: Drawing,
): void {
  const { screenEarthed, screenCutAt, screenOnCase, screenOnBox, boxOnMachine } = wiring.values;
  if (screenEarthed === undefined && screenOnCase === undefined && screenOnBox === undefined) return;
  const at = point.of;
  const near = drawing.node(nodeOf.screen(at), 'screen');
  const cut = valueIfStated(screenCutAt) === 'junction box';
  const far = cut ? drawing.node(nodeOf.farScreen(at), 'screen') : near;
  const ends = answerOf(screenEarthed, at, 'where the screen is earthed');
  const joint = (conducts: Answer<boolean>, from: string, to: string, name: string, remedy: string, order: number) =>
    drawing.joint(
      conducts,
      { point: at, name, use: 'screen', from, to, resistance: answer(0), remedy, order },
      'screen end left open',
    );
  const shell = nodeOf.case(at);
  const atSensor = touchesOr(screenOnCase, ends, (end) => end === 'sensor' || end === 'both');
  const atBox = touchesOr(screenOnBox, ends, (end) => end === 'junction box');
  joint(atSensor, near, shell, `screen of ${at} on the case`, 'cut the screen at the sensor and insulate its end', 1);
  joint(
    touchesOr(undefined, ends, (end) => end === 'cabinet' || end === 'both'),
    far,
    bar,
    `screen of ${at} on the cabinet earth`,
    'open the screen at the cabinet',
    3,
  );
  const boxed = chain.inLine.some((part) => part.joins) || (atBox.known && atBox.value);
  if (!boxed) return;
  const box = drawing.node(nodeOf.box(at), 'junction box');
  if (valueIfStated(boxOnMachine) === true) {
    drawing.conductor({
      name: `foot of ${box} on the machine`,
      use: 'earthing',
      from: box,
      to: frame,
      resistance: unmeasured(box),
      order: 9,
    });
  } else earthed(drawing, box);
  joint(atBox, near, box, `screen of ${at} on the junction box`, 'carry the screen through the box insulated', 2);
}

/** A touch that is stated decides by itself; otherwise the end named as earthed does. */
function touchesOr(
  touch: Stated<boolean> | undefined,
  ends: Answer<ScreenEnd>,
  names: (end: ScreenEnd) => boolean,
): Answer<boolean> {
  if (touch?.known === true && touch.value) return answer(true);
  return ends.known ? answer(names(ends.value)) : ends;
}

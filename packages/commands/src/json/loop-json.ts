import { type GroundLoop, loopHum, showLoop, type WiredPoint } from '@soundpost/core';
import { answerJson, levelJson, quantityJson } from './values-json.ts';

/** A ground loop: what it passes in order, where to open it, and the most it adds to the signal at each point. */
export function loopJson(loop: GroundLoop, points: readonly WiredPoint[]): unknown {
  return {
    shown: showLoop(loop),
    through: loop.through,
    byDesign: loop.byDesign,
    points: loop.points,
    members: loop.members.map(({ name, from, to, use }) => ({ name, from, to, use })),
    resistance: answerJson(loop.resistance, (value) => quantityJson('resistance', value)),
    remedy: loop.remedy,
    hum: loopHum(loop, points).map((each) => ({
      point: each.point,
      perMillivolt: answerJson(each.perMillivolt, levelJson),
      stated: answerJson(each.stated, levelJson),
    })),
  };
}

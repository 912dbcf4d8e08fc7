import { measured, measuredLevel, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { motionPerNumber } from '../expected.ts';
import { runningRecord } from '../running-record.ts';
import { declaredSpeed } from '../speed-of-record.ts';
import { type FamilyJudged, familyKind } from './family-kind.ts';

/** Once per turn is dominant where it is this many times each of its multiples. */
const dominant = 3;
/** Speeds that differ by this much tell how it grows; power of the speed of a force by unbalance, and how far it may be off. */
const apart = 1.15;
const grows = { from: 1.5, to: 2.7 } as const;

/** Once per turn above the limit, dominant, and growing with the square of the speed as a force. */
export const unbalanceFamily = familyKind({
  kind: 'unbalance',
  name: 'Unbalance',
  sources: [clause(tradePractice, 'once per turn dominant and growing with the square of the speed')],
  judge: ({ running, level, boundaries, record, others, designed, machine, points }): readonly FamilyJudged[] => {
    const first = running.at(running.speed);
    if (first === undefined) return [];
    const [found, limit] = [level(first), boundaries];
    // Every rotor has some unbalance; what lies below the limit is no fault.
    if (!found.known || !limit.known || found.value.value <= limit.value.bc.value) return [];
    const others2 = [2, 3].map((times) => running.at(times * running.speed)?.amplitude ?? 0);
    if (others2.some((each) => dominant * each > first.amplitude)) return [];
    const shown = said`once per turn at ${measuredLevel(found.value)}, above ${measuredLevel(limit.value.bc)} and ${dominant} times its multiples`;
    const open: FamilyJudged = {
      open: {
        because: said`${shown}: unbalance, a bent shaft or a resonance`,
        needs: 'a record at another speed, a sixth away or more, or the phase at both ends',
      },
    };
    const second = others.find((each) => {
      if (each.at !== record.at || each.channel !== record.channel || each.occasion.kind !== 'running') return false;
      const speed = declaredSpeed(each);
      return speed.known && Math.max(speed.value / running.speed, running.speed / speed.value) >= apart;
    });
    if (second === undefined) return [open];
    const beside = runningRecord({ designed, machine, record: second, others, points, serving: [] });
    const [per, otherPer] = [motionPerNumber(designed, record), motionPerNumber(designed, second)];
    if (!beside.known || !per.known || !otherPer.known || per.value.motion !== otherPer.value.motion) return [open];
    const other = beside.value.at(beside.value.speed);
    if (other === undefined) return [open];
    const order = { displacement: 0, velocity: 1, acceleration: 2 }[per.value.motion];
    const ratio = Math.abs(first.amplitude * per.value.scale) / Math.abs(other.amplitude * otherPer.value.scale);
    // As an acceleration below a resonance the force m·e·ω² shows as ω² in the displacement it makes, ω⁴ in acceleration.
    const power = Math.log(ratio) / Math.log(running.speed / beside.value.speed) - order;
    if (!(power >= grows.from && power <= grows.to)) return [open];
    return [
      {
        named: {
          cause: 'unbalance',
          evidence: [
            shown,
            said`as a displacement it grows with the power ${power.toPrecision(2)} of the speed, from ${measured('shaft speed', Math.min(running.speed, beside.value.speed))} to ${measured('shaft speed', Math.max(running.speed, beside.value.speed))}`,
          ],
          next: 'Read the phase in two directions: a quarter turn apart where it is unbalance.',
          rivals: [
            { cause: 'a bent shaft', next: 'Read the axial phase at both ends; roll it slowly under a dial gauge.' },
            { cause: 'a resonance between the two speeds', next: 'Record a run-down with the mark of each turn.' },
          ],
        },
      },
    ];
  },
});

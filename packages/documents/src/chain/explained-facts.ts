import {
  clause,
  dunkerley,
  type Fields,
  iepePractice,
  type MeasuringChain,
  type Prediction,
  type Sheet,
  type Showing,
  type Stated,
  showQuantity,
} from '@soundpost/core';
import { type Derivation, gives } from '../derivation/derivation.ts';
import { type Explain, step, typedNumber, workedSteps } from '../derivation/explained.ts';

/** The resonance of the transducer on its mount: as its sheet states it, lowered by what the mount yields. */
export function explainedResonance(chain: MeasuringChain, shown: string, showing: Showing): Explain | undefined {
  const { transducer, mount } = chain.parts;
  const stated = statedIn(transducer.sheet as Sheet, 'mountedResonance');
  const found = chain.transducer.mountedResonance;
  if (found?.known !== true || stated?.known !== true) return undefined;
  const stud = stated.value as number;
  const stiffness = statedIn(mount.sheet as Sheet, 'stiffness');
  const added = statedIn(mount.sheet as Sheet, 'addedMass');
  const own = statedIn(transducer.sheet as Sheet, 'mass');
  if (found.value === stud)
    return () =>
      typedNumber('mounted resonance', transducer.sheet.of, stated, shown, 'on a stud, rigid, nothing lowers it');
  return () => {
    const soft = lowest(stiffness);
    const mass = masses(own, added);
    const steps: readonly Derivation[] =
      soft === undefined || mass === undefined
        ? []
        : workedSteps(
            'mounted-resonance',
            { resonance: stud, mountStiffness: soft, movedMass: mass },
            'resonance',
            showing,
            shown,
          );
    return {
      title: 'Mounted resonance',
      sentence: `On this mount the transducer resonates at ${shown}; on a stud, as its sheet states it, at ${showQuantity('frequency', stud, showing)}.`,
      numbers: [
        { name: 'on a stud', shown: showQuantity('frequency', stud, showing) },
        ...(soft === undefined ? [] : [{ name: 'softest mount', shown: showQuantity('stiffness', soft, showing) }]),
        ...(mass === undefined ? [] : [{ name: 'mass on it', shown: showQuantity('mass', mass, showing) }]),
      ],
      steps:
        steps.length > 0 ? steps : [{ formula: 'f_m = 1/√(1/f_s^2 + (2π)^2 · m/k)', substituted: `f_m = ${shown}` }],
      sources: [clause(dunkerley)],
    };
  };
}

/** What is left to drive the cable, or what must be driven. */
export function explainedDrive(
  { chain, drive }: Prediction,
  of: 'current' | 'capacitance',
  showing: Showing,
): Explain | undefined {
  if (drive?.known !== true) return undefined;
  const { fedBy, transducer, line } = chain;
  const milliamperes = (value: number) => showQuantity('current', value, showing);
  const current = milliamperes(drive.value.current);
  const capacitance = showQuantity('capacitance', drive.value.capacitance, showing);
  const cables = line.flatMap((each) =>
    each.is === 'cable' && each.cable.capacitance.known ? [each.cable.capacitance.value] : [],
  );
  const total = cables.reduce((sum, each) => sum + each, 0);
  const farads = (value: number) => showQuantity('capacitance', value, { ...showing, digits: 6 });
  if (of === 'capacitance') {
    return () => ({
      title: 'Capacitance to be driven',
      sentence: `Every cable up to what feeds the transducer hangs on its output: ${capacitance}.`,
      numbers: [{ name: 'capacitance', shown: capacitance }],
      steps: [
        gives(total, drive.value.capacitance)
          ? step('C = Σ C_cable', cables.map(farads).join(' + '), capacitance)
          : {
              formula: 'C = Σ C_cable',
              substituted: `C = ${capacitance}`,
              notes: ['of the cables up to the isolator'],
            },
      ],
      sources: [clause(iepePractice)],
    });
  }
  const own = transducer.biased?.ownCurrent;
  const fed = fedBy?.current;
  return () => ({
    title: 'Current left to drive the cable',
    sentence: `What feeds the transducer, less what its own electronics keep, charges the cable: ${current}.`,
    numbers: [
      ...(fed?.known === true ? [{ name: 'fed', shown: milliamperes(fed.value) }] : []),
      ...(own?.known === true ? [{ name: 'kept by the electronics', shown: milliamperes(own.value) }] : []),
      { name: 'left', shown: current },
    ],
    steps:
      fed?.known === true && own?.known === true && transducer.outputCurrent === undefined
        ? [step('I = I_fed − I_own', `${milliamperes(fed.value)} − ${milliamperes(own.value)}`, current)]
        : [{ formula: 'I = what the driver gives', substituted: `I = ${current}` }],
    sources: [clause(iepePractice)],
  });
}

/** A value the sheet of the transducer states. */
export function explainedOfSheet(
  { parts }: MeasuringChain,
  key: string,
  what: string,
  shown: string,
): Explain | undefined {
  const entry = statedIn(parts.transducer.sheet as Sheet, key);
  return entry?.known === true ? () => typedNumber(what, parts.transducer.sheet.of, entry, shown) : undefined;
}

function statedIn(sheet: Sheet<Fields>, key: string): Stated<unknown> | undefined {
  return sheet.values[key] as Stated<unknown> | undefined;
}

function lowest(entry: Stated<unknown> | undefined): number | undefined {
  if (entry?.known !== true) return undefined;
  const value = entry.value as number | { readonly low: number };
  return typeof value === 'number' ? value : value.low;
}

function masses(own: Stated<unknown> | undefined, added: Stated<unknown> | undefined): number | undefined {
  if (own?.known !== true) return undefined;
  return (own.value as number) + (added?.known === true ? (added.value as number) : 0);
}

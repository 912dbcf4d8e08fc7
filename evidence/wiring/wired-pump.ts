import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Design, design } from '../../packages/core/src/index.ts';
import { plantOf, root } from '../reading.ts';

/** The raw-water pump in variations of its wiring, for tests of what is drawn and listed of screens and earths. */
const demo = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const portable = `          transducer: ACC-100
          mount: stud
          cable: TSP
          cable-length: 2 m
          input: PORT-24
`;
const loop = `          in-line: [LOOP-24]
          input: AI-16
`;

export interface PumpWiring {
  /** Of the point with the accelerometer, made an online one over a junction box: its transducer and its wiring. */
  readonly transducer?: string;
  readonly wiring?: string;
  /** Of the loop beside it. */
  readonly loopWiring?: string;
  readonly machine?: string;
}

/** A grounded case, a screen joined to earth at both ends and at its box: loops through the signal and through the screen. */
export const loopedWiring: PumpWiring = {
  transducer: 'ACC-50M',
  wiring: 'screen-earthed: both, screen-on-box: yes, box-on-machine: yes, cabinet: VMS-01',
  loopWiring: 'screen-earthed: unknown, cabinet: VMS-01',
};

export function wiredPump({ transducer = 'ACC-100', wiring, loopWiring, machine }: PumpWiring = {}): Design {
  const stated = (entries: string | undefined) => (entries === undefined ? '' : `        wiring: { ${entries} }\n`);
  const online = `          transducer: ${transducer}
          mount: stud
          cable: TSP
          cable-length: 12 m
          in-line:
            - part: JB-IS
              tag: JB-301/4
              cable: TSP
              cable-length: 60 m
          input: ONL-24
`;
  const text = demo
    .replace('installation: portable', 'installation: online')
    .replace(portable, online + stated(wiring))
    .replace(loop, loop + stated(loopWiring));
  return design(plantOf(machine === undefined ? text : text.replaceAll('P-301', machine)), 1);
}

import { type CertificateColumn, certificateColumns } from '../chain/certificate.ts';
import { dustGroups, type Group, gasGroups } from '../demand/hazardous-area.ts';
import { iec60079x0 } from '../source/iec-60079-0.ts';
import { iec60079x11 } from '../source/iec-60079-11.ts';
import { type Clause, clause } from '../source/source.ts';
import type { Atmosphere } from './protection-level.ts';

/** A gas of each group, by which it is remembered. */
export const typicalOf: Readonly<Record<Group, string>> = {
  IIA: 'propane',
  IIB: 'ethylene',
  IIC: 'hydrogen, acetylene',
  IIIA: 'flyings',
  IIIB: 'dust that does not conduct',
  IIIC: 'dust that conducts',
};

export function atmosphereOfGroup(group: Group): Atmosphere {
  return (gasGroups as readonly Group[]).includes(group) ? 'gas' : 'dust';
}

/** IIC equipment covers IIB covers IIA; IIIC covers IIIB covers IIIA; a gas group says nothing of dust. */
export function coversGroup(offered: Group, required: Group): boolean {
  const list: readonly Group[] = atmosphereOfGroup(required) === 'gas' ? gasGroups : dustGroups;
  return list.includes(offered) && list.indexOf(offered) >= list.indexOf(required);
}

/** The column of a barrier's certificate for a group: its own; for every dust group that of IIB. */
export function columnFor(group: Group): CertificateColumn {
  return certificateColumns.find((column) => column === group) ?? 'IIB';
}

export const groupSources: readonly Clause[] = [
  clause(iec60079x0, 'equipment groups'),
  clause(iec60079x11, 'IIB values for dust'),
];

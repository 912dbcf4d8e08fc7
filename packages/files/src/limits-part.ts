import { aboveZeroField, type LimitStatement, levelField, motions, quantityField, zoneTables } from '@soundpost/core';
import { choice, made, type Reader, text } from './reader.ts';
import { optionally, record } from './record.ts';
import { stated } from './stated.ts';

const boundary = (which: string, example: string) =>
  optionally(stated(levelField(motions, `Boundary between zones ${which}`, { example })));

/** Limits of a machine or a point: a table by its name, or the owner's boundaries with their source. */
export const limits: Reader<LimitStatement> = made(
  record('limits of a machine or a point', {
    table: optionally(
      choice(
        zoneTables.map((each) => each.name),
        'A table of a standard, by its name here',
      ),
    ),
    clearance: optionally(
      stated(
        aboveZeroField(
          quantityField('length', 'Diametral clearance of the bearing, which holds a table of shaft limits', {
            example: '0.165 mm',
          }),
        ),
      ),
    ),
    aB: boundary('A and B', '3.2 mm/s rms 2-1000 Hz'),
    bC: boundary('B and C', '5.1 mm/s rms 2-1000 Hz'),
    cD: boundary('C and D', '8.5 mm/s rms 2-1000 Hz'),
    source: optionally(text('Where the limits stand: specification, edition, table')),
  }),
  ({ table, clearance, aB, bC, cD, source }, placed, refuse) => {
    const named = zoneTables.find((each) => each.name === table);
    if (clearance !== undefined && named?.clearanceShares === undefined) {
      return refuse(placed, {
        read: 'clearance',
        expected: "'clearance' only beside a 'table' of shaft limits; boundaries of an owner stand as they are",
      });
    }
    if (named !== undefined && aB === undefined && bC === undefined && cD === undefined) {
      return { from: 'table' as const, table: named, ...(clearance === undefined ? {} : { clearance }) };
    }
    if (named === undefined && aB !== undefined && bC !== undefined && cD !== undefined && source !== undefined) {
      return { from: 'owner' as const, aB, bC, cD, source };
    }
    return refuse(placed, {
      read: [table && 'table', aB && 'a-b', bC && 'b-c', cD && 'c-d', source && 'source'].filter(Boolean).join(', '),
      expected: "either 'table', or the owner's 'a-b', 'b-c', 'c-d' and their 'source'; a boundary may be 'unknown'",
    });
  },
);

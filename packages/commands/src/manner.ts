import type { Showing, UnitSystem } from '@soundpost/core';

/** How an answer is to be put: units and decimal sign of what is shown, and how wide the page is. */
export interface Manner {
  readonly showing: Showing;
  readonly width: number;
}

export interface Wishes {
  readonly units?: UnitSystem;
  readonly decimal?: 'point' | 'comma';
}

/** Tables are made for a page of 80 columns, whatever the screen has: what one reads, the other can quote. */
export const pageWidth = 80;

export function manner(wishes: Wishes = {}): Manner {
  return {
    showing: {
      ...(wishes.units === undefined ? {} : { units: wishes.units }),
      ...(wishes.decimal === undefined ? {} : { decimal: wishes.decimal }),
    },
    width: pageWidth,
  };
}

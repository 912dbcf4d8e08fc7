import type { DesignedMachine, PlantMachine, Showing } from '@soundpost/core';
import type { PlantSession } from './plant-session.ts';
import { designedRow, statedRow } from './point-row.ts';
import type { PointRow } from './views.ts';

/** The rows of a plant; those of a machine are made once, however often the plant is asked while others are worked out. */
export class PointRows {
  #made = new WeakMap<PlantMachine | DesignedMachine, readonly PointRow[]>();
  #showing: Showing | undefined;

  of(session: PlantSession, showing: Showing): readonly PointRow[] {
    if (showing !== this.#showing) {
      this.#made = new WeakMap();
      this.#showing = showing;
    }
    return session.plant!.machines.flatMap((machine) => {
      const designed = session.designedSoFar(machine.name);
      const before = this.#made.get(designed ?? machine);
      if (before !== undefined) return before;
      const rows =
        designed === undefined
          ? machine.points.map((each) => statedRow(machine, each, showing))
          : designed.points.map((each) => designedRow(machine, each, showing));
      this.#made.set(designed ?? machine, rows);
      return rows;
    });
  }
}

import * as highs from 'highs';

// Its types describe the module that require gives; import gives the function itself as the default.
const loadSolver = highs.default as unknown as (typeof highs)['default']['default'];

/** What is to be solved: a mixed-integer problem as text in the CPLEX LP format, to be made least. */
export interface Task {
  readonly text: string;
  /** The solver stops after so many seconds with the best it has. */
  readonly seconds: number;
  /** Values of columns to begin with, where some are known to be allowed; columns left out are zero. */
  readonly start?: Readonly<Record<string, number>>;
}

export interface Solved {
  /** `optimal` where the solver proved it, `stopped` where the time was up. */
  readonly ended: 'optimal' | 'stopped' | 'no solution';
  readonly values: Readonly<Record<string, number>>;
  readonly cost: number;
  /** No solution is below it, by the solver's own tolerance. */
  readonly bound: number;
  readonly by: string;
}

/** Solves in this thread, which is blocked meanwhile. */
export async function solve({ text, seconds, start }: Task): Promise<Solved> {
  const solver = await loadSolver();
  const model = solver.createModel({ format: 'lp', data: text });
  try {
    model.options.set('output_flag', false);
    model.options.set('time_limit', seconds);
    model.options.set('mip_rel_gap', 0);
    model.options.set('mip_abs_gap', 1e-6);
    const columns = model.getDimensions().numCols;
    const names = Array.from({ length: columns }, (_, index) => model.getColName(index));
    if (start !== undefined) model.setSolution({ colValue: names.map((name) => start[name] ?? 0) });
    model.run();
    const status = model.getModelStatus();
    const found = model.info.get('primal_solution_status') === 2;
    const values = model.getSolution().colValue;
    return {
      ended: !found ? 'no solution' : status === solver.constants.modelStatus.optimal ? 'optimal' : 'stopped',
      values: found ? Object.fromEntries(names.map((name, index) => [name, values[index]!])) : {},
      cost: found ? model.getObjectiveValue() : Number.POSITIVE_INFINITY,
      bound: Number(model.info.get('mip_dual_bound')),
      by: `HiGHS ${solver.version.string}`,
    };
  } finally {
    model.dispose();
  }
}

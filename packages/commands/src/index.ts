export * from './command.ts';
export * from './commands.ts';
export * from './layout/line.ts';
export * from './layout/wrap.ts';
export * from './manner.ts';
export * from './outcome.ts';
export * from './performed.ts';
export * from './surroundings.ts';

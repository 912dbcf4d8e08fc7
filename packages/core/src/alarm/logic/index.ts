export * from './alarm-run.ts';
export * from './channel-state.ts';
export * from './response-time.ts';
export * from './statement.ts';
export * from './voting.ts';

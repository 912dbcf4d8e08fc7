export { howToBuild } from './app.ts';
export * from './protocol.ts';
export * from './workbench.ts';

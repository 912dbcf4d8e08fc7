export * from './axis.ts';
export * from './curve.ts';
export * from './drawing.ts';
export * from './label-placing.ts';
export * from './plot.ts';
export { drawingStyle } from './style.ts';
export { svg } from './svg.ts';
export { drawnAs, type SymbolName, symbols } from './symbols.ts';
export * from './text-extent.ts';

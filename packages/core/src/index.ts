export * from './finding/index.ts';
export * from './quantity/index.ts';
export * from './rooms.ts';
export * from './source/index.ts';
export * from './working/index.ts';

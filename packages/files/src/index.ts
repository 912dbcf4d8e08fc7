export * from './catalogue-file.ts';
export * from './file-refusal.ts';
export * from './placed.ts';
export * from './plant-file.ts';
export * from './read-yaml.ts';
export * from './text-file.ts';
export * from './yaml-document.ts';

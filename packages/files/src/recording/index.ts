export { type ByteSource, bytesInMemory } from './byte-source.ts';
export * from './formats.ts';
export * from './measured-recording.ts';
export * from './open-recording.ts';
export * from './recording-rules.ts';
export * from './survey.ts';
export * from './text/write-csv.ts';
export * from './universal/write-universal.ts';
export * from './wav/write-wav.ts';

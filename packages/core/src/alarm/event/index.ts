export * from './alarm-day.ts';
export * from './event-reading.ts';
export * from './growth.ts';
export * from './simulated-event.ts';
